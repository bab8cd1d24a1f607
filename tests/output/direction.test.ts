import { describe, expect, test } from "vitest";
import { directionWords } from "../../src/output/direction.ts";

// tan 5° = 0.08749, tan 10° = 0.17633: leans as an angle finder shows them from the side, from ahead or from above.
describe("a bolt's direction is the nearest usual one and how far to tip it", () => {
  test.each([
    [[0, 0, 1], "upright"],
    [[0, 0, -1], "upright"],
    [[0.08749, 0, 1], "upright, its top turned 5.0° ahead"],
    [[-0.08749, 0.17633, 1], "upright, its top turned 5.0° back and 10.0° out"],
    [[0.08749, -0.17633, -1], "upright, its top turned 5.0° back and 10.0° out"],
    [[1, -0.17633, 0.08749], "fore and aft, its front end turned 10.0° in and 5.0° up"],
    [[-1, 0, 0.004], "fore and aft"],
    [[-0.17633, 1, -0.08749], "straight across, its outer end turned 10.0° back and 5.0° down"],
  ] as const)("%j is %s", (direction, words) => {
    expect(directionWords(direction)).toBe(words);
  });
});
