import { type NoGo, tabsAt } from "../../solve/tab-map/tabPlane.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { setValues } from "../../vehicle/edits/values.ts";
import { indexOf } from "../../vehicle/quantities.ts";
import { changed } from "../bench.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { type Act, turn } from "../turn.ts";
import type { MapPage } from "./mapPage.ts";
import { spotOf, withSpot } from "./spot.ts";
import { lines } from "./tabDrawing.ts";
import {
  cellHere,
  choiceSayer,
  choices,
  chosen,
  cursorOf,
  deltaOf,
  mapNow,
  planeName,
  planeOf,
  spotName,
} from "./tabPlan.ts";
import { lateJob } from "./work.ts";

const noGoWords: Readonly<Record<NoGo, string>> = {
  "does not close": "does not reach all steering and travel",
  "dead point": "dead point: rod-to-arm angle too small",
  rim: "the rod meets the rim",
  tyre: "the rod meets the tyre",
  shock: "the rod meets the shock",
  arm: "the rod meets an arm",
  "frame tube": "the rod meets a frame tube",
};

/** Why Enter does not move the tab. */
export function whyTabStays(model: Model): string | null {
  if ("refused" in model.bench.study) return "The front end does not go together: there is no map.";
  const { out, other } = deltaOf(model);
  return out === 0 && other === 0 ? "The tab is there already." : null;
}

export function whyPlaneStays(model: Model): string | null {
  return "refused" in model.bench.study ? "The front end does not go together: there is no map." : null;
}

/** The tab moved to the cursor, as one change; the map is then about its new place. */
const put: Act = (model) => {
  const asked = planeOf(model);
  const { out, other } = deltaOf(model);
  const { car } = model.bench;
  const values = tabsAt(car, asked, out, other);
  const sides = model.sides === "both" ? "both sides" : `${model.sides} only`;
  const where = placeWords(model, asked.wheels[0], values);
  const done = changed(model, setValues(car, values), `Tie-rod tab, ${sides}: moved to ${where}`);
  return done.model.bench.car === car
    ? done
    : { ...done, model: withSpot(done.model, spotName, { row: 0, column: 0 }) };
};

/** "19 3/4 in out, 4 1/2 in behind the axle": where the tab of a wheel is with these values. */
function placeWords(
  { bench: { car }, display }: Model,
  wheel: Wheel,
  values: Readonly<Record<string, number>>,
): string {
  const length = sayer(display);
  const [out, ahead, up] = ["out", "ahead", "up"].map((way) => {
    const id = `${wheel}.tie-rod.outer.${way}`;
    return values[id] ?? car.numbers[indexOf(id)];
  });
  const along = `${length(Math.abs(ahead))} ${ahead < 0 ? "behind" : "ahead of"} the axle`;
  return `${length(out)} out, ${along}, ${length(up)} up`;
}

const otherPlane: Act = (model) =>
  turn(
    withSpot(withSpot(model, spotName, { row: 0, column: 0 }), planeName, { page: 1 - spotOf(model, planeName).page }),
  );

const page: MapPage = {
  name: "where may the tie-rod tab go",
  title: (model) => chosen(model).choice.label,
  size: (model) => ({ rows: planeOf(model).others.rows, columns: planeOf(model).outs.rows }),
  lines,
  explain,
  take: null,
  move: (down, right) => (model) => {
    const { outs, others } = planeOf(model);
    const { row, column } = cursorOf(model);
    const from = (at: number, rows: number) => Math.min(rows - 1, Math.max(0, at)) - (rows - 1) / 2;
    return turn(
      withSpot(model, spotName, { row: from(row + down, others.rows), column: from(column + right, outs.rows) }),
    );
  },
  other: (ways) => (model) =>
    turn(withSpot(model, spotName, { page: (chosen(model).at + ways + choices.length) % choices.length })),
  work: (model) => {
    const { study, car } = model.bench;
    if ("refused" in study) return null;
    const asked = planeOf(model);
    const { wheels, plane, outs, others } = asked;
    return {
      key: [spotName, wheels.join(), plane, outs.rows, outs.to, others.rows, others.from, car.text].join("\n"),
      job: () =>
        lateJob(async () => {
          const [{ tabMapJob }, { tabNumbers }] = await Promise.all([
            import("../../solve/tab-map/tabMap.ts"),
            import("../../solve/tab-map/tabNumbers.ts"),
          ]);
          return tabMapJob(study, { ...asked, read: tabNumbers(study) });
        }),
    };
  },
};

/** The page of the tab, and what its own keys do. */
export const tabPage = { page, put, plane: otherPlane } as const;

function explain(model: Model): string {
  const { study, car } = model.bench;
  if ("refused" in study) return "";
  const asked = planeOf(model);
  const { out, other } = deltaOf(model);
  const { choice, at } = chosen(model);
  const cell = cellHere(model);
  const place = placeWords(model, asked.wheels[0], tabsAt(car, asked, out, other));
  const value = cell === undefined ? "is being worked out" : choiceSayer(model.display, choice)(cell.values[at]);
  const noGo = cell?.noGo ? ` NO GO: ${noGoWords[cell.noGo]}.` : "";
  const lacks = mapNow(model)?.lacks ?? [];
  const unseen = lacks.length === 0 ? "" : ` Clearances need in the file: ${lacks.join("; ")}.`;
  const what = whyTabStays(model) === null ? " Enter moves it there, u takes that back; the checks then decide." : "";
  const tabs = model.sides === "both" ? "Both tabs" : model.sides === "left" ? "Left tab" : "Right tab";
  return `${tabs} at ${place}: ${choice.label} ${value}.${noGo}${what} ${choice.explanation}${unseen}`;
}
