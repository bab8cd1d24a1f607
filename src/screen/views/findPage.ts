import { madeAnew } from "../../output/findArms.ts";
import { costWords } from "../../output/findCosts.ts";
import {
  brokenWords,
  goalShort,
  metByLittle,
  metShort,
  movesBrief,
  placeLines,
  STAYS,
} from "../../output/findWords.ts";
import { deadPoint, type Length } from "../../output/words.ts";
import type { Answer, Found } from "../../solve/find/find.ts";
import type { Placed } from "../../solve/find/place.ts";
import type { FoundTexts } from "../../solve/find/shown.ts";
import type { Goal } from "../../solve/goals/goals.ts";
import { changed } from "../bench.ts";
import { searchKey, searchOf } from "../found.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { turn } from "../turn.ts";
import type { Line } from "../view/Lines.tsx";
import { wrapped } from "../view/wrap.ts";
import type { Page } from "./page.ts";
import { spotWithin } from "./spot.ts";
import { goOn, lateJob, progressWords } from "./work.ts";

const nameColumns = 30;
const cellColumns = 11;

function shownOf(model: Model): FoundTexts | null {
  const result = searchOf(model);
  return result === null || "why" in result ? null : result;
}

/** The page of the places that meet the car's goals best, in the view of that name. */
export function findPage(view: string): Page {
  const size: Page["size"] = (model) => ({ rows: shownOf(model)?.found.answers.length ?? 0, columns: 1 });
  const at = (model: Model) => spotWithin(model, view, size).row;
  const here = (model: Model): Answer | undefined => shownOf(model)?.found.answers[at(model)];
  return {
    name: "find a place",
    title: (model) => `FIND A PLACE${progressWords(model.work) || " (a: goals, room)"}`,
    size,
    lines: (model, columns) => lines(model, columns, at(model)),
    explain: (model) => {
      const [answer, shown] = [here(model), shownOf(model)];
      return answer === undefined || shown === null ? "" : explained(model, shown.found, answer);
    },
    take: {
      act: (model) => {
        const [answer, shown] = [here(model), shownOf(model)];
        const text = shown?.texts[at(model)];
        if (answer === undefined || shown === null || text === undefined) return turn(model);
        const what = movesBrief(shown.found.quest.variables, answer.snapped.moves, sayer(model.display));
        return changed(model, text(), `${shown.found.done ? "Found" : "Taken before the search ended"}: ${what}`);
      },
      off: (model) => {
        const result = searchOf(model);
        if (result !== null && "why" in result)
          return `There is no search: ${result.pair}: ${result.why}. a changes its room.`;
        return here(model) === undefined ? "Nothing is found yet." : null;
      },
    },
    work: (model) => {
      const { study } = model.bench;
      if ("refused" in study) return null;
      return {
        key: searchKey(model),
        job: () =>
          lateJob(async () => {
            const { shownJob } = await import("../../solve/find/shown.ts");
            return shownJob(study);
          }),
      };
    },
  };
}

