import { Text } from "ink";
import type { Model } from "../model.ts";
import { views } from "../views/views.ts";

/** Every view with its key; the one that is seen stands in brackets. */
export function Tabs({ model, columns }: { readonly model: Model; readonly columns: number }) {
  const roomy = tabs(model.view, " ");
  const text = roomy.length <= columns ? roomy : tabs(model.view, "");
  return <Text wrap="truncate">{text}</Text>;
}

/** Between two tabs stands one column, a bracket where one of them is seen, and what is put between besides. */
function tabs(seen: string, between: string): string {
  const at = views.findIndex(({ name }) => name === seen);
  const mark = (i: number) => (i === at ? `${between}[` : i === at + 1 ? `]${between}` : ` ${between}`);
  const named = views.map(({ key, name }, i) => `${i === 0 ? mark(0).trimStart() || " " : mark(i)}${key} ${name}`);
  return `${named.join("")}${at === views.length - 1 ? "]" : ""}`;
}
