const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Words as HTML or SVG that shows them as they stand, in an element or in a quoted attribute. */
export function htmlWords(text: string): string {
  return text.replace(/[&<>"']/g, (each) => entities[each] ?? each);
}
