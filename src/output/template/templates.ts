import { standingUpright } from "../../measures/bench/onUpright.ts";
import { pivotLines } from "../../measures/bench/pivotLines.ts";
import type { Study } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { whyNoUpright } from "../../vehicle/hang.ts";
import type { Tab } from "../../vehicle/sections/hardware.ts";
import { type Writing, wheels } from "../sheet/writing.ts";
import { bracketDrawing } from "./brackets.ts";
import type { Drawing, Wanting } from "./flat.ts";
import { rackPlateDrawing } from "./rackPlate.ts";
import { outlineOf, tabDrawing, whyNoOutline } from "./tab.ts";
import { uprightDrawings } from "./upright.ts";

/** The kinds of drawings, as they are asked for. */
export const kinds = ["tab", "upright", "rack", "brackets"] as const;

export type Kind = (typeof kinds)[number];

/** The drawings of a car, and what some of them lack. */
export interface Templates {
  readonly drawings: readonly Drawing[];
  readonly wanting: readonly Wanting[];
}

const nothing: Templates = { drawings: [], wanting: [] };

/**
 * A drawing made for each side, or, where both are mirrored, once for both: `alike` is what the drawing is made from.
 * As drawn it is then the left one's.
 */
function forSides(alike: (wheel: Wheel) => unknown, draw: (wheel: Wheel) => readonly Drawing[]): readonly Drawing[] {
  if (JSON.stringify(alike("left")) === JSON.stringify(alike("right"))) {
    const turned = "Both sides: as it lies for the left, turned over for the right.";
    return draw("left").map((each) => ({
      ...each,
      title: `${each.title}, both sides`,
      notes: [turned, ...each.notes],
    }));
  }
  return wheels.flatMap((wheel) =>
    draw(wheel).map((each) => ({ ...each, name: `${each.name}-${wheel}`, title: `${each.title}, ${wheel}` })),
  );
}

/** What a tab's outline is drawn from, and what each is in a few words. */
const tabKeys = [
  ["hole", "the hole's diameter"],
  ["end-radius", "from the hole's middle to the rounded edge around it"],
  ["foot", "length of the edge that is welded on"],
  ["reach", "from the hole's middle square to that edge"],
] as const;

type Side = Wheel | "both";

/** What an outline of a tab needs of the file, under that side's key; null where it can be drawn. */
function outlineNeeds(tab: Tab | null, side: Side): string | null {
  const given = outlineOf(tab);
  const why = given === null ? null : whyNoOutline(given);
  if (why !== null) return `a longer reach or foot, or a smaller end-radius: ${why}`;
  const keys = tabKeys.filter(([key]) => (tab?.[key] ?? null) === null);
  if (keys.length === 0) return null;
  return `hardware: tab: ${side}: ${keys.map(([key, what]) => `${key} (${what})`).join(", ")}`;
}

function tabs(study: Study, writing: Writing): Templates {
  const tab = (wheel: Wheel) => study.car.sections.hardware?.tab?.[wheel] ?? null;
  const upright = (wheel: Wheel) => standingUpright(study, wheel);
  const asked = (side: Side) => outlineNeeds(tab(side === "both" ? "left" : side), side);
  const alike = outlineNeeds(tab("right"), "both") === asked("both");
  const wanting = (alike ? (["both"] as const) : wheels).flatMap((side): readonly Wanting[] => {
    const needs = asked(side);
    const what = `Outline of ${side === "both" ? "both tabs" : `the ${side} tab`} (drawn without it)`;
    return needs === null ? [] : [{ what, needs }];
  });
  const drawings = forSides(
    (wheel) => [upright(wheel), tab(wheel)],
    (wheel) => [tabDrawing(wheel, upright(wheel), tab(wheel), writing)],
  );
  return { drawings, wanting };
}

function uprights(study: Study, writing: Writing): Templates {
  const why = whyNoUpright(study.car);
  if (why !== null)
    return {
      ...nothing,
      wanting: [{ what: "Uprights for the jig table", needs: `an upper joint. ${why.replace(/\.$/, "")}` }],
    };
  const upright = (wheel: Wheel) => standingUpright(study, wheel);
  return { ...nothing, drawings: forSides(upright, (wheel) => uprightDrawings(wheel, upright(wheel), writing)) };
}

const holesNeed =
  "hardware: rack: holes, each by a name of yours with along (to the left from half way between the inner eyes), aside and diameter";

function rack(study: Study, writing: Writing): Templates {
  if (study.inputKind !== "rack")
    return { ...nothing, wanting: [{ what: "Rack's mounting plate", needs: "a rack, and this car has none" }] };
  const drawing = rackPlateDrawing(study, writing);
  return drawing === null
    ? { ...nothing, wanting: [{ what: "Rack's mounting plate", needs: holesNeed }] }
    : { ...nothing, drawings: [drawing] };
}

function brackets(study: Study): Templates {
  const lines = (wheel: Wheel) => pivotLines(study, wheel);
  const drawings = forSides(lines, (wheel) => {
    const drawing = bracketDrawing(wheel, lines(wheel));
    return drawing === null ? [] : [drawing];
  });
  if (drawings.length > 0) return { ...nothing, drawings };
  const needs = "arms on two pivots that do not run straight ahead and level: this front end has none";
  return { ...nothing, wanting: [{ what: "Gauges for brackets", needs }] };
}

const makers: Readonly<Record<Kind, (study: Study, writing: Writing) => Templates>> = {
  tab: tabs,
  upright: uprights,
  rack,
  brackets,
};

/**
 * The drawings of those kinds at full size, left and right apart, and what the file does not say enough for. What has to be
 * known before anything is cut (`first`) stands on each, since a sheet of paper goes to the bench alone.
 */
export function templatesOf(
  study: Study,
  writing: Writing,
  asked: readonly Kind[] = kinds,
  first: readonly string[] = [],
): Templates {
  const made = kinds.filter((kind) => asked.includes(kind)).map((kind) => makers[kind](study, writing));
  return {
    drawings: made.flatMap(({ drawings }) => drawings.map((each) => ({ ...each, notes: [...first, ...each.notes] }))),
    wanting: made.flatMap(({ wanting }) => wanting),
  };
}
