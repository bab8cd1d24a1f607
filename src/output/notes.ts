import type { Car } from "../vehicle/car.ts";
import { notesOf } from "../vehicle/notes.ts";
import { WIDTH, wrap } from "./table.ts";

/** What the builder, or a remedy that was taken, keeps with a car; nothing where there is nothing. */
export function noteLines(car: Pick<Car, "text">): string[] {
  const notes = notesOf(car);
  return notes === "" ? [] : notes.split("\n").flatMap((line) => wrap(line, WIDTH, "Note: ", 6));
}
