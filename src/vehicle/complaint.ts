/** What is wrong with a file, said to a builder: where, what was found, what would be right. */
export interface Complaint {
  /** 1-based, as editors count; null when the whole file is meant. */
  readonly line: number | null;
  readonly column: number | null;
  /** The part in the file's own words, such as "front.left.tie-rod.outer.up"; "" for the whole file. */
  readonly part: string;
  /** What is wrong, what was found and what was expected, in one sentence without a trailing newline. */
  readonly message: string;
}
