import type { Model, Spot } from "../model.ts";
import { turn } from "../turn.ts";
import type { Line } from "../view/Lines.tsx";
import type { ViewKey } from "./view.ts";

const first: Spot = { row: 0, column: 0, page: 0 };

/** Where the cursor of a view stands. */
export function spotOf(model: Pick<Model, "spots">, name: string): Spot {
  return model.spots[name] ?? first;
}

/** The model with a view's cursor elsewhere. */
export function withSpot(model: Model, name: string, change: Partial<Spot>): Model {
  return { ...model, spots: { ...model.spots, [name]: { ...spotOf(model, name), ...change } } };
}

/** How many rows and columns a view's cursor can stand in just now. */
type Size = (model: Model) => { readonly rows: number; readonly columns: number };

function clamp(at: number, count: number): number {
  return Math.min(Math.max(0, count - 1), Math.max(0, at));
}

/** The cursor of a view brought within what there is to stand on, which an edit may have made less. */
export function spotWithin(model: Model, name: string, size: Size): Spot {
  const spot = spotOf(model, name);
  const { rows, columns } = size(model);
  return { ...spot, row: clamp(spot.row, rows), column: clamp(spot.column, columns) };
}

/** An arrow key that moves a view's cursor; off where there is nothing to stand on. */
function arrow(name: string, size: Size, what: string) {
  return (chord: string, shown: string, footer: string | null, down: number, along: number): ViewKey => ({
    keys: [chord],
    shown,
    footer,
    help: `${what} ${chord}`,
    off: (model) => {
      const { rows, columns } = size(model);
      // Along columns there is somewhere to go also while the rows are still worked out.
      return rows === 0 && (along === 0 || columns < 2) ? "There is nothing here to look along." : null;
    },
    act: (model) => {
      const { rows, columns } = size(model);
      const spot = spotWithin(model, name, size);
      return turn(
        withSpot(model, name, { row: clamp(spot.row + down, rows), column: clamp(spot.column + along, columns) }),
      );
    },
  });
}

/** The arrow keys as those that move a view's cursor up and down a list. */
export function listKeys(name: string, size: Size, what: string): readonly ViewKey[] {
  const key = arrow(name, size, what);
  return [key("up", "↑", null, -1, 0), key("down", "↓", "↑↓ look", 1, 0)];
}

/** The arrow keys as those that move a view's cursor every way. */
export function cursorKeys(name: string, size: Size, what: string): readonly ViewKey[] {
  const key = arrow(name, size, what);
  return [
    key("up", "↑", null, -1, 0),
    key("down", "↓", "↑↓←→ look", 1, 0),
    key("left", "←", null, 0, -1),
    key("right", "→", null, 0, 1),
  ];
}

/** In the place of changes while there is nothing to compare with. */
export const noPin: readonly Line[] = [
  " No car is pinned. Press b to pin this one, then change it:",
  " this table then shows how much each number changed.",
];

/** The space bar as the key that turns to a view's next page. */
export function pageKey(name: string, pages: readonly string[]): ViewKey {
  return {
    keys: ["space"],
    shown: "Space",
    footer: "Space next page",
    help: `next page: ${pages.join(", ")}`,
    act: (model) => turn(withSpot(model, name, { page: (spotOf(model, name).page + 1) % pages.length })),
  };
}
