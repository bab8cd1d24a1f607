import type { Point } from "../../kinematics/drawn.ts";
import { Side } from "../../kinematics/slots.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { Body } from "../../vehicle/linkage.ts";
import { linkageOf } from "../../vehicle/linkages.ts";
import type { FrameTube } from "../../vehicle/sections/tubes.ts";
import { numberAt } from "../drawn/places.ts";
import type { Study } from "../study.ts";
import { tubesAcross } from "./across.ts";
import { type CornerBodies, oncePose } from "./bodies.ts";
import { lineRoom, type Ring, segmentToRing, segmentToSegment } from "./distance.ts";
import { placeMoved } from "./motion.ts";
import type { Watched } from "./watched.ts";

/** Two parts of one corner that could meet, and their distance in a pose, surface to surface, mm; negative: they overlap. */
export interface Pairing extends Watched {
  /** A name without spaces for scripts, and a builder's words. */
  readonly id: string;
  readonly label: string;
}

/** Round bars of one body, each start and span in a buffer, where a pose has put them. */
interface Bars {
  readonly id: string;
  readonly label: string;
  readonly radius: number;
  readonly count: number;
  readonly segments: Float64Array;
  /** Writes the bars as they stand in a pose. */
  readonly put: (poses: Float64Array, at: number) => void;
  /** Ends that are bolted to the frame, drawn. */
  readonly pivots: readonly Point[];
}

function putSegment(segments: Float64Array, i: number, from: Point, to: Point): void {
  const at = 6 * i;
  segments[at] = from.x;
  segments[at + 1] = from.y;
  segments[at + 2] = from.z;
  segments[at + 3] = to.x - from.x;
  segments[at + 4] = to.y - from.y;
  segments[at + 5] = to.z - from.z;
}

function tieRod(radius: number): Bars {
  const segments = new Float64Array(6);
  return {
    id: "tie-rod",
    label: "tie rod",
    radius,
    count: 1,
    segments,
    put: (poses, at) => {
      for (let i = 0; i < 3; i++) {
        segments[i] = poses[at + Side.TieRodInner + i];
        segments[i + 3] = poses[at + Side.TieRodOuter + i] - segments[i];
      }
    },
    pivots: [],
  };
}

function partBars(bodies: CornerBodies, part: Body, radius: number): Bars {
  const tubes = part.tubes.map(([from, to]) => [bodies.place(from), bodies.place(to)] as const);
  const segments = new Float64Array(6 * tubes.length);
  const move = bodies.move(part.name);
  return {
    id: part.name,
    label: part.label,
    radius,
    count: tubes.length,
    segments,
    put: oncePose((poses, at) => {
      const motion = move(poses, at);
      for (let i = 0; i < tubes.length; i++)
        putSegment(segments, i, placeMoved(motion, tubes[i][0]), placeMoved(motion, tubes[i][1]));
    }),
    pivots: part.moves === "with the upright" ? [] : tubes.map(([from]) => from),
  };
}

/** A tube of the frame, of either side, in this corner's frame. */
function frameBars(name: string, { from, to, diameter }: FrameTube, hand: 1 | -1): Bars {
  const segments = new Float64Array(6);
  const point = (p: FrameTube["from"]): Point => ({ x: p.ahead, y: hand * p.out, z: p.up });
  putSegment(segments, 0, point(from), point(to));
  return {
    id: `frame-${name.replace(/\s+/g, "-")}`,
    label: `frame tube ${name}`,
    radius: diameter / 2,
    count: 1,
    segments,
    put: () => {},
    pivots: [],
  };
}

function shockBars(study: Study, bodies: CornerBodies): Bars | null {
  const shock = study.car.sections.shock?.[bodies.wheel] ?? null;
  if (shock === null || shock.diameter === null) return null;
  const point = (p: typeof shock.top): Point => ({ x: p.ahead, y: p.out, z: p.up });
  const [top, foot] = [point(shock.top), point(shock.foot)];
  const segments = new Float64Array(6);
  const move = bodies.move(shock.on);
  return {
    id: "shock",
    label: "shock",
    radius: shock.diameter / 2,
    count: 1,
    segments,
    put: oncePose((poses, at) => putSegment(segments, 0, top, placeMoved(move(poses, at), foot))),
    pivots: [],
  };
}

function barsToBars(wheel: Wheel, a: Bars, b: Bars): Pairing {
  return {
    wheel,
    id: `${a.id}.${b.id}`,
    label: `${a.label} to ${b.label}`,
    read: (poses, at) => {
      a.put(poses, at);
      b.put(poses, at);
      let least = Number.POSITIVE_INFINITY;
      for (let i = 0; i < a.count; i++) {
        for (let j = 0; j < b.count; j++)
          least = Math.min(least, segmentToSegment(a.segments, 6 * i, b.segments, 6 * j));
      }
      return least - a.radius - b.radius;
    },
  };
}

function barsToRing(wheel: Wheel, a: Bars, name: "rim" | "tyre", ring: Ring): Pairing {
  const line = lineRoom();
  return {
    wheel,
    id: `${a.id}.${name}`,
    label: `${a.label} to ${name}`,
    read: (poses, at, enough = Number.POSITIVE_INFINITY) => {
      a.put(poses, at);
      const [middle, axis] = [at + Side.WheelCenter, at + Side.Spin];
      let least = Number.POSITIVE_INFINITY;
      for (let i = 0; i < a.count; i++) {
        const goal = Math.min(least, enough + a.radius);
        least = Math.min(least, segmentToRing(a.segments, 6 * i, ring, poses, middle, axis, line, goal));
      }
      return least - a.radius;
    },
  };
}

