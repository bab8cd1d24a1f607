/** Whether a text is a sheet of readings with a tape: it has what no car file has, and no front end. */
export function isSheet(text: string): boolean {
  return /^king-pins-apart *:/m.test(text) && !/^front *:/m.test(text);
}
