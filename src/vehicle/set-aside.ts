import type { Complaint } from "./complaint.ts";

/** What a comment at the top of a car's file begins with that tells of a reading the car was made without. */
export const setAside = "Set aside:";

// Neither part may run past the words behind it, so that a long line is gone through once.
const line = new RegExp(`^# ${setAside} ((?:(?! reads ).)*) reads ((?:(?! against all ).)*) against all the others\\b`);
const place = / \(line \d+\)$/;

/** What is doubtful in a car that was made of readings one of which did not fit: said as long as its comment stands. */
export function setAsideWarnings(text: string): readonly Complaint[] {
  const [head = ""] = /^\uFEFF?(?:#.*\r?\n)*/.exec(text) ?? [];
  return head.split("\n").flatMap((comment, at): readonly Complaint[] => {
    const [, name, off] = line.exec(comment) ?? [];
    if (name === undefined || off === undefined) return [];
    const message = `a reading that did not fit was left out: ${name.replace(place, "")} reads ${off}; measure it again`;
    return [{ line: at + 1, column: 1, part: "", message }];
  });
}
