import { standingUpright } from "../../measures/bench/onUpright.ts";
import { pivotLines } from "../../measures/bench/pivotLines.ts";
import type { Study } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { whyNoUpright } from "../../vehicle/hang.ts";
import type { Tab } from "../../vehicle/sections/hardware.ts";
import { type Writing, wheels } from "../sheet/writing.ts";
import { bracketDrawing } from "./brackets.ts";
import type { Drawing, Sketch, Wanting } from "./flat.ts";
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

/** What is drawn, before it is said of which car and with which cautions. */
interface Made {
  readonly drawings: readonly Sketch[];
  readonly wanting: readonly Wanting[];
}

const nothing: Made = { drawings: [], wanting: [] };

/** A drawing for each side, since the back of a print is blank and steel is marked with the print face up. */
function forSides(draw: (wheel: Wheel) => readonly Sketch[]): readonly Sketch[] {
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

function tabs(study: Study, writing: Writing): Made {
  const tab = (wheel: Wheel) => study.car.sections.hardware?.tab?.[wheel] ?? null;
  const upright = (wheel: Wheel) => standingUpright(study, wheel);
  const asked = (side: Side) => outlineNeeds(tab(side === "both" ? "left" : side), side);
  const alike = outlineNeeds(tab("right"), "both") === asked("both");
  const wanting = (alike ? (["both"] as const) : wheels).flatMap((side): readonly Wanting[] => {
    const needs = asked(side);
    const what = `Outline of ${side === "both" ? "both tabs" : `the ${side} tab`} (drawn without it)`;
    return needs === null ? [] : [{ what, needs }];
  });
  return { drawings: forSides((wheel) => [tabDrawing(wheel, upright(wheel), tab(wheel), writing)]), wanting };
}

function uprights(study: Study, writing: Writing): Made {
  const why = whyNoUpright(study.car);
  if (why !== null)
    return {
      ...nothing,
      wanting: [{ what: "Uprights for the jig table", needs: `an upper joint. ${why.replace(/\.$/, "")}` }],
    };
  return { ...nothing, drawings: forSides((wheel) => uprightDrawings(wheel, standingUpright(study, wheel), writing)) };
}

const holesNeed =
  "hardware: rack: holes, each by a name of yours with along (to the left from half way between the inner eyes), aside and diameter";

function rack(study: Study, writing: Writing): Made {
  if (study.inputKind !== "rack")
    return { ...nothing, wanting: [{ what: "Rack's mounting plate", needs: "a rack, and this car has none" }] };
  const drawing = rackPlateDrawing(study, writing);
  return drawing === null
    ? { ...nothing, wanting: [{ what: "Rack's mounting plate", needs: holesNeed }] }
    : { ...nothing, drawings: [drawing] };
}

function brackets(study: Study): Made {
  const lines = (wheel: Wheel) => pivotLines(study, wheel);
  const drawn = (wheel: Wheel) => [bracketDrawing(wheel, lines(wheel))].flatMap((each) => each ?? []);
  // Gauges are cut out and held to either side, so that mirrored ones are needed once.
  const isMirrored = JSON.stringify(lines("left")) === JSON.stringify(lines("right"));
  const drawings = isMirrored
    ? drawn("left").map((each) => ({
        ...each,
        title: `${each.title}, both sides`,
        notes: ["Both sides: cut out, each lies as drawn for the left and turned over for the right.", ...each.notes],
      }))
    : forSides(drawn);
  if (drawings.length > 0) return { ...nothing, drawings };
  const needs = "arms on two pivots that do not run straight ahead and level: this front end has none";
  return { ...nothing, wanting: [{ what: "Gauges for brackets", needs }] };
}

const makers: Readonly<Record<Kind, (study: Study, writing: Writing) => Made>> = {
  tab: tabs,
  upright: uprights,
  rack,
  brackets,
};

/** What is said on every drawing: a sheet of paper goes to the bench alone. */
export interface Heading {
  /** Which car it is for. */
  readonly car: string;
  /** What has to be known before anything is cut. */
  readonly before: readonly string[];
}

/** The drawings of those kinds at full size, left and right apart, and what the file does not say enough for. */
export function templatesOf(
  study: Study,
  writing: Writing,
  asked: readonly Kind[] = kinds,
  { car, before }: Heading = { car: study.car.title, before: [] },
): Templates {
  const made = kinds.filter((kind) => asked.includes(kind)).map((kind) => makers[kind](study, writing));
  return {
    drawings: made.flatMap(({ drawings }) => drawings.map((each) => ({ ...each, car, before }))),
    wanting: made.flatMap(({ wanting }) => wanting),
  };
}
