/** What the system's own codes mean to a builder; each ends the sentence "cannot be read: …" or "cannot be saved: …". */
const reasons: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder",
  ENOTDIR: "a part of its path is a file, not a folder",
  EISDIR: "it is a folder",
  EACCES: "its permissions do not allow it",
  EPERM: "its permissions do not allow it",
  EROFS: "it is on a disk that is write-protected",
  ENOSPC: "the disk is full",
  EDQUOT: "your share of the disk is used up",
  EFBIG: "the disk takes no file of that size",
  ENAMETOOLONG: "its name is too long",
  ELOOP: "it is a link that leads back to itself",
  EMFILE: "too many files are open",
  EIO: "the disk reports an error",
  EBUSY: "it is in use",
  EEXIST: "there is a file of that name already",
  ERR_INVALID_ARG_VALUE: "its name holds a character that no name can hold",
};

/** The code that the system gave an error, such as ENOENT; "" where it gave none. */
export function codeOf(error: unknown): string {
  const code = error instanceof Error && "code" in error ? error.code : "";
  return typeof code === "string" ? code : "";
}

/** Why the system refused, in a builder's words. */
export function reasonOf(error: unknown): string {
  const code = codeOf(error);
  return reasons[code] ?? (code === "" ? "the system refused" : `the system refused (${code})`);
}
