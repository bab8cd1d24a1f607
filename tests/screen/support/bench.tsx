import { renderToString } from "ink";
import { loadPreset } from "../../../src/files/presets.ts";
import { prepareSurvey } from "../../../src/screen/lateSurvey.ts";
import type { Model } from "../../../src/screen/model.ts";
import type { Effect, Message, Opened } from "../../../src/screen/turn.ts";
import { start, update } from "../../../src/screen/update.ts";
import { Screen } from "../../../src/screen/view/Screen.tsx";
import { readCar } from "../../../src/vehicle/read.ts";

await prepareSurvey();

/** An example car as it is opened, or a variation of its text. */
export function opened(preset: string, vary: (text: string) => string = (text) => text): Opened {
  const loaded = loadPreset(preset);
  if ("complaints" in loaded) throw new Error(`there is no example ${preset}`);
  const car = readCar(vary(loaded.text));
  if ("complaints" in car) throw new Error(car.complaints[0]?.message);
  return { source: { from: "preset", id: preset }, car, hash: null, offers: [], remark: null };
}

/** A screen driven without a terminal: what was asked for outside of the model is kept, and not done. */
export class Bench {
  model: Model;
  effects: Effect[] = [];

  constructor(car: Opened, columns = 80, rows = 24) {
    this.model = start(car, { columns, rows });
  }

  send(message: Message): this {
    const next = update(this.model, message);
    this.model = next.model;
    this.effects.push(...next.effects);
    return this;
  }

  /** Presses keys by their chords; "=text" types into the field. */
  press(...chords: readonly string[]): this {
    for (const chord of chords) {
      if (chord.startsWith("=")) this.send({ is: "typed", text: chord.slice(1) });
      else this.send({ is: "key", chord });
    }
    return this;
  }

  /** The value of a quantity on the bench, mm or rad. */
  value(index: number): number {
    return this.model.bench.car.numbers[index] ?? Number.NaN;
  }

  /** The lines that are seen. */
  lines(): readonly string[] {
    const frame = renderToString(<Screen model={this.model} onTyped={() => undefined} />, {
      columns: this.model.columns,
    });
    // Colours and weights say nothing that is not also said in words.
    return frame.replace(/\x1b\[[\d;]*m/g, "").split("\n");
  }

  text(): string {
    return this.lines().join("\n");
  }
}
