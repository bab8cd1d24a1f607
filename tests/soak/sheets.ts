import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { printable } from "../../src/output/printable.ts";
import { readCarReadings } from "../../src/vehicle/car-readings/read.ts";
import type { Complaint } from "../../src/vehicle/complaint.ts";
import { readSheet, sheetWith } from "../../src/vehicle/from-tape/sheet.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { blankSurvey } from "../../src/vehicle/survey/blank.ts";
import { readSurvey } from "../../src/vehicle/survey/sheet.ts";
import { mayHoldProducts, prepareProducts } from "../../src/vehicle/units/products.ts";
import { notFinite } from "../measures/notFinite.ts";
import { chanceOf } from "./chance.ts";
import { mutated } from "./mutations.ts";
import { presetText } from "./presets.ts";

/** ms, as for car files. */
const longest = 5000;

const example = (name: string) =>
  readFileSync(fileURLToPath(new URL(`../../presets/${name}.yaml`, import.meta.url)), "utf8");

const car = readCar(presetText("balanced-two-seater"));
if ("complaints" in car) throw new Error("the example is no car");

type Read = object | { readonly complaints: readonly Complaint[] };

/** Each kind of file beside cars: something that is read, and its reader. */
const kinds: readonly (readonly [text: string, read: (text: string) => Read])[] = [
  [example("readings/as-built"), (text) => readCarReadings(text, car)],
  [example("sheets/donor-front"), readSurvey],
  [blankSurvey({ linkage: "strut", mechanism: "relay" }, "mm"), readSurvey],
  [tapeSheet(), readSheet],
];

/** The short list, with the first answers on it. */
function tapeSheet(): string {
  return sheetWith({ units: "in", wheelbase: "68", "hub-height": "10 3/4" });
}

/** Reads a sheet that something happened to. Null where all is well, else what is wrong. */
export async function sheetShare(seed: number): Promise<string | null> {
  const chance = chanceOf(seed);
  const [whole, read] = chance.one(kinds);
  const text = mutated(whole, chance);
  const begun = performance.now();
  if (mayHoldProducts(text)) await prepareProducts();
  const found = read(text);
  const took = performance.now() - begun;
  if (took > longest) return `reading took ${Math.round(took)} ms`;
  if (!("complaints" in found)) return notFinite(found).join(" ") || null;
  if (found.complaints.length === 0) return "refused without a complaint";
  for (const { message, part } of found.complaints)
    for (const words of [message, part])
      if (printable(words) !== words) return `a complaint holds ${JSON.stringify(words)}`;
  return null;
}
