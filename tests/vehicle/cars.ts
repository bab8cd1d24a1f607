import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Car } from "../../src/vehicle/car.ts";
import { indexOf } from "../../src/vehicle/quantities.ts";
import { readCar } from "../../src/vehicle/read.ts";

const folder = fileURLToPath(new URL("../../presets", import.meta.url));

/** The texts of all example cars, by name. */
export const presets: ReadonlyMap<string, string> = new Map(
  readdirSync(folder)
    .filter((file) => file.endsWith(".yaml"))
    .map((file) => [file.slice(0, -5), readFileSync(`${folder}/${file}`, "utf8")]),
);

/** An example car's text. */
export function preset(name: string): string {
  const text = presets.get(name);
  if (text === undefined) throw new Error(`no example car is called ${name}`);
  return text;
}

/** The car in a text that is one. */
export function carIn(text: string): Car {
  const car = readCar(text);
  if ("complaints" in car) throw new Error(told(text).join("\n"));
  return car;
}

/** What is complained of in a text, each as line:column part: message. */
export function told(text: string): readonly string[] {
  const car = readCar(text);
  const all = "complaints" in car ? car.complaints : [];
  return all.map(({ line, column, part, message }) => `${line}:${column} ${part}: ${message}`);
}

/** A quantity's value, mm or rad. */
export function value(car: Car, id: string): number {
  return car.numbers[indexOf(id)] ?? Number.NaN;
}

/** A small car in mm, all in one style, to change at will. */
export const plain = `units: mm
wheelbase: 2000
tire: { radius: 300, width: 200 }
rim: { diameter: 300, width: 150 }
wheel-travel: { bump: 80, droop: 80 }
front:
  linkage: double-arm
  both:
    lower-arm:
      front: { ahead: 120, out: 200, up: 200 }
      rear: { ahead: -120, out: 200, up: 200 }
      joint: { ahead: 5, out: 550, up: 190 }
    upper-arm:
      front: { ahead: 90, out: 240, up: 350 }
      rear: { ahead: -120, out: 240, up: 345 }
      joint: { ahead: -15, out: 520, up: 380 }
    tie-rod:
      outer: { ahead: -110, out: 520, up: 230 }
    wheel:
      center: { ahead: 0, out: 620, up: 300 }
steering:
  mechanism: rack
  rack:
    ahead: -140
    up: 232
    eye-to-eye: 400
    travel: 55
`;
