import { Text } from "ink";
import type { Model } from "../model.ts";
import { views } from "../views/views.ts";

/** Every view with its key; the one that is seen stands in brackets. */
export function Tabs({ model, columns }: { readonly model: Model; readonly columns: number }) {
  const roomy = tabs(model.view, "  ");
  const text = roomy.length <= columns ? roomy : tabs(model.view, " ");
  return <Text wrap="truncate">{text}</Text>;
}

function tabs(seen: string, between: string): string {
  return views
    .map(({ key, name }) => (name === seen ? `[${key} ${name}]` : ` ${key} ${name} `))
    .join(between.slice(1))
    .trimEnd();
}
