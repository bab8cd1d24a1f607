import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { folder, run } from "./run.ts";

const work = folder();
afterAll(work.remove);

describe("rackwright template", () => {
  it("lists the drawings, what is wanting by its key, and how to write them", async () => {
    const { code, out } = await run(["template", "check-before-welding"]);
    expect(code).toBe(0);
    expect(out).toContain("tab-left");
    expect(out.replace(/\s+/g, " ")).toContain(
      "Outline of the right tab (drawn without it): needs hardware: tab: right: end-radius (from",
    );
    expect(out).toContain("Write them with --out FOLDER");
    expect(out).toContain("do not scale to fit");
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  it("says once what both tabs lack, and nothing ends in two full stops", async () => {
    const { out } = await run(["template", "strut-hatchback-corners"]);
    const said = out.replace(/\s+/g, " ");
    expect(said).toContain(
      "Outline of both tabs (drawn without it): needs hardware: tab: both: hole (the hole's diameter)",
    );
    expect(said).not.toMatch(/the (left|right) tab/);
    expect(said).toContain("sets caster and camber. Rack's");
  });

  it("writes what is asked for to a folder that it makes, and never over a file", async () => {
    const place = join(work.path, "made", "here");
    const asked = ["template", "check-before-welding", "--draw", "tab,rack", "--svg", "--dxf", "--out", place];
    expect((await run(asked)).code).toBe(0);
    const names = ["rack-plate", "tab-left", "tab-right"].flatMap((name) => [`${name}.dxf`, `${name}.svg`]);
    expect(readdirSync(place).sort()).toEqual(names);
    const before = readFileSync(join(place, "tab-left.svg"), "utf8");
    const again = await run([...asked, "--pdf"]);
    expect(again.code).toBe(2);
    expect(again.err).toMatch(/is there already, and 5 more: nothing was written/);
    expect(existsSync(join(place, "templates.pdf"))).toBe(false);
    expect(readFileSync(join(place, "tab-left.svg"), "utf8")).toBe(before);
  });

  it("says first what stands against cutting: on the list, in JSON, and on every drawing", async () => {
    const place = join(work.path, "warned");
    const { out } = await run(["template", "widened-offset-rack", "--svg", "--out", place]);
    expect(out).toContain("! DANGEROUS: a rod comes to 17.5° from its dead point");
    expect(out).toContain("a new folder:");
    for (const name of readdirSync(place))
      expect(readFileSync(join(place, name), "utf8"), name).toContain("DANGEROUS: a rod comes to 17.5°");
    const missed = await run(["template", "tab-to-place", "--json"]);
    expect(JSON.parse(missed.out).first.join(" ")).toContain("of the goals in the file's find");
    const fine = await run(["template", "balanced-two-seater", "--json"]);
    expect(JSON.parse(fine.out).first).toEqual([]);
  });

  it("gives up on a folder where none can be made, though what it lies in says that it is not there", async () => {
    // A folder under /proc answers so; where there is no /proc a file in the way does.
    const file = work.put("in-the-way", "x");
    for (const place of [...(existsSync("/proc") ? ["/proc/none/here"] : []), join(file, "none", "here")]) {
      const { code, err } = await run(["template", "check-before-welding", "--draw", "rack", "--out", place]);
      expect(code, place).toBe(2);
      expect(err, place).toContain(place);
      if (place.startsWith("/proc")) expect(err).toContain("lets no folder be made there");
    }
  }, 20_000);

  it("writes a PDF where no form is asked for, Letter for inches and A4 for millimetres", async () => {
    const box = async (more: readonly string[], name: string) => {
      const place = join(work.path, name);
      expect((await run(["template", "check-before-welding", "--draw", "tab", "--out", place, ...more])).code).toBe(0);
      return readFileSync(join(place, "templates.pdf"), "latin1").match(/\/MediaBox \[ 0 0 ([\d.]+) /)?.[1];
    };
    expect(Number(await box([], "letter"))).toBeCloseTo(8.5 * 72, 1);
    expect(Number(await box(["--units", "mm"], "a4"))).toBeCloseTo((210 / 25.4) * 72, 1);
    expect(Number(await box(["--units", "mm", "--paper", "letter"], "asked"))).toBeCloseTo(8.5 * 72, 1);
  });

  it("says what is wrong with what was asked", async () => {
    const kind = await run(["template", "check-before-welding", "--draw", "tab,door"]);
    expect(kind.code).toBe(2);
    expect(kind.err).toContain('Found "door", expected some of tab, upright, rack, brackets.');
    const paper = await run(["template", "check-before-welding", "--paper", "a5", "--out", "x"]);
    expect(paper.err).toContain('Found "a5", expected A4 or Letter.');
    const noName = await run(["template", "check-before-welding", "--out", ""]);
    expect(noName.code).toBe(2);
    expect(noName.err).toContain("Found no name, expected a folder");
    const nowhere = await run(["template", "check-before-welding", "--svg"]);
    expect(nowhere.code).toBe(2);
    expect(nowhere.err).toContain("Name a folder with --out");
    const file = work.put("a-file", "x");
    const taken = await run(["template", "check-before-welding", "--out", file]);
    expect(taken.code).toBe(2);
    expect(taken.err).toContain("can't be made a folder");
    const none = await run(["template", "widened-offset-rack", "--draw", "rack", "--out", join(work.path, "none")]);
    expect(none.code).toBe(2);
    expect(none.err).toContain("hardware: rack: holes");
    expect(existsSync(join(work.path, "none"))).toBe(false);
  });

  it("has it as JSON, in millimetres", async () => {
    const { out } = await run(["template", "check-before-welding", "--json"]);
    const { units, drawings } = JSON.parse(out);
    expect(units.length).toBe("mm");
    expect(drawings.find(({ name }: { name: string }) => name === "rack-plate").wide).toBeGreaterThan(7 * 25.4);
  });
});
