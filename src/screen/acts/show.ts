import type { Display, Model } from "../model.ts";
import { type Act, turn } from "../turn.ts";

const inchesInTurn: readonly Display["inches"][] = [
  { unit: "in", fraction: 32 },
  { unit: "in", fraction: 16 },
  { unit: "in", decimals: 3 },
];

/** How inches are shown at first. */
export const firstInches: Display["inches"] = { unit: "in", fraction: 32 };

function show(model: Model, display: Partial<Display>) {
  return turn({ ...model, display: { ...model.display, ...display } });
}

export const showActs = {
  unit: (model) => show(model, { unit: model.display.unit === "in" ? "mm" : "in" }),
  fraction: (model) => {
    const at = inchesInTurn.findIndex((each) => JSON.stringify(each) === JSON.stringify(model.display.inches));
    return show(model, { inches: inchesInTurn[(at + 1) % inchesInTurn.length] ?? firstInches });
  },
  help: (model) => turn({ ...model, focus: { on: "help", top: 0 } }),
} satisfies Record<string, Act>;
