import { describe, expect, it } from "vitest";
import { figureOf } from "../../src/measures/figures.ts";
import type { Study } from "../../src/measures/study.ts";
import { expectClose } from "../close.ts";
import { presetText, studied } from "./carTexts.ts";

function widthOf(study: Study): number | null {
  const figure = figureOf("overallWidth");
  return figure?.of === "car" ? figure.read(study) : null;
}

/** The preset's hub is 24.5 in out, its tyre 7 in wide with a loaded radius of 10.75 in. */
const offset = presetText("widened-offset-rack");
const upright = offset.replace("camber: -0.5, toe: 0.1", "camber: 0, toe: 0");

describe("overall width over the front tyres", () => {
  it("is both hubs' distance and a tyre's width where the wheels stand upright and straight", () => {
    expect(upright).not.toBe(offset);
    expectClose(widthOf(studied(upright)), (2 * 24.5 + 7) * 25.4, { abs: 1e-9 });
  });

  it("has the corner of a leaning or toed tyre, found by going round its edge", () => {
    const study = studied(offset);
    const [camber, toe] = [(-0.5 * Math.PI) / 180, (0.1 * Math.PI) / 180];
    // A point of the outer edge, turned by toe about the vertical and by camber about the heading, its furthest of many.
    let far = 0;
    for (let i = 0; i < 200_000; i++) {
      const angle = (2 * Math.PI * i) / 200_000;
      const [ahead, up] = [10.75 * Math.cos(angle), 10.75 * Math.sin(angle)];
      const leaned = 3.5 * Math.cos(camber) + up * Math.sin(camber);
      far = Math.max(far, leaned * Math.cos(toe) - ahead * Math.sin(toe));
    }
    // Between two points of the edge it can be r (pi / 200000)^2 / 2 further: 1e-9 in.
    expectClose(widthOf(study), 2 * (24.5 + far) * 25.4, { abs: 1e-6 });
  });

  it("is not known where the file gives no tyre width", () => {
    expect(widthOf(studied(offset.replace(", width: 7 }", " }")))).toBeNull();
  });
});
