import { describe, expect, it } from "vitest";
import * as z from "zod/mini";
import { hangOf, uprightOn } from "../../src/vehicle/hang.ts";
import { uprightFields } from "../../src/vehicle/upright-fields.ts";
import { expectClose } from "../close.ts";
import { carOf, presetText } from "../measures/carTexts.ts";
import { run } from "./run.ts";

const side = z.strictObject(Object.fromEntries(uprightFields.map(({ key }) => [key, z.number()])));
const shape = z.strictObject({
  units: z.strictObject({ length: z.literal("in"), angle: z.literal("deg") }),
  left: side,
  right: side,
});

describe("upright", () => {
  it("tells both uprights as they lie on the bench, in words and as JSON", async () => {
    const { out, code } = await run(["upright", "widened-offset-rack"]);
    expect(code).toBe(0);
    expect(out).toMatch(/Joint to joint +in +7\.159 +7\.159/);
    // By hand: from the lower joint 0.2, 21.5, 7 to the upper -0.7, 20.3, 14.
    const { left } = shape.parse(JSON.parse((await run(["upright", "widened-offset-rack", "--json"])).out));
    expectClose(left.jointToJoint, Math.hypot(0.9, 1.2, 7), { abs: 1e-9 });
    expectClose(left.caster, (Math.atan2(0.9, 7) * 180) / Math.PI, { abs: 1e-9 });
    expectClose(left.camber, -0.5, { abs: 1e-9 });
  });

  it("hangs them as asked, says what that does, and prints the new car", async () => {
    const words = ["upright", "widened-offset-rack", "--camber=-1", "--caster", "9"];
    const { out } = await run(words);
    expect(out).toContain("King-pin inclination 9.73 -> 10.26 deg");
    expect(out.replace(/\s+/g, " ")).toContain("the wheel centres come 1/32 in higher and 3/32 in back");
    const car = carOf((await run([...words, "--take"])).out);
    for (const wheel of ["left", "right"] as const) {
      expectClose(hangOf(car, wheel).camber, -Math.PI / 180, { abs: 1e-12 });
      expectClose(hangOf(car, wheel).caster, Math.PI / 20, { abs: 2e-4 });
    }
    expect(car.text).toContain("# loaded radius");
  });

  it("takes a part that was measured, on one side alone", async () => {
    const car = carOf(
      (await run(["upright", "widened-offset-rack", "--side", "left", "--tab-back", "4 1/4", "--take"])).out,
    );
    expectClose(uprightOn(car, "left").tabBack, 4.25 * 25.4, { abs: 0.03 });
    expect(uprightOn(car, "right")).toEqual(uprightOn(carOf(presetText("widened-offset-rack")), "right"));
  });

  it.each([
    [["strut-hatchback-corners"], /A strut's upright has no upper joint/],
    [["widened-offset-rack", "--tab-back", "far"], /--tab-back "far" is not/],
    [["widened-offset-rack", "--spindle-lean", "89", "--camber=-15"], /cannot stand at that camber and caster/],
    [["widened-offset-rack", "--joint-to-joint", "0"], /these uprights make no car/],
  ])("%j is refused in words", async (argv, said) => {
    const { code, out, err } = await run(["upright", ...argv]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(said);
  });
});
