import type { Model } from "../model.ts";
import type { Room } from "../views/view.ts";
import { viewOf } from "../views/views.ts";
import { heading } from "./heading.ts";
import { filled, Lines } from "./Lines.tsx";
import { wrapped } from "./wrap.ts";

/** True where the view that is seen has nothing to show, since the front end does not go together. */
export function isEmptied(model: Model): boolean {
  return "refused" in model.bench.study && viewOf(model.view).alone?.(model) !== true;
}

/** What can be done about a front end that does not go together, the quickest first, a sentence each. */
export function waysOut({ bench }: Model): readonly string[] {
  const { left, right } = bench.car.form.rods;
  const last = bench.undo.at(-1);
  return [
    ...(last === undefined ? [] : ["u takes the last change back."]),
    ...(left === "cut" || right === "cut" ? ["c cuts the rods to fit, where one is too long or too short."] : []),
    "1 lists what can be moved until it fits, 7 every number of the car's file.",
  ];
}

/** In the place of a view that needs a front end that goes together. */
export function NotTogether({ model, room }: { readonly model: Model; readonly room: Room }) {
  const { columns } = room;
  const { name } = viewOf(model.view);
  const title = heading(model, columns, `${name.toUpperCase()}: EMPTY UNTIL IT GOES TOGETHER`, name);
  const words = [
    `There is nothing to show here before the front end goes together. What does not fit stands above.`,
    ...waysOut(model),
  ];
  const lines = words.flatMap((sentence) => wrapped(sentence, columns - 2).map((line) => ` ${line}`));
  return <Lines columns={columns} lines={[title, ...filled(lines, room.rows - 1)]} />;
}
