import { pathOf } from "../../files/save.ts";
import { type LabelName, labelNames, labelsOf, withLabel } from "../../vehicle/labels.ts";
import { withNotes } from "../../vehicle/notes.ts";
import { readCar } from "../../vehicle/read.ts";
import { withSectionValue } from "../../vehicle/section-values.ts";
import { readAmount } from "../amounts.ts";
import { changed } from "../bench.ts";
import type { Model } from "../model.ts";
import { type Act, type Turn, turn } from "../turn.ts";
import { withSpot } from "../views/spot.ts";
import { trialOf } from "./trials.ts";

/** Takes the line of text that was typed for what it was asked for; with a complaint the field stays. */
export const acceptLine: Act = (model) => {
  const { focus } = model;
  if (focus.on !== "line") return turn(model);
  const text = focus.text.trim();
  switch (focus.asks.about) {
    case "trial":
      return text === "" ? complain(model, "Type a name first.") : named(model, text);
    case "notes": {
      const notes = text
        .split("|")
        .map((line) => line.trim())
        .join("\n");
      return changed(model, withNotes(model.bench.car, notes), "Notes written");
    }
    case "label":
      return labelled(model, focus.asks.label, text);
    case "section": {
      if (text === "") return turn({ ...model, focus: { on: "bench" } });
      const after = withSectionValue(model.bench.car, focus.asks.path, text);
      const read = readCar(after);
      if ("complaints" in read) return complain(model, read.complaints[0]?.message ?? "That is no value.");
      return changed(model, after, `${focus.asks.path.join(".")}: set to ${text}`);
    }
    case "amount": {
      const { amount, view } = focus.asks;
      if (text === "") return turn({ ...model, focus: { on: "bench" } });
      const read = readAmount(amount, text, model);
      if ("complaint" in read) return complain(model, read.complaint);
      // What was typed is done once: the columns along which it is done more often begin there.
      const amounts = { ...model.amounts, [amount]: read.value };
      return turn(withSpot({ ...model, amounts, focus: { on: "bench" } }, view, { column: 0 }));
    }
    case "trialFile": {
      const trial = model.trials[focus.asks.trial];
      if (trial === undefined) return turn({ ...model, focus: { on: "bench" } });
      if (text === "") return complain(model, "Type a file name first, such as trial.yaml.");
      return turn(model, { do: "write", path: pathOf(text), text: trial.car.text });
    }
  }
};

/** Asks for a label, with what the file has of it in the field. */
export function askLabel(model: Model, label: LabelName): Turn {
  const text = labelsOf(model.bench.car)[label].split("\n").join(" ");
  return turn({ ...model, focus: { on: "line", asks: { about: "label", label }, text, complaint: null } });
}

/** The label is taken, and the next one asked for. */
function labelled(model: Model, label: LabelName, words: string): Turn {
  if (label === "title" && words === "") return complain(model, "A car needs a title.");
  const after = changed(model, withLabel(model.bench.car, label, words), `${label}: ${words === "" ? "none" : words}`);
  const next = labelNames[labelNames.indexOf(label) + 1];
  if (next === undefined || after.model.focus.on !== "bench") return after;
  return turn(askLabel(after.model, next).model, ...after.effects);
}

function complain(model: Model, complaint: string): Turn {
  return model.focus.on === "line" ? turn({ ...model, focus: { ...model.focus, complaint } }) : turn(model);
}

/** A name that is used already stands for the car as it is now. */
function named(model: Model, name: string): Turn {
  const trial = trialOf(model, name);
  const at = model.trials.findIndex((each) => each.name === name);
  const trials = at < 0 ? [...model.trials, trial] : model.trials.with(at, trial);
  return turn({
    ...model,
    trials,
    focus: { on: "bench" },
    notice: { text: `Kept as "${name}" while this screen is open.`, tone: "done" },
  });
}
