import { wrap } from "../table.ts";
import { type At, boxOf, type Drawing, letters, line, type Shape, thin, words } from "./flat.ts";

/** 100 mm and 4 in to be measured on the print, from their left end. */
export function scaleBars([x, y]: At): readonly Shape[] {
  const bar = (low: number, long: number, text: string): readonly Shape[] => [
    line("mark", [x, low], [x + long, low]),
    line("mark", [x, low - 1.5], [x, low + 1.5]),
    line("mark", [x + long, low - 1.5], [x + long, low + 1.5]),
    words([x + long + 3, low - 1.5], text, 3),
  ];
  return [...bar(y, 100, "100 mm"), ...bar(y - 7, 101.6, "4 in")];
}

/** Said on every drawing, since it is cut by it. */
export const cautions: readonly string[] = [
  "FULL SIZE: print at 100 %, do not scale to fit.",
  "Measure the bars, and one size of the drawing on the car, before anything is cut.",
  "Geometry only, not strength: have welds and hardware inspected by someone qualified.",
];

/** Heights of letters: of a title, and of what stands against cutting. */
const big = 5;
const loud = 4;
/** Room between the frame of what stands against cutting and its words. */
const pad = 2.5;

/** How wide a letter of prose is on the average, as a share of its height, with some to spare. */
const usual = 0.57;

/** How wide a column of words below a drawing is: across the narrowest paper. */
const column = 120;

/**
 * What is to be read with a drawing, from a left upper corner down: its title, its car, what stands against cutting,
 * its notes and what is said of every drawing.
 */
export function readingOf(
  { title, car, before, notes }: Drawing,
  [left, top]: At,
  wide: number,
  always: readonly string[] = cautions,
): readonly Shape[] {
  const shapes: Shape[] = [];
  let y = top;
  const say = (text: string, high: number, inset = 0) => {
    for (const each of wrap(text, Math.max(1, Math.floor((wide - 2 * inset) / (usual * high))))) {
      y -= high * 1.45;
      shapes.push(words([left + inset, y], each, high));
    }
  };
  say(title, big);
  say(car, letters);
  if (before.length > 0) {
    y -= 3;
    const start = y;
    y -= pad - 1;
    say("BEFORE CUTTING:", big, pad);
    for (const each of before) say(each, loud, pad);
    y -= pad;
    const [a, b, c, d]: readonly At[] = [
      [left, start],
      [left + wide, start],
      [left + wide, y],
      [left, y],
    ];
    if (a && b && c && d) shapes.push(thin(a, b), thin(b, c), thin(c, d), thin(d, a));
    y -= 1;
  }
  y -= 2;
  for (const each of [...notes, ...always]) say(each, letters);
  return shapes;
}

/** The shapes of a drawing with what is to be read and the bars below it: what is printed or cut by. */
export function lettered(drawing: Drawing): readonly Shape[] {
  const { left, low } = boxOf(drawing.shapes);
  const reading = readingOf(drawing, [left, low - 8], column);
  return [...drawing.shapes, ...reading, ...scaleBars([left, boxOf(reading).low - 8])];
}
