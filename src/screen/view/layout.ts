import type { Model } from "../model.ts";
import { hasRoom } from "../room.ts";
import type { Room } from "../views/view.ts";
import { viewOf } from "../views/views.ts";
import { banners } from "./banners.ts";
import type { Tone } from "./readout.ts";
import { spaceFor } from "./space.ts";

/** How the bench is laid out in a terminal of this size. */
export interface Layout {
  readonly columns: number;
  /** Width of the names of the five numbers, and of each side's cell. */
  readonly label: number;
  readonly cell: number;
  /** Rows of the five numbers, without their heading. */
  readonly numberRows: number;
  /** Rows for a field, a question, the last thing done, or what is under the cursor. */
  readonly wordRows: number;
  /** What is left for the view. */
  readonly room: Room;
  /** Lines above the numbers. */
  readonly banners: readonly { readonly text: string; readonly tone: Tone }[];
}

const label = 13;

/** Lays the bench out, or null where the terminal is too small for it. */
export function layoutOf(model: Model): Layout | null {
  if (!hasRoom(model)) return null;
  const space = spaceFor(model, viewOf(model.view).small ?? false);
  return {
    ...space,
    label,
    cell: Math.floor((space.columns - label) / 2),
    banners: banners(model, space.columns),
  };
}