/** A pivot within this of a frame tube's surface is on its bracket: arm and tube are one there, mm. */
const BRACKET = 50;

/** Whether an arm is bolted to a frame tube, so that the two have to be near. */
function isBolted(arm: Bars, tube: Bars): boolean {
  return arm.pivots.some((pivot) => {
    const place = Float64Array.of(pivot.x, pivot.y, pivot.z, 0, 0, 0);
    return segmentToSegment(place, 0, tube.segments, 0) - arm.radius - tube.radius < BRACKET;
  });
}

const rimDiameter = numberAt("rim.diameter");
const rimWidthOf = numberAt("rim.width");
const tyreRadius = numberAt("tire.radius");
const tyreWidthOf = numberAt("tire.width");

/** The wheel's rings, where the file gives what they need. The rim is its barrel alone, a wall without thickness. */
function ringsOf({ car }: Study): { readonly rim: Ring | null; readonly tyre: Ring | null } {
  const { numbers } = car;
  const [rim, rimWidth] = [rimDiameter(numbers) / 2, rimWidthOf(numbers)];
  const [tyre, tyreWidth] = [tyreRadius(numbers), tyreWidthOf(numbers)];
  const wall = tyre - rim;
  return {
    rim: rim > 0 && rimWidth > 0 ? { inner: rim, outer: rim, half: rimWidth / 2, round: 0 } : null,
    tyre:
      rim > 0 && tyreWidth > 0 && wall > 0
        ? { inner: rim, outer: tyre, half: tyreWidth / 2, round: Math.min(wall, tyreWidth) / 4 }
        : null,
  };
}

const wheels: readonly Wheel[] = ["left", "right"];

/** The key of what a corner lacks, with the side where the other one has it; nothing where both have it. */
function lacking(key: string, has: (wheel: Wheel) => boolean): readonly string[] {
  const without = wheels.filter((wheel) => !has(wheel));
  if (without.length === 0) return [];
  return [without.length === wheels.length ? key : `${key} (${without.join("")})`];
}

/** What the clearance checks of a car lack, in the file's own keys. */
export function clearanceLacks(study: Study): readonly string[] {
  const { tubes, shock } = study.car.sections;
  const { rim, tyre } = ringsOf(study);
  const links = ["tie-rod", ...linkageOf(study.car.form.linkage).bodies.map(({ name }) => name)];
  const hasFrame = wheels.some((wheel) => (tubes?.[wheel]?.frame.size ?? 0) > 0);
  return [
    ...links.flatMap((name) =>
      lacking(`tubes: ${name}`, (wheel) => (tubes?.[wheel]?.diameters[name] ?? null) !== null),
    ),
    ...(hasFrame ? [] : ["tubes: frame"]),
    ...lacking("shock: diameter", (wheel) => shock?.[wheel]?.diameter !== null),
    ...(rim === null ? ["rim: diameter and width"] : []),
    ...(tyre === null ? ["tire: width"] : []),
  ];
}

/** Every pair of one corner that could meet and whose sizes the file gives, or those of its tie rod alone. */
export function pairingsAt(study: Study, bodies: CornerBodies, of: "all" | "tie rod" = "all"): readonly Pairing[] {
  const { wheel } = bodies;
  const { tubes } = study.car.sections;
  const own = tubes?.[wheel] ?? null;
  const diameter = (name: string) => own?.diameters[name] ?? null;
  const rodDiameter = diameter("tie-rod");
  const rods = rodDiameter === null ? [] : [tieRod(rodDiameter / 2)];
  const others = of === "all";
  const parts = bodies.parts.flatMap((part) => {
    const size = diameter(part.name);
    return size === null ? [] : [{ part, bars: partBars(bodies, part, size / 2) }];
  });
  const shock = shockBars(study, bodies);
  const frame = [
    ...[...(own?.frame ?? [])].map(([name, tube]) => frameBars(name, tube, 1)),
    ...tubesAcross(study, bodies).map(([name, tube]) => frameBars(`${name} of the other side`, tube, -1)),
  ];
  const { rim, tyre } = ringsOf(study);
  const turning = parts.filter(({ part }) => others && part.moves !== "with the upright");
  const movers = [...rods, ...turning.map(({ bars }) => bars)];
  const shocks = shock === null ? [] : [shock];
  const besideWheel = others ? [...rods, ...parts.map(({ bars }) => bars), ...shocks] : rods;
  const inTyre = others ? [...besideWheel, ...frame] : rods;
  const on = study.car.sections.shock?.[wheel]?.on;
  return [
    ...rods.flatMap((rod) => [...parts.map(({ bars }) => bars), ...shocks].map((bars) => barsToBars(wheel, rod, bars))),
    ...turning
      .filter(({ part }) => part.name !== on)
      .flatMap(({ bars }) => shocks.map((shock) => barsToBars(wheel, bars, shock))),
    // The tyre's inner wall is the rim's barrel over the tyre's width: a tube of the frame meets it there first.
    ...besideWheel.flatMap((bars) => (rim === null ? [] : [barsToRing(wheel, bars, "rim", rim)])),
    ...inTyre.flatMap((bars) => (tyre === null ? [] : [barsToRing(wheel, bars, "tyre", tyre)])),
    ...movers.flatMap((bars) =>
      frame.filter((tube) => !isBolted(bars, tube)).map((tube) => barsToBars(wheel, bars, tube)),
    ),
  ];
}
