import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Cells, cellsOf } from "../../src/terminal/cells.ts";
import { diff, freshPen } from "../../src/terminal/diff.ts";
import { leastBytes } from "../bench/leastBytes.ts";
import { scenes } from "../bench/scenes.ts";
import { frames } from "./support/frames.ts";

const look = { color: "16", unicode: true } as const;
const marks = 16;

function bytes(from: Cells, to: Cells): { sent: number; least: number } {
  const sent = Buffer.byteLength(diff(from, to, freshPen).bytes);
  return { sent, least: leastBytes(from, to, { cell: undefined, style: 0 }, true).bytes + marks };
}

describe("the bytes of an update", () => {
  it("are never fewer than the least that was worked out, which would be wrong then", () => {
    const size = { columns: 24, rows: 6 };
    fc.assert(
      fc.property(frames(24, 6), frames(24, 6), (from, to) => {
        const { sent, least } = bytes(cellsOf(from, size, look), cellsOf(to, size, look));
        expect(sent === 0 ? marks : sent).toBeGreaterThanOrEqual(least);
      }),
      { numRuns: 150 },
    );
  });

  it.each(scenes)("are at most 1.2 times the least in each step of the scene $name", ({ frames: drawn }) => {
    const screens = drawn.slice(0, 4).map((frame) => cellsOf(frame, { columns: 80, rows: 24 }, look));
    screens.slice(1).forEach((next, step) => {
      const { sent, least } = bytes(screens[step] ?? next, next);
      expect(sent).toBeLessThanOrEqual(1.2 * least);
    });
  });
});
