import { type Blame, blameWords } from "../measures/blame.ts";
import type { LeastRodAngle } from "../measures/leastRodAngle.ts";
import type { Locks } from "../measures/locks.ts";
import type { SteerRow } from "../measures/steerTable.ts";
import type { Study } from "../measures/study.ts";
import type { WorstBounce } from "../measures/worst.ts";
import type { WorstToe } from "../measures/worstToe.ts";
import type { LengthUnit, Wheel } from "../vehicle/car.ts";
import { inch } from "../vehicle/units/length.ts";

// What the numbers say, in a builder's words: each sentence stands here once, for screen and print. Without a full
// stop and without a capital letter, so that they can follow a heading or each other.

/** Writes a length in mm as the reader likes it, unit included: "15 25/32 in" or "396.1 mm". */
export type Length = (mm: number) => string;

/** An angle in degrees, never minus nothing: 0.0349 rad is "2.0°". */
export function degrees(angle: number, digits = 1): string {
  return `${fixed((angle * 180) / Math.PI, digits)}°`;
}

/** Like toFixed, never minus nothing. */
export function fixed(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

/** What the inputs of a front end are, which tells how they are said. */
type Steered = Pick<Study, "inputKind">;

/** Where the steering is: "rack 1/2 in left of its middle", "column 90.0° right of its middle", "rack in its middle". */
export function inputPlace({ inputKind }: Steered, input: number, length: Length): string {
  const say = inputKind === "rack" ? length : (angle: number) => degrees(angle);
  const size = say(Math.abs(input));
  if (size === say(0)) return `${inputKind} in its middle`;
  return `${inputKind} ${size} ${input > 0 ? "left" : "right"} of its middle`;
}

/** Where the wheel is: "3 in bump", "3 in droop", "ride height". */
export function travelPlace(travel: number, length: Length): string {
  const size = length(Math.abs(travel));
  return size === length(0) ? "ride height" : `${size} ${travel > 0 ? "bump" : "droop"}`;
}

/** "inner 31.8°, outer 26.1°"; null where the row does not close or nothing turns. */
export function lockAngles(row: SteerRow): string | null {
  if (row.inner === null || row.outer === null) return null;
  return `inner ${degrees(row.inner)}, outer ${degrees(row.outer)}`;
}

/** The angles of a lock that is in reach; or why there are none, which may be that straight ahead lies at that end. */
export function lockSaid(study: Pick<Study, "zero" | "inputKind">, row: SteerRow, wheel: Wheel): string {
  const angles = lockAngles(row);
  if (angles !== null && row.turn === wheel) return angles;
  if (study.zero === null) return "not known: the wheels cannot be set straight";
  return row.turn === null
    ? `none: the ${study.inputKind} ends there with the wheels straight`
    : `none: the ${study.inputKind} ends there with the wheels still turned ${row.turn}`;
}

/** "inner left lock 2.2° short of right", "inner locks are equal"; null when a lock is not known. */
export function unequalLocks(locks: Locks): string | null {
  const difference = locks.difference.inner;
  if (difference === null) return null;
  const size = degrees(Math.abs(difference));
  if (size === degrees(0)) return "inner locks are equal";
  return difference < 0 ? `inner left lock ${size} short of right` : `inner right lock ${size} short of left`;
}

/** A rack or column further off its middle than this (1/64 in, half a degree) can be measured and put right. */
export const offMiddle = { rack: 0.4, column: 0.5 * (Math.PI / 180) } as const;

/** True where rods that are as cut keep the rack or column off its middle while the wheels are straight. */
export function rodsPutOff({ zero, inputKind, car }: Pick<Study, "zero" | "inputKind" | "car">): boolean {
  const { left, right } = car.form.rods;
  return zero !== null && Math.abs(zero) >= offMiddle[inputKind] && (left === "cut" || right === "cut");
}

/** How far the rack or the column is off its middle with the wheels straight: unequal locks come mostly from there. */
export function inputOffMiddle(study: Study, length: Length): string {
  if (study.zero === null) return "the wheels cannot be set straight within reach of the steering";
  const cause = rodsPutOff(study) ? ": the rods are cut so" : "";
  return `${inputPlace(study, study.zero, length)} with the wheels straight${cause}`;
}

/** What "Rack at straight ahead" is at the bench, and how it is held. */
export const straightAheadWords =
  "where the rack (or column) stands in its housing when the wheels point straight: pin or clamp the steering there before rods are cut";

/** "turn radius to the outer tyre 163 in left, 158 in right", to what can be measured on the ground; null when not known. */
export function tightestTurn(locks: Locks, unit: LengthUnit): string | null {
  const left = locks.left?.turnRadius ?? null;
  const right = locks.right?.turnRadius ?? null;
  if (left === null || right === null) return null;
  return `turn radius to the outer tyre ${far(left, unit)} left, ${far(right, unit)} right`;
}

/** A length on the ground, to what can be measured there: "163 in", "4140 mm". */
export function far(mm: number, unit: LengthUnit): string {
  return unit === "in" ? `${fixed(mm / inch, 0)} in` : `${fixed(mm / 10, 0)}0 mm`;
}

/** "inner 1.6° short of ideal", "inner 0.4° past ideal", "inner as ideal"; null where there is no ideal. */
export function shortOfIdeal(row: SteerRow): string | null {
  if (row.inner === null || row.idealInner === null) return null;
  const size = degrees(Math.abs(row.idealInner - row.inner));
  if (size === degrees(0)) return "inner as ideal";
  return `inner ${size} ${row.inner < row.idealInner ? "short of" : "past"} ideal`;
}

/** What a turn plate reads, rad: half a degree (common practice, no source). */
const plateReads = 0.5 * (Math.PI / 180);

/**
 * Whether a turn plate can tell the ideal inner wheel from the outer one. Below that a percent of their difference says
 * nothing: near straight ahead a few hundredths of a degree would read as a poor Ackermann effect.
 */
export function percentsTell({ idealInner, outer }: Pick<SteerRow, "idealInner" | "outer">): boolean {
  return idealInner !== null && outer !== null && Math.abs(idealInner - outer) >= plateReads;
}

/** "76 %, inner 1.6° short of ideal (95 % of it)"; null while the outer wheel turns too little to tell. */
export function ackermannOf(row: SteerRow): string | null {
  const short = shortOfIdeal(row);
  if (short === null || row.ackermann === null || row.percentOfIdealInner === null) return null;
  return `${fixed(row.ackermann, 0)} %, ${short} (${fixed(row.percentOfIdealInner, 0)} % of it)`;
}

/** Words for a toe: "in" for toe-in, "out" for toe-out. */
export function toeWay(toe: number): "in" | "out" {
  return toe >= 0 ? "in" : "out";
}

/** Less toe across the tyre than this, mm, is nothing that a tape could show: 1/64 in (common practice, no source). */
const tapeReads = inch / 64;

/** True where a wheel's toe stays what it is, as far as a tape can tell. */
export function keepsToe({ acrossTyre }: Pick<WorstToe, "acrossTyre">): boolean {
  return Math.abs(acrossTyre) < tapeReads;
}

/** "toes out 7/16 in across the tyre (1.2°) at 3 in droop", "keeps its toe (within 0.02°)". */
export function worstToe(worst: WorstToe, length: Length): string {
  const size = degrees(Math.abs(worst.toeChange), 2);
  if (keepsToe(worst)) return size === degrees(0, 2) ? "keeps its toe" : `keeps its toe (within ${size})`;
  const across = length(Math.abs(worst.acrossTyre));
  return `toes ${toeWay(worst.toeChange)} ${across} across the tyre (${size}) at ${travelPlace(worst.travel, length)}`;
}

/** What a curve of toe over travel chiefly is, explained. */
export const curveWords = {
  slope: "a slope (toe-in one way, toe-out the other)",
  bow: "a bow (the same way in bump and in droop)",
} as const;

/** Whether a rod's length follows its ends, or stays. */
export type Rod = Study["car"]["form"]["rods"][Wheel];

/** Which way a rod's inner end has to go; null where that hardly helps, undefined where it was not tried. */
export type InnerEnd = Study["innerEnds"][Wheel] | undefined;

/** "up", "in or out" where it was not tried; null where it hardly helps. */
function innerEndTo(worst: WorstToe, way: InnerEnd): string | null {
  return way === undefined ? (worst.chiefly === "slope" ? "up or down" : "in or out") : way;
}

/** "inner end up", for where there is little room; null where it stands as well as a tape can set it. */
export function innerEndBrief(worst: WorstToe, way: InnerEnd): string | null {
  if (way === "here") return null;
  const to = innerEndTo(worst, way);
  return to === null ? "not the inner end" : `inner end ${to.replace(" or ", "/")}`;
}

/**
 * What to move for less bump steer: another length of a rod, its ends where they are, only sets the toe, so that a bow asks
 * for its inner end. Null where there is nothing to mend.
 */
export function bumpMove(worst: WorstToe, rod: Rod, way: InnerEnd): string | null {
  if (keepsToe(worst) || way === "here") return null;
  const to = innerEndTo(worst, way);
  if (to === null) return "moving the rod's inner end hardly helps; the tab may (a find, or sensitivity, says)";
  const recut = rod === "fit" ? ", the rod is cut to follow" : " and recut the rod to it";
  return `move the rod's inner end ${to}${/up|down/.test(to) ? "" : recut}`;
}

/** "mostly a slope (...): move the rod's inner end up"; null where there is nothing to mend. */
export function bumpCure(worst: WorstToe, rod: Rod, way: InnerEnd): string | null {
  const move = bumpMove(worst, rod, way);
  return move === null ? null : `mostly ${curveWords[worst.chiefly]}: ${move}`;
}

/** The worst toe and what to move for less of it. */
export function worstToeAndCure(worst: WorstToe, rod: Rod, way: InnerEnd, length: Length): string {
  return [worstToe(worst, length), bumpCure(worst, rod, way)].filter((words) => words !== null).join("; ");
}

/** Said where one inner end asks to go out and the other in, which is one move of both. */
export function bothEndsOneWay({ innerEnds: { left, right }, worst: { toe } }: Study): string | null {
  if (toe.left === null || toe.right === null || keepsToe(toe.left) || keepsToe(toe.right)) return null;
  const to = left === "out" && right === "in" ? "left" : left === "in" && right === "out" ? "right" : null;
  return to === null ? null : `both inner ends ask to go to the driver's ${to}: they stand off the middle`;
}

/** "both steer right 0.9° at 3 in droop", "no steer of both wheels the same way". */
export function bounce(worst: WorstBounce, length: Length): string {
  const size = degrees(Math.abs(worst.bounceSteer));
  if (size === degrees(0)) return "no steer of both wheels the same way";
  return `both steer ${worst.bounceSteer > 0 ? "left" : "right"} ${size} at ${travelPlace(worst.travel, length)}`;
}

/** Said in the place of all that travel does. */
export function noTravelWords({ noTravel }: Pick<Study, "noTravel">): string {
  return noTravel === "assumed"
    ? "not known: arms and wheel travel are assumed; measure pivots, joints, bump and droop (page 2 of the readings)"
    : "no suspension: the king pins are fixed to the frame, so the wheels have no travel";
}

/** How near its dead point a rod comes: the shops' own limits, common practice. */
export type Grade = "good" | "doubtful" | "dangerous";

const degree = Math.PI / 180;

/** Under 30 degrees of rod-to-arm angle is doubtful, under 20 dangerous (common practice, no source). */
export function rodAngleGrade(angle: number): Grade {
  return angle < 20 * degree ? "dangerous" : angle < 30 * degree ? "doubtful" : "good";
}

/** The least rod-to-arm angle of either wheel over its whole range, rad; no bound where no wheel closes. */
export function leastOfBoth({ worst: { rodAngle } }: Pick<Study, "worst">): number {
  return Math.min(rodAngle.left?.angle ?? Number.POSITIVE_INFINITY, rodAngle.right?.angle ?? Number.POSITIVE_INFINITY);
}

/** "DOUBTFUL: a rod comes to 23.3° from its dead point somewhere in the travel"; null where it is good. */
export function nearDeadPoint(study: Pick<Study, "worst">): string | null {
  const least = leastOfBoth(study);
  const grade = rodAngleGrade(least);
  if (grade === "good") return null;
  return `${grade.toUpperCase()}: a rod comes to ${degrees(least)} from its dead point somewhere in the travel`;
}

/** The same as a sentence of its own. */
export function deadPoint(study: Pick<Study, "worst">): string | null {
  const words = nearDeadPoint(study);
  return words === null ? null : `${words}.`;
}

/** "17.5° at least (rack 2 in left of its middle, ride height): DANGEROUS, under 20°". */
export function leastRodAngle(steered: Steered, least: LeastRodAngle, length: Length): string {
  const where = `${inputPlace(steered, least.input, length)}, ${travelPlace(least.travel, length)}`;
  const grade = rodAngleGrade(least.angle);
  const warning = grade === "good" ? "" : grade === "doubtful" ? ": DOUBTFUL, under 30°" : ": DANGEROUS, under 20°";
  return `${degrees(least.angle)} at least (${where})${warning}`;
}

/** "left 15 25/32 in, cut to fit" or "left 15 25/32 in, as cut". */
export function rodLength(study: Study, wheel: Wheel, length: Length): string {
  const state = study.car.form.rods[wheel] === "fit" ? "cut to fit" : "as cut";
  return `${length(study.rodLengths[wheel])}, ${state}`;
}

/** A toe in words: "0.10° toe-in". */
export function toeWords(toe: number): string {
  return `${degrees(Math.abs(toe), 2)} toe-${toeWay(toe)}`;
}

/** The toe the wheels stand at, straight ahead: "0.10° toe-in"; null when there is no straight ahead. */
export function toeAtZero(study: Study, wheel: Wheel): string | null {
  if (study.zeroSteer === null) return null;
  const toe = wheel === "left" ? -study.zeroSteer.left : study.zeroSteer.right;
  return degrees(Math.abs(toe), 2) === degrees(0, 2) ? "no toe" : toeWords(toe);
}

/**
 * More toe than this at either wheel, straight ahead, is no setting but a mistake: cars are set to a fraction of it
 * (common practice, no source).
 */
const mostToe = 1 * degree;

/**
 * Said loudly wherever the car is shown: the wheels do not point straight ahead when they stand straight. Locks and
 * Ackermann are counted from there, so they look well all the same. Null where the toe is one that a car is set to. `cure` is
 * said where rods that are as cut make it.
 */
export function wildToe(study: Study, cure = ""): string | null {
  if (study.zeroSteer === null) return null;
  const { drawn, zeroSteer } = study;
  const toe = { left: -zeroSteer.left, right: zeroSteer.right };
  if (Math.abs(toe.left) <= mostToe && Math.abs(toe.right) <= mostToe) return null;
  const said = (wheel: Wheel) => `${toeWay(toe[wheel]).toUpperCase()} ${degrees(Math.abs(toe[wheel]))}`;
  const alike = said("left") === said("right");
  const wheels = alike ? `WHEELS TOE ${said("left")} EACH` : `WHEELS TOE LEFT ${said("left")}, RIGHT ${said("right")}`;
  const meant = Math.abs(drawn.left.toe) > mostToe || Math.abs(drawn.right.toe) > mostToe;
  return `${wheels} STRAIGHT AHEAD: ${meant ? "the car's toe is set so" : `rods as cut do not fit${cure}`}`;
}

/** Said loudly wherever the car is shown; null when it steers the right way or the file does not say. */
export function steersBackwards(study: Study): string | null {
  if (study.steersBackwards !== true) return null;
  return "STEERS BACKWARDS: steering wheel left turns the road wheels right";
}

/** Why a place is out of reach, and which: "does not close at rack ..., 3 in bump: left tie rod is 5/16 in too short". */
export function outOfReach(steered: Steered, blame: Blame, length: Length): string {
  const where = `${inputPlace(steered, blame.input, length)}, ${travelPlace(blame.travel, length)}`;
  return `does not close at ${where}: ${blameWords(blame, length)}`;
}

/** What must be said beside numbers that can hurt someone. */
export const cautions: readonly string[] = [
  "This is geometry, not a strength check.",
  "Have steering and suspension welds and hardware inspected by someone qualified.",
  "Local codes and the sanctioning body's rules decide.",
  "Turn the wheels lock to lock through full travel on stands before driving.",
];
