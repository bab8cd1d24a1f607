import { printable } from "../../src/output/printable.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { mayHoldProducts, prepareProducts } from "../../src/vehicle/units/products.ts";
import { chanceOf } from "./chance.ts";
import { mutated } from "./mutations.ts";
import { presetTexts } from "./presets.ts";

/** Longer than any text may take to be read, ms: a hundred times what the largest takes, on a busy machine. */
const longest = 5000;

/** Reads a car file that something happened to. Null where all is well, else what is wrong. */
export async function textShare(seed: number): Promise<string | null> {
  const chance = chanceOf(seed);
  const text = mutated(chance.one(presetTexts), chance);
  const begun = performance.now();
  if (mayHoldProducts(text)) await prepareProducts();
  const car = readCar(text);
  const took = performance.now() - begun;
  if (took > longest) return `reading took ${Math.round(took)} ms`;
  if ("complaints" in car) {
    if (car.complaints.length === 0) return "refused without a complaint";
    for (const { message, part, line, column } of car.complaints) {
      // What a complaint quotes of the file may not reach the terminal as it is.
      for (const words of [message, part])
        if (printable(words) !== words) return `a complaint holds ${JSON.stringify(words)}`;
      const count = text.split("\n").length;
      if ((line !== null && !(line >= 1 && line <= count)) || (column !== null && !(column >= 1)))
        return `a complaint points at ${line}:${column} of ${count} lines`;
    }
    return null;
  }
  if (car.text !== text) return "the car's text is another one";
  const odd = car.numbers.findIndex((value) => !Number.isFinite(value));
  return odd < 0 ? null : `number ${odd} is ${car.numbers[odd]}`;
}
