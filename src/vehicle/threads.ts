import { inch } from "./units/length.ts";

/** A screw thread by its designation. Lengths mm. */
export interface Thread {
  /** As the standard writes it, such as "1/2-20" or "M12x1.75". */
  readonly name: string;
  readonly diameter: number;
  readonly pitch: number;
  /** Thickness of a thin hexagon nut for it. */
  readonly jamNut: number;
}

/**
 * Unified threads, ASME B1.1: the diameter in inches as it is said, and threads per inch of the coarse (UNC) and the fine
 * (UNF) series. The last number is the thickness of a hexagon jam nut, inches, ASME B18.2.2. All quoted from memory.
 */
const unified: readonly (readonly [size: string, diameter: number, coarse: number, fine: number, jamNut: number])[] = [
  ["1/4", 1 / 4, 20, 28, 5 / 32],
  ["5/16", 5 / 16, 18, 24, 3 / 16],
  ["3/8", 3 / 8, 16, 24, 7 / 32],
  ["7/16", 7 / 16, 14, 20, 1 / 4],
  ["1/2", 1 / 2, 13, 20, 5 / 16],
  ["9/16", 9 / 16, 12, 18, 5 / 16],
  ["5/8", 5 / 8, 11, 18, 3 / 8],
  ["3/4", 3 / 4, 10, 16, 27 / 64],
  ["7/8", 7 / 8, 9, 14, 31 / 64],
  ["1", 1, 8, 12, 35 / 64],
];

/**
 * Metric threads, ISO 261: nominal diameter, the coarse pitch, and the fine ones of the standard that are in use on such
 * parts, mm. The last number is the thickness of a thin nut, ISO 4035. All quoted from memory.
 */
const metric: readonly (readonly [diameter: number, coarse: number, fine: readonly number[], jamNut: number])[] = [
  [5, 0.8, [0.5], 2.7],
  [6, 1, [0.75], 3.2],
  [8, 1.25, [1, 0.75], 4],
  [10, 1.5, [1.25, 1, 0.75], 5],
  [12, 1.75, [1.5, 1.25, 1], 6],
  [14, 2, [1.5, 1.25, 1], 7],
  [16, 2, [1.5, 1], 8],
  [18, 2.5, [2, 1.5, 1], 9],
  [20, 2.5, [2, 1.5, 1], 10],
  [22, 2.5, [2, 1.5, 1], 11],
  [24, 3, [2, 1.5, 1], 12],
];

type Read = { readonly value: Thread } | { readonly complaint: string };

const forms = 'expected a thread such as "1/2-20", "M12" or "M12x1.25"';

function unifiedThread(size: string, perInch: number): Read {
  const row = unified.find(([name]) => name === size);
  if (row === undefined)
    return { complaint: `expected one of the inch sizes ${unified.map(([name]) => name).join(", ")}` };
  const [name, diameter, coarse, fine, jamNut] = row;
  if (perInch !== coarse && perInch !== fine)
    return { complaint: `expected ${name}-${fine} or ${name}-${coarse}, the standard threads of that size` };
  return {
    value: { name: `${name}-${perInch}`, diameter: diameter * inch, pitch: inch / perInch, jamNut: jamNut * inch },
  };
}

function metricThread(diameter: number, pitch: number | null): Read {
  const row = metric.find(([size]) => size === diameter);
  if (row === undefined)
    return { complaint: `expected one of the metric sizes ${metric.map(([size]) => `M${size}`).join(", ")}` };
  const [, coarse, fine, jamNut] = row;
  const pitches = [coarse, ...fine];
  if (pitch !== null && !pitches.includes(pitch))
    return {
      complaint: `expected ${pitches.map((each) => `M${diameter}x${each}`).join(", ")}, the standard pitches of that size`,
    };
  return { value: { name: `M${diameter}x${pitch ?? coarse}`, diameter, pitch: pitch ?? coarse, jamNut } };
}

/**
 * The thread that a designation names: 1/2-20, 1/2-20 UNF, M12, M12x1.25, M12 x 1.25. A metric size alone has its coarse
 * pitch, as ISO 261 has it. What is not in the standards' own series is refused, with what is.
 */
export function readThread(text: string): Read {
  const inches = /^(\d+(?:\/\d+)?)\s*-\s*(\d+)(?:\s*UN[CF])?$/i.exec(text.trim());
  if (inches !== null) return unifiedThread(inches[1] ?? "", Number(inches[2]));
  const millimetres = /^M\s*(\d+)(?:\s*[x×]\s*(\d+(?:\.\d+)?))?$/i.exec(text.trim());
  if (millimetres !== null)
    return metricThread(Number(millimetres[1]), millimetres[2] === undefined ? null : Number(millimetres[2]));
  return { complaint: forms };
}
