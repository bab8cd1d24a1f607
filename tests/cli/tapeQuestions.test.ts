import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, afterEach, beforeEach, describe, expect, it } from "vitest";
import { folder, run } from "./run.ts";

const place = folder();
const before = process.cwd();
beforeEach(() => process.chdir(place.path));
afterEach(() => {
  process.chdir(before);
  for (const name of ["mule.yaml", "mule-tape.yaml", "again.yaml"]) rmSync(join(place.path, name), { force: true });
});
afterAll(() => place.remove());

/** Page 1 of an invented car, as it is typed: units first, then in the order of the walk; "" leaves out. */
const page1 = [
  ...["in", "84 1/4", "12 1/8", "58", "8", "45 1/2", "4 3/8", "3/4", "9 1/2", "8 1/4", "6 3/4", "9 3/4", "1 1/4"],
  ...["4 1/4", "2.5", "right", "2 1/4", "", "", "8", "6", "-1", "1/8 total"],
];

const asked = (typed: readonly string[], ...more: readonly string[]) =>
  run(["new", "mule", "--from-tape", ...more], { typed });

describe("readings asked for one by one", () => {
  it("make the car that a sheet with the same answers makes, and are kept on one", async () => {
    const { code, err } = await asked([...page1, "no"]);
    expect(code).toBe(0);
    expect(err).toContain("1 of 23  Wheelbase");
    expect(err).toContain("The readings are kept in mule-tape.yaml.");
    const again = await run(["new", "again", "--from-tape", "mule-tape.yaml"]);
    expect(again.code).toBe(0);
    expect(readFileSync("again.yaml", "utf8")).toBe(readFileSync("mule.yaml", "utf8"));
  });

  it("are checked at once, each by itself and beside the others, and can be gone back to", async () => {
    const typed = [...page1];
    typed.splice(2, 0, "12 1/8 ft");
    typed.splice(typed.indexOf("45 1/2"), 0, "60 1/2");
    typed.splice(typed.indexOf("8 1/4"), 0, "81/4", "9", "back");
    const { code, err } = await asked([...typed, "no"]);
    expect(code).toBe(0);
    expect(err.replace(/\s+/g, " ")).toContain('"12 1/8 ft" is 145 1/2 in, more than any front end has');
    expect(err.replace(/\s+/g, " ")).toContain(
      '"Outside over front tyres" 58 in and "King-pin lines, left to right" 60 1/2 in',
    );
    expect(err.replace(/\s+/g, " ")).toContain('"81/4" is not clear: write "8 1/4", or "20 1/4"');
    expect(err).toContain("[9]");
    expect(readFileSync("mule-tape.yaml", "utf8")).toContain("left-eye: 8 1/4\n");
  });

  it("that end early are kept, and the same command goes on with them", async () => {
    const early = await asked(page1.slice(0, 8));
    expect(early.code).toBe(2);
    expect(early.err).toContain("The answers are kept in mule-tape.yaml.");
    expect(early.err).toContain("rackwright new mule --from-tape mule-tape.yaml");
    expect(existsSync("mule.yaml")).toBe(false);
    expect(readFileSync("mule-tape.yaml", "utf8")).toContain("tab-in: 3/4\n");
    const later = await asked([...page1.slice(8), "no"]);
    expect(later.code).toBe(0);
    expect(later.err).toContain("Going on from the answers in mule-tape.yaml");
    expect(later.err).not.toContain("1 of 23  Wheelbase");
    expect(existsSync("mule.yaml")).toBe(true);
  });

  it("that make no car together ask which one to correct, and then make it", async () => {
    await asked(page1.slice(0, 8));
    // As an editor would leave it: no question was asked between the two.
    writeFileSync(
      "mule-tape.yaml",
      readFileSync("mule-tape.yaml", "utf8").replace("king-pins-apart: 45 1/2", "king-pins-apart: 60 1/2"),
    );
    const typed = [...page1.slice(8), "no", "nonsense", "5", "45 1/2", ...Array.from({ length: 18 }, () => ""), "no"];
    const { code, err } = await asked(typed);
    expect(code).toBe(0);
    expect(err).toContain("Which reading is to be corrected?");
    expect(err).toContain('No reading is called "nonsense".');
    expect(readFileSync("mule-tape.yaml", "utf8")).toContain("king-pins-apart: 45 1/2\n");
  });

  it("are not begun where the car is there already, or what would keep them is no sheet", async () => {
    writeFileSync("mule.yaml", "mine");
    const there = await asked(page1);
    expect(there.code).toBe(2);
    expect(there.err).toContain("there is a file of that name already");
    expect(there.err).not.toContain("Wheelbase");
    expect(there.err).not.toContain("mule-tape.yaml");
    rmSync("mule.yaml");
    writeFileSync("mule-tape.yaml", "notes: of mine\n");
    const taken = await asked(page1);
    expect(taken.code).toBe(2);
    expect(taken.err).toContain("mule-tape.yaml is there, where the answers would be kept");
    expect(readFileSync("mule-tape.yaml", "utf8")).toBe("notes: of mine\n");
  });

  it("say how to correct one of a car that is made, and that makes it anew", async () => {
    const { err } = await asked([...page1, "no"]);
    const how = "rackwright new mule-again.yaml --from-tape mule-tape.yaml";
    expect(err).toContain(how);
    const there = await asked([]);
    expect(there.code).toBe(2);
    expect(there.err).toContain(`change it in mule-tape.yaml and make the car anew under a name of its own: ${how}`);
    const sheet = readFileSync("mule-tape.yaml", "utf8");
    writeFileSync("mule-tape.yaml", sheet.replace("tab-in: 3/4", "tab-in: 7/8"));
    const taken = await run(["new", "mule", "--from-tape", "mule-tape.yaml"]);
    expect(taken.err).toContain(how);
    const again = await run(["new", "again", "--from-tape", "mule-tape.yaml"]);
    expect(again.code).toBe(0);
    expect(readFileSync("again.yaml", "utf8")).not.toBe(readFileSync("mule.yaml", "utf8"));
  });

  it("take inches and L for an answer", async () => {
    const typed = page1.map((each) => (each === "in" ? "inches" : each === "right" ? "L" : each));
    const { code } = await asked([...typed, "no"]);
    expect(code).toBe(0);
    expect(readFileSync("mule.yaml", "utf8")).toMatch(/units: in\n[\s\S]*wheel-left-moves: left/);
  });

  it("take the rods as cut by an option too, where both were taped", async () => {
    const rods = [...page1.slice(0, 17), "13 3/4", "15 1/4", "to fit", ...page1.slice(19)];
    const { code } = await asked([...rods, "no"], "--rods", "as-cut");
    expect(code).toBe(0);
    expect(readFileSync("mule.yaml", "utf8")).toContain('tie-rod: { length: "13 3/4" }');
    rmSync("mule.yaml");
    rmSync("mule-tape.yaml");
    const none = await asked([...page1, "no"], "--rods", "as-cut");
    expect(none.code).toBe(2);
    expect(none.err.replace(/\s+/g, " ")).toContain("Left rod, eye to eye");
  });
});
