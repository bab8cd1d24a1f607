/** A font's file, put into the bundle as its bytes. */
declare module "*.ttf" {
  const bytes: Uint8Array;
  export default bytes;
}
