import type { LinkageName } from "../linkages.ts";
import type { MechanismName } from "../mechanisms.ts";
import { quantitiesOf } from "../quantities.ts";
import type { Wheel } from "../words.ts";

/** A front end whose points can be measured: which of its parts there are. */
export interface SurveyForm {
  readonly linkage: LinkageName;
  readonly mechanism: MechanismName;
}

/** Something on the car that a tape can be held to. */
export interface SurveyPoint {
  /** What a sheet calls it: "left lower-arm.joint", "left eye", "pitman.joint", or a mark's own name. */
  readonly name: string;
  /** Whose side it is on; null in the middle, or where that was not said. */
  readonly wheel: Wheel | null;
  /**
   * Where the car's numbers have it, such as "left.lower-arm.joint", with `.ahead`, `.up` and `sideways` behind it; null for
   * a mark, and for the eyes on a rack's ends, which the file gives by the rack's own sizes.
   */
  readonly id: string | null;
  readonly sideways: "out" | "offset";
  /** What it is, as a builder is told. */
  readonly help: string;
}

/** What a mechanism's own points are called, by the end of their ids; others are called by their ids. */
const shortNames: readonly (readonly [RegExp, string])[] = [
  [/^(left|right)\.(?:rack|steering-plate|relay)\.eye$/, "$1 eye"],
  [/^relay\.(pitman|idler)\.(pivot|joint)$/, "$1.$2"],
  [/^steering-plate$/, "column"],
  [/^(left|right)\./, "$1 "],
];

function nameOf(id: string): string {
  const [pattern, name] = shortNames.find(([each]) => each.test(id)) ?? [/$/, ""];
  return id.replace(pattern, name);
}

/** A point's help from that of its first number: "Front pivot of the lower arm on the frame". */
function helpOf(help: string): string {
  return help.replace(/: how far .*$/, "");
}

function eyes(): readonly SurveyPoint[] {
  return (["left", "right"] as const).map((wheel) => ({
    name: `${wheel} eye`,
    wheel,
    id: null,
    sideways: "out",
    help: `Inner joint of the ${wheel} tie rod, on the rack's end`,
  }));
}

/** Every point of a front end, in the order of the car file: of one side, then of the other, then of the steering. */
export function pointsOf(form: SurveyForm): readonly SurveyPoint[] {
  const of = quantitiesOf(form);
  const ids = new Set(of.map(({ id }) => id));
  const found = of.flatMap((quantity): readonly SurveyPoint[] => {
    const id = quantity.id.replace(/\.ahead$/, "");
    const sideways = (["out", "offset"] as const).find((key) => ids.has(`${id}.${key}`));
    if (id === quantity.id || sideways === undefined || !ids.has(`${id}.up`) || id === "rack") return [];
    return [{ name: nameOf(id), wheel: quantity.wheel, id, sideways, help: helpOf(quantity.help) }];
  });
  return form.mechanism === "rack" ? [...found, ...eyes()] : found;
}

/** A name without what nobody minds: capitals, hyphens, dots and blanks, and how a centre is spelt. */
export function plainName(name: string): string {
  return name
    .toLowerCase()
    .replace(/[\s.,_-]+/g, " ")
    .replace(/\bcentre\b/g, "center")
    .trim();
}

/** The same point of the other side; null where there is none. */
export function acrossFrom<T extends Pick<SurveyPoint, "name" | "wheel">>(point: T, all: readonly T[]): T | null {
  if (point.wheel === null) return null;
  const other = point.wheel === "left" ? "right" : "left";
  const name = point.name.replace(/^(left|right) /, `${other} `);
  return all.find((each) => each.name === name && each.wheel === other) ?? null;
}
