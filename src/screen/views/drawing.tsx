import { blameOf, blameWords } from "../../measures/blame.ts";
import { frontSticks, spindleLines } from "../../measures/bodies/front.ts";
import type { Stick } from "../../measures/bodies/stick.ts";
import { type Place, pointsOf, type WheelPoints } from "../../measures/points.ts";
import type { Study } from "../../measures/study.ts";
import { inputPlace, travelPlace } from "../../output/words.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { across, type Canvas, canvasLines, dashed, dotted, down, newCanvas, whole, write } from "../draw/canvas.ts";
import { type Frame, frameOf, fromAbove, fromBehind, type Look, path, placer } from "../draw/scene.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { heading } from "../view/heading.ts";
import { filled, type Line, Lines } from "../view/Lines.tsx";
import { wrapped } from "../view/wrap.ts";
import { cursorKeys, pageKey, spotOf, spotWithin } from "./spot.ts";
import type { Room, View, ViewKey } from "./view.ts";

const wheels: readonly Wheel[] = ["left", "right"];

/** The named places of each wheel, in a builder's words. */
const placeNames: Readonly<Record<keyof WheelPoints, string>> = {
  tieRodOuter: "tie-rod tab",
  tieRodInner: "tie rod's inner end",
  lowerJoint: "lower joint",
  upperJoint: "upper joint, or what stands for it",
  wheelCenter: "wheel centre",
  contact: "where the tyre stands",
};

const names = Object.keys(placeNames) as (keyof WheelPoints)[];

interface Drawing {
  readonly name: string;
  readonly look: Look;
  /** What is drawn besides the front end, on the second page. */
  readonly axle: boolean;
}

const size = () => ({ rows: names.length, columns: wheels.length });

/** Margin around the drawing, mm. */
const margin = 40;

function poseOf(model: Model, study: Study): Float64Array {
  const { input, left, right } = model.place;
  return study.pose(input, left, right);
}

function strokeOf({ part }: Stick) {
  return part === "wheel" ? dotted : part === "fixed" ? dashed : whole;
}

/**
 * What stays in sight whatever the wheel and the suspension do: all the bodies at ride height, straight ahead, with the
 * wheels' own travel above and below, so that the drawing does not jump as it moves.
 */
function frameFor(study: Study, look: Look): Frame {
  const straight = study.zero ?? study.straightAhead;
  const { bump, droop } = study.wheelTravel;
  const places = [0, bump, -droop].flatMap((travel) => {
    const pose = study.pose(straight, travel, travel);
    return (frontSticks(study, pose, straight) ?? []).flatMap((stick) => stick.places);
  });
  return frameOf(look, places, margin);
}

/** With the rear axle: as far back as that is. */
function withRearAxle(frame: Frame, wheelbase: number): Frame {
  return { ...frame, low: -wheelbase - 2 * margin };
}

function draw(study: Study, model: Model, room: Room, { name, look, axle }: Drawing): readonly string[] {
  const pose = poseOf(model, study);
  const sticks = frontSticks(study, pose, model.place.input) ?? [];
  const spot = spotWithin(model, name, size);
  const canvas = newCanvas(room.columns, room.rows);
  const far = axle && spot.page === 1;
  const frame = far ? withRearAxle(frameFor(study, look), study.wheelbase) : frameFor(study, look);
  const to = placer(canvas, look, frame);
  for (const stick of sticks) path(canvas, stick.places, to, strokeOf(stick));
  if (far) {
    for (const stick of spindleLines(study, pose)) path(canvas, stick.places, to, dashed);
    const wide = 3 * (frame.right - frame.left);
    path(
      canvas,
      [
        [-study.wheelbase, wide, 0],
        [-study.wheelbase, -wide, 0],
      ],
      to,
      dotted,
    );
  }
  if (look === fromBehind)
    path(
      canvas,
      [
        [0, frame.right, 0],
        [0, frame.left, 0],
      ],
      to,
      dotted,
    );
  for (const wheel of wheels) mark(canvas, study, pose, wheel, to);
  const here = places(study, pose, spot.column === 1 ? "right" : "left")?.[names[spot.row] ?? "tieRodOuter"];
  if (here !== undefined) at(canvas, to(here), "◆");
  return canvasLines(canvas);
}

function places(study: Study, pose: Float64Array, wheel: Wheel): WheelPoints | null {
  return pointsOf(pose, wheel, study.tireRadius);
}

/** L and R stand outboard of the wheels, so that left and right need no colour. */
function mark(
  canvas: Canvas,
  study: Study,
  pose: Float64Array,
  wheel: Wheel,
  to: (place: Place) => readonly [number, number],
): void {
  const points = places(study, pose, wheel);
  if (points === null) return;
  const [x, y, z] = points.wheelCenter;
  const out = (wheel === "left" ? 1 : -1) * (3 * margin + study.tireRadius / 2);
  at(canvas, to([x, y + out, z]), wheel === "left" ? "L" : "R");
}

