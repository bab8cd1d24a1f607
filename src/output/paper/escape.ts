import { printable } from "../printable.ts";

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/**
 * Words as HTML or SVG that shows them as they stand, in an element or in a quoted attribute. Ends of lines are spaces
 * there; other characters that act, which XML forbids besides, are written out.
 */
export function htmlWords(text: string): string {
  return printable(text.replace(/[\t\r\n]+/g, " ")).replace(/[&<>"']/g, (each) => entities[each] ?? each);
}