function lines(model: Model, columns: number, at: number): readonly Line[] {
  const result = searchOf(model);
  if (result !== null && "why" in result)
    return [` There is no search: ${result.pair}: ${result.why}.`, " Press a and change its room."];
  const found = result?.found;
  if (found === undefined || found.answers.length === 0)
    return found?.done
      ? ["  No place goes together within this room. a gives it more."]
      : isStopped(model)
        ? [`  Stopped before a place was found. ${goOn}`]
        : ["  Looking for places ... a: what is looked for, and what may move."];
  const length = sayer(model.display);
  const { unit } = model.display;
  const { quest, before, answers } = found;
  const places = answers.map(({ snapped }, i): Line => {
    const words = `${i === at ? ">" : " "} ${i + 1} ${movesBrief(quest.variables, snapped.moves, length)}`;
    const text = words.length > columns - 2 ? `${words.slice(0, columns - 5)}...` : words;
    return i === at ? [{ text, look: "marked" }] : text;
  });
  const many = Math.max(1, Math.floor((columns - nameColumns - 2) / cellColumns) - 1);
  const shown = [before, ...answers.slice(0, many).map(({ snapped }) => snapped)];
  // That the front end goes together is worth a line only where it does not.
  const told = quest.goals.filter((goal) => goal.name !== "range" || missed(shown, goal));
  const cells = told.map((goal) => {
    const values = shown.map(({ score }) => {
      const met = score.met.find((each) => each.goal === goal);
      return met === undefined ? "-" : metShort(met, unit, length);
    });
    return `  ${goalShort(goal, unit, length)
      .slice(0, nameColumns - 1)
      .padEnd(nameColumns)}${values.map((each) => ` ${each}`.padStart(cellColumns)).join("")}`;
  });
  const heads = ["now", ...shown.slice(1).map((_, i) => String(i + 1))]
    .map((each) => each.padStart(cellColumns))
    .join("");
  const here = answers[at];
  const measured = here === undefined ? "" : thenAt(found, here, length);
  return [
    ...places,
    [{ text: `  ${"! is missed".padEnd(nameColumns)}${heads}`, look: "strong" }],
    ...cells,
    ...(measured === "" ? [] : ["", ...wrapped(measured, columns - 3).map((line) => `  ${line}`)]),
  ];
}

/** Where to measure to once an answer is taken; "" where it leaves everything where it is. */
function thenAt({ quest }: Found, { snapped }: Answer, length: Length): string {
  const places = placeLines(quest.variables, snapped.moves, snapped, length);
  return places.length === 0 ? "" : `Then at: ${places.join("; ")}.`;
}

function missed(places: readonly Placed[], goal: Goal): boolean {
  return places.some(({ score }) => score.met.some((each) => each.goal === goal && each.miss > 0));
}

function isStopped({ work }: Pick<Model, "work">): boolean {
  return work?.state === "stopped";
}

/** What a search that is not through leaves open; "" of one that is. */
function unfinishedWords(model: Model, { done }: Found, moved: boolean): string {
  if (done) return "";
  if (isStopped(model))
    return `STOPPED: ${moved ? "a better one may be missed, and this one is not checked" : "nothing better was found so far"}. ${goOn} `;
  return `STILL LOOKING: ${moved ? "a better one may come, and this one is not yet checked" : "nothing better yet"}. `;
}

function explained(model: Model, found: Found, answer: Answer): string {
  const { snapped, check, tight, costs } = answer;
  const near = deadPoint(snapped.study);
  const length = sayer(model.display);
  const fails = snapped.score.met.some(({ goal, miss }) => goal.level === "must" && miss > 0);
  const broken = brokenWords(check);
  const brief = movesBrief(found.quest.variables, snapped.moves, length);
  const moved = !brief.split("; ").every((each) => each.endsWith(STAYS));
  const { left, right } = snapped.study.rodLengths;
  return [
    near === null ? "" : `${near} `,
    fails ? "A MUST IS NOT MET. " : "",
    broken.length > 0 ? `PAST A LIMIT: ${broken.join("; ")}. ` : "",
    ...costWords(costs, model.display.unit, length).map((words) => `${words} `),
    unfinishedWords(model, found, moved),
    moved
      ? `Enter takes it: ${brief}. u takes it back. `
      : found.done
        ? "No step is better than where it all is. "
        : "",
    ...(found.done ? metByLittle(tight, model.display.unit, length) : []).map((words) => `MET BY LITTLE: ${words}. `),
    `Rods ${length(left)} left, ${length(right)} right. `,
    ...madeAnew(found.quest.variables, snapped.moves, snapped.study.car, length).map((words) => `${words} `),
    `${thenAt(found, answer, length)} `.trimStart(),
    "a: what is looked for and what may move.",
  ].join("");
}