function at(canvas: Canvas, [x, y]: readonly [number, number], glyph: string): void {
  write(canvas, Math.floor(x / across), Math.floor(y / down), glyph);
}

function explain(model: Model, { name }: Drawing): string {
  const { study } = model.bench;
  if ("refused" in study) return "";
  const spot = spotWithin(model, name, size);
  const wheel = wheels[spot.column] ?? "left";
  const which = names[spot.row] ?? "tieRodOuter";
  const place = places(study, poseOf(model, study), wheel)?.[which];
  if (place === undefined) return "";
  const length = sayer(model.display);
  const [x, y, z] = place;
  const out = wheel === "left" ? y : -y;
  return `◆ ${wheel} wheel, ${placeNames[which]}: ${length(Math.abs(x))} ${x < 0 ? "behind" : "ahead of"} the front-axle line, ${length(out)} out from the middle, ${length(z)} up, where the wheels stand now. ${pinnedWords(model, study, wheel, which)}`;
}

/** Where the pinned car has the same place; without one, how to choose another place. */
function pinnedWords(model: Model, { inputKind }: Study, wheel: Wheel, which: keyof WheelPoints): string {
  const was = model.pin?.study;
  const choose = "The arrows choose another place.";
  if (was === undefined || "refused" in was || was.inputKind !== inputKind) return choose;
  const place = places(was, poseOf(model, was), wheel)?.[which];
  if (place === undefined) return choose;
  const length = sayer(model.display);
  const [x, y, z] = place;
  return `Pinned: ${length(Math.abs(x))} ${x < 0 ? "behind" : "ahead"}, ${length(wheel === "left" ? y : -y)} out, ${length(z)} up.`;
}

/** Wheels whose lines meet the rear axle's further off than so many wheelbases stand straight, to a builder. */
const farOff = 20;

/** Where each wheel's line meets the rear axle's, and how far apart. */
function meetingWords(model: Model): string {
  const { study } = model.bench;
  if ("refused" in study) return "";
  const ends = spindleLines(study, poseOf(model, study)).flatMap(({ places: [, end] }) =>
    end === undefined ? [] : [end[1]],
  );
  const [left, right] = ends;
  if (left === undefined || right === undefined || ends.some((y) => Math.abs(y) > farOff * study.wheelbase))
    return "The wheels stand too nearly straight for that: turn them (j, l).";
  const length = sayer(model.display);
  const where = (y: number) => `${length(Math.abs(y))} ${y > 0 ? "left" : "right"}`;
  return `The left one's meets it ${where(left)} of the middle, the right one's ${where(right)}: ${length(Math.abs(left - right))} apart.`;
}

function body(drawing: Drawing) {
  return ({ model, room }: { readonly model: Model; readonly room: Room }) => {
    const { study } = model.bench;
    const { columns } = room;
    const rows = room.rows - 1;
    if ("refused" in study) return null;
    const [side, how] = drawing.look === fromAbove ? ["FROM ABOVE", "nose up"] : ["FROM BEHIND", "left on the left"];
    const length = sayer(model.display);
    const { input, left, right } = model.place;
    const [low, high] = [travelPlace(left, length), travelPlace(right, length)];
    const travels = !study.suspended ? "" : low === high ? `, ${low}` : `, L ${low}, R ${high}`;
    const turned = inputPlace(study, input, length).replace(" of its middle", "");
    const titles = [`${side}, ${how}: ${turned}${travels}`, `${side}: ${turned}${travels}`, `${side}: ${turned}`, side];
    const blame = blameOf(poseOf(model, study), 0);
    const lines: readonly Line[] =
      blame === null
        ? draw(study, model, { columns, rows }, drawing)
        : wrapped(`DOES NOT REACH here: the ${blameWords(blame, length)}.`, columns - 2).map((text) => [
            { text: ` ${text}`, look: "bad" },
          ]);
    const shown = filled(lines, rows);
    return <Lines columns={columns} lines={[heading(model, columns, ...titles), ...shown]} />;
  };
}

function viewOf(key: string, help: string, drawing: Drawing): View {
  const { name, axle } = drawing;
  const pages: readonly ViewKey[] = axle ? [pageKey(name, ["front end", "lines to the rear axle"])] : [];
  return {
    name,
    key,
    help,
    keys: [...cursorKeys(name, size, "to the next place in the drawing:"), ...pages],
    explain: (model) =>
      axle && spotOf(model, name).page === 1
        ? `Dashes: each front wheel's own line back to the rear axle's (dots). ${meetingWords(model)} Where both meet in one place no tyre scrubs; that is the middle of the circle.`
        : explain(model, drawing),
    Body: body(drawing),
  };
}

/** The front end from above; on its second page with the wheels' lines to the rear axle. */
export const plan = viewOf("4", "drawing from above, moving with the wheel; lines to the rear axle", {
  name: "Plan",
  look: fromAbove,
  axle: true,
});

/** The front end as it is seen from the driver's seat. */
export const front = viewOf("5", "drawing from behind, moving with the suspension", {
  name: "Front",
  look: fromBehind,
  axle: false,
});
