import type { Study } from "../../measures/study.ts";
import { startingValues } from "../../vehicle/starting/marks.ts";
import { type CheckItem, stated } from "./item.ts";

/** Whether the check stands on sizes that nobody has measured: it is then no better than they are. */
export function assumedItems({ car }: Study): readonly CheckItem[] {
  const { size } = startingValues(car);
  if (size === 0) return [];
  const label = `${size} ${size === 1 ? "size is" : "sizes are"} assumed, not measured`;
  return [
    stated({ id: "sizes.assumed", part: "sizes", label }, "close", [
      "Nothing that passes here is to be welded on before they are measured: marked ~ on the screen, where X lists them.",
    ]),
  ];
}
