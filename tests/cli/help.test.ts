import { describe, expect, it } from "vitest";
import { version } from "../../package.json";
import { commandNames } from "../../src/cli/commandNames.ts";
import { tapeGoodTo } from "../../src/cli/lengths.ts";
import { usualTolerance } from "../../src/vehicle/car-readings/tolerances.ts";
import { blankSurvey } from "../../src/vehicle/survey/blank.ts";
import { readSurvey } from "../../src/vehicle/survey/sheet.ts";
import { expectClose } from "../close.ts";
import { run } from "./run.ts";

/** What these print has a form of its own. */
const papersOfItself: readonly string[] = ["completion", "man"];
const commands = commandNames.filter((name) => name !== "help");

describe("help", () => {
  it("lists every command, and no other", async () => {
    const { code, out, err } = await run(["--help"]);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    const listed = [...out.matchAll(/^ {2}(\w+) (?:\[|<|[A-Z]| +[A-Z])/gm)].map(([, name]) => name);
    expect(listed.filter((name) => name !== "rackwright")).toEqual(commandNames);
    expect(out).toContain("Examples:");
  });

  it.each(commands)("of %s shows what it does, its options and examples, within 80 columns", async (name) => {
    const { code, out } = await run([name, "--help"]);
    expect(code).toBe(0);
    expect(out).toContain(`Usage: rackwright ${name}`);
    expect(out).toContain(`Examples:\n  rackwright ${name}`);
    if (!papersOfItself.includes(name)) expect(out).toContain("--json");
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
    expect((await run(["help", name])).out).toBe(out);
  });

  it.each(["tape", "match"])(
    "of %s says which tolerance of a tape holds where, and it is what readers take",
    async (name) => {
      expect((await run([name, "--help"])).out.split("\n")).toContain(tapeGoodTo);
      const [, partIn, partMm, centresIn, centresMm] =
        /1\/(\d+) in \((\d+) mm\) along one part, 1\/(\d+) in \((\d+) mm\) between centres/.exec(tapeGoodTo) ?? [];
      const between = (units: "in" | "mm") => {
        const survey = readSurvey(
          blankSurvey({ linkage: "double-arm", mechanism: "rack" }, units).replace(/^tolerance:.*$/m, ""),
        );
        if ("complaints" in survey) throw new Error(survey.complaints[0]?.message);
        return survey.tolerance;
      };
      const along = (units: "in" | "mm") => usualTolerance("rods", units, "rack");
      expectClose([along("in"), between("in")], [25.4 / Number(partIn), 25.4 / Number(centresIn)], { abs: 1e-9 });
      expectClose([along("mm"), between("mm")], [Number(partMm), Number(centresMm)], { abs: 1e-9 });
    },
  );

  it("is pointed to after a mistake", async () => {
    expect((await run(["steer"])).err).toContain("Try: rackwright steer --help");
  });

  it("needs no colour", async () => {
    expect((await run(["--help"], { terminal: true, env: { FORCE_COLOR: "3" } })).out).not.toContain("\u001b");
  });
});

describe("version", () => {
  it("is the package's", async () => {
    expect(await run(["--version"])).toMatchObject({ code: 0, out: `${version}\n`, err: "" });
  });
});
