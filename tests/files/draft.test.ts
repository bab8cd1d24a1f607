import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { keepDraft, readDraft } from "../../src/files/draft.ts";
import { ownFolder } from "./folder.ts";

const folder = ownFolder();
const env = () => ({ XDG_STATE_HOME: folder.path });
const file = () => join(folder.path, "rackwright", "tape.json");

describe("readings that are no car yet", () => {
  it("come back as they were typed, the last ones kept, until they are thrown away", () => {
    expect(readDraft(env())).toBeNull();
    expect(keepDraft({ wheelbase: "68" }, env())).toBeNull();
    expect(keepDraft({ wheelbase: "68 1/2", file: 'a: "b"' }, env())).toBeNull();
    expect(readDraft(env())).toEqual({ wheelbase: "68 1/2", file: 'a: "b"' });
    expect(keepDraft(null, env())).toBeNull();
    expect(keepDraft(null, env())).toBeNull();
    expect(readDraft(env())).toBeNull();
  });

  it("are nothing where the file is none of ours", () => {
    keepDraft({ wheelbase: "68" }, env());
    for (const text of ["", "{", "null", "7", '["68"]', "x".repeat(100_000)]) {
      writeFileSync(file(), text);
      expect(readDraft(env()), text.slice(0, 9)).toBeNull();
    }
    writeFileSync(file(), '{"wheelbase": 68, "stroke": "4"}');
    expect(readDraft(env())).toEqual({ stroke: "4" });
  });

  it("have nothing in a field that acts on a terminal or ends its line; a sheet has lines", () => {
    const kept = { stroke: "4", wheelbase: "68\u001b]0;x\u0007", hub: "12\n", sheet: "units: in\n" };
    keepDraft(kept, env());
    expect(readDraft(env())).toEqual({ stroke: "4", sheet: "units: in\n" });
  });

  it("are written into no other file, though a link to one stands in their way", () => {
    keepDraft({ wheelbase: "68" }, env());
    const elsewhere = join(folder.path, "elsewhere");
    writeFileSync(elsewhere, '{"stroke": "4"}');
    symlinkSync(elsewhere, `${file()}.${process.pid}`);
    expect(keepDraft({ wheelbase: "70" }, env())).toBeNull();
    expect(readFileSync(elsewhere, "utf8")).toBe('{"stroke": "4"}');
    expect(readDraft(env())).toEqual({ wheelbase: "70" });
  });

  it("of a sheet are as long as a file may be", () => {
    const sheet = "# a long remark\n".repeat(65_000);
    keepDraft({ sheet }, env(), "survey");
    expect(readDraft(env(), "survey")).toEqual({ sheet });
  });

  it("leave what was kept before where they cannot be kept, and say so", () => {
    keepDraft({ wheelbase: "68" }, env());
    mkdirSync(`${file()}.${process.pid}`);
    expect(keepDraft({ wheelbase: "70" }, env())).toMatch(/^The readings cannot be kept safe: /);
    expect(JSON.parse(readFileSync(file(), "utf8"))).toEqual({ wheelbase: "68" });
  });
});
