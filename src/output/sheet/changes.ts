import type { Study } from "../../measures/study.ts";
import { type RodFit, threadsOf } from "../../measures/threads.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { type Difference, differences } from "../../vehicle/differences.ts";
import { inputChange, inputName, saidWords } from "../compare.ts";
import { list, mind, type PaperPart, tableOf, words } from "../paper/paper.ts";
import { waysOf } from "../ways.ts";
import { fixed } from "../words.ts";
import { type Writing, wheels } from "./writing.ts";

/** How much longer a tie rod of the present car becomes, and how that is done. */
export interface RodChange {
  readonly wheel: Wheel;
  /** mm, longer positive. */
  readonly by: number;
  /** Turns that do it: of the tube of a turnbuckle, else of the outer end off its bolt; null where threads are not given. */
  readonly turns: number | null;
  readonly turned: "tube" | "outer end" | null;
  /** Whether the present tube and threads allow it; null where the file does not say how long that tube is. */
  readonly fits: boolean | null;
  /** The end from which a turned tube goes clockwise to make the rod longer: that of the right-hand thread. */
  readonly seenFrom: "outer" | "inner" | null;
  /** Length of the tube that takes the present one's place, mm; null where it stays or the file does not say. */
  readonly newTube: number | null;
}

/** Half of 1/64 in, mm: less than this no tape tells. */
const LITTLE = 0.2;

type Turning = Pick<RodChange, "turns" | "turned" | "fits" | "seenFrom">;

/**
 * A right-hand thread comes out as its male part turns anticlockwise seen from that part's far end, and so as the tube turns
 * clockwise seen from there; at the other end the left-hand thread then comes out as well (elementary).
 */
function turnsOf(fit: RodFit, by: number): Turning {
  // Without the tube's length its ends are taken to stand in the middle of their adjustment: that is no promise.
  const fits = fit.isCut ? (by > 0 ? by <= fit.longer : -by <= fit.shorter) : null;
  return fit.turnbuckle
    ? {
        turns: Math.abs(by) / fit.step,
        turned: "tube",
        fits,
        seenFrom: fit.ends[0].thread.hand === "right" ? "outer" : "inner",
      }
    : { turns: Math.abs(by) / (2 * fit.step), turned: "outer end", fits, seenFrom: null };
}

/** What becomes of each tie rod from the present car to this one, by the present car's threads. */
export function rodChanges(from: Study, to: Study): readonly RodChange[] {
  return wheels.map((wheel) => {
    const by = to.rodLengths[wheel] - from.rodLengths[wheel];
    const fit = threadsOf(from, wheel);
    const next = threadsOf(to, wheel);
    const cut = fit?.isCut && next?.isCut ? next.tube : null;
    const newTube = cut !== null && fit !== null && Math.abs(cut - fit.tube) > LITTLE ? cut : null;
    const unknown: Turning = { turns: null, turned: null, fits: null, seenFrom: null };
    return { wheel, by, newTube, ...(fit === null || newTube !== null ? unknown : turnsOf(fit, by)) };
  });
}

/** Turns as they are counted at the car: a tube by quarters, an end on its bolt by halves. */
function turnsWords(turns: number, turned: "tube" | "outer end"): string {
  const parts = turned === "tube" ? 4 : 2;
  const count = Math.round(turns * parts);
  const [whole, part] = [Math.floor(count / parts), count % parts];
  const fraction = part === 0 ? "" : part * 2 === parts ? "1/2" : `${part}/4`;
  const said =
    whole === 0 && fraction !== "" ? fraction : [String(whole), fraction].filter((each) => each !== "").join(" ");
  return `${said} ${count === parts || (count < parts && count > 0) ? "turn" : "turns"} (${fixed(turns, 2)})`;
}

/** "Left tie rod 1/8 in (0.125) longer: 1 1/4 turns (1.26) of the tube, clockwise seen from its outer end". */
export function rodChangeWords(
  { wheel, by, turns, turned, fits, seenFrom, newTube }: RodChange,
  eyeToEye: number,
  { unit, length, cut }: Writing,
): string {
  const name = wheel === "left" ? "Left tie rod" : "Right tie rod";
  if (newTube !== null) return `${name}: a new tube, ${cut(newTube)} long; set it to ${cut(eyeToEye)} eye to eye`;
  if (Math.abs(by) < LITTLE) return `${name}: stays`;
  const size =
    length(Math.abs(by)) === length(0)
      ? `${fixed(Math.abs(by) / (unit === "in" ? 25.4 : 1), 3)} ${unit}`
      : cut(Math.abs(by));
  const change = `${name} ${size} ${by > 0 ? "longer" : "shorter"}`;
  if (turns === null || turned === null) return `${change}: turns cannot be told, threads are not given`;
  if (fits === false) return `${change}: MORE THAN ITS THREADS ALLOW, make another tube`;
  const way = by > 0 ? "clockwise" : "anticlockwise";
  const seen = seenFrom === null ? "" : `, ${way} seen from its ${seenFrom} end`;
  const what = turned === "tube" ? `of the tube${seen}` : "of the outer end, off its bolt";
  const unknown = fits === null ? "; measure first how much thread is in, the present file has no threads: cut" : "";
  return `${change}: ${turnsWords(turns, turned)} ${what}${unknown}`;
}

function moveWords(difference: Difference, writing: Writing): string {
  const change = inputChange(difference, 1, writing.unit);
  if (change === "") return "";
  const way = difference.kind === "length" ? waysOf(difference.id) : null;
  if (way === null) return change;
  return `${change.replace(/^[-+]/, "")} ${change.startsWith("-") ? way[1] : way[0]}`;
}

/** What is to be done to the present car to make it this one. */
export function changePart(from: Study, to: Study, writing: Writing): PaperPart {
  const heading = "Change: from the car as it is now";
  const said = differences([from.car, to.car]).filter(({ id }) => !id.endsWith("tie-rod.length"));
  const rods = rodChanges(from, to);
  const tight = rods.some(({ fits }) => fits === false);
  return {
    heading,
    blocks: [
      words(`Now: ${from.car.title}.`),
      list(rods.map((each) => rodChangeWords(each, to.rodLengths[each.wheel], writing))),
      ...(tight
        ? [
            mind(
              "An end that is unscrewed beyond its threads' hold comes out: never make up for a short tube with thread.",
            ),
          ]
        : []),
      said.length === 0
        ? words("Nothing else changes.")
        : tableOf(
            ["Everything else", "now", "to be", "so"],
            said.map((each) => [
              inputName(each),
              saidWords(each, 0, writing.unit),
              saidWords(each, 1, writing.unit),
              moveWords(each, writing),
            ]),
            [0, 1, 2, 3],
          ),
    ],
  };
}
