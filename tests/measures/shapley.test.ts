import { describe, expect, it } from "vitest";
import { shapley } from "../../src/measures/shapley.ts";
import { expectClose } from "../close.ts";

/** All orders of some things. */
function orders<T>(all: readonly T[]): readonly (readonly T[])[] {
  if (all.length === 0) return [[]];
  return all.flatMap((first, i) => orders(all.filter((_, at) => at !== i)).map((rest) => [first, ...rest]));
}

describe("splitting a number over its causes", () => {
  it("gives the glove game its known values: 1/6, 1/6, 2/3", () => {
    // Two have a left glove, one a right glove, and a pair is worth 1. A standard example of the Shapley value
    // (recalled from textbooks of game theory, not looked up again); by hand: the right glove completes a pair unless it
    // comes first, which is 4 of 6 orders.
    const worth = (gone: readonly boolean[]) => ({ pairs: !gone[2] && (!gone[0] || !gone[1]) ? 1 : 0 });
    const { shares, rest } = shapley(3, worth, ["pairs"]);
    expectClose(
      shares.map(({ pairs }) => pairs),
      [1 / 6, 1 / 6, 2 / 3],
      { abs: 1e-15 },
    );
    expect(rest.pairs).toBe(0);
  });

  it("is the mean over every order, walked through one by one", () => {
    const worth = (gone: readonly boolean[]) => {
      const [a, b, c, d] = gone.map((each) => (each ? 0 : 1));
      return { n: 3 * a + 5 * b * c - 7 * a * d + 2 * a * b * c * d + 4 };
    };
    const walked = [0, 0, 0, 0];
    const all = orders([0, 1, 2, 3]);
    for (const order of all) {
      const gone = [false, false, false, false];
      for (const cause of order) {
        const before = worth(gone).n;
        gone[cause] = true;
        walked[cause] += (before - worth(gone).n) / all.length;
      }
    }
    const { shares, rest } = shapley(4, worth, ["n"]);
    expectClose(
      shares.map(({ n }) => n),
      walked,
      { abs: 1e-12 },
    );
    expect(rest.n).toBe(4);
  });

  it("tells nothing of a number that some set of causes lacks, and all of the others", () => {
    const { shares, rest } = shapley(2, ([a, b]) => ({ x: a && b ? null : 1, y: a ? 0 : 2 }), ["x", "y"]);
    expect(shares).toEqual([
      { x: null, y: 2 },
      { x: null, y: 0 },
    ]);
    expect(rest).toEqual({ x: null, y: 0 });
  });
});
