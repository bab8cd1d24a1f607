import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import { readDraft } from "../../src/files/draft.ts";
import type { SheetOnBench } from "../../src/screen/model.ts";
import { settler } from "../../src/screen/settler.ts";
import { keepSheet, keptSheet, openSheet, writeSheet } from "../../src/screen/sheetFiles.ts";
import type { Message } from "../../src/screen/turn.ts";
import { blankSurvey } from "../../src/vehicle/survey/blank.ts";
import { ownFolder } from "../files/folder.ts";

const folder = ownFolder();
const env = () => ({ XDG_STATE_HOME: folder.path });
const kept = () => new Promise((resolve) => keptSheet(env(), resolve));
const blank = blankSurvey({ linkage: "strut", mechanism: "rack" }, "mm");
const filled = blank.replace("  left eye:\n", "  left eye: 180\n");
const bench = (more: Partial<SheetOnBench>): SheetOnBench => ({
  ...{ text: filled, file: "", car: "", known: null, settled: null, before: null },
  ...more,
});

describe("a sheet of readings on disk", () => {
  it("is kept as it is typed, and comes back with its names; only what stands in no file is not safe", async () => {
    expect(await kept()).toBeNull();
    expect(keepSheet(bench({ file: "front", car: "yard" }), env())).toBeNull();
    expect(await kept()).toEqual({ text: filled, file: "front", car: "yard", known: null, isSafe: false });
    keepSheet(bench({ text: blank }), env());
    expect(await kept()).toMatchObject({ text: blank, isSafe: true });
    // The short form's readings are kept apart from it.
    expect(readDraft(env())).toBeNull();
    keepSheet(null, env());
    expect(await kept()).toBeNull();
  });

  it("is nothing where what was kept is no sheet any more", async () => {
    keepSheet(bench({ text: "front: {}" }), env());
    expect(await kept()).toBeNull();
  });

  it("is written whole, to a new file or over its own, and never over another's", async () => {
    const path = join(folder.path, "front.yaml");
    const written = writeSheet(path, filled, null);
    if (written.is !== "sheetWritten") throw new Error(written.is);
    expect(readFileSync(path, "utf8")).toBe(filled);
    keepSheet(bench({ known: { path, hash: written.hash } }), env());
    expect(await kept()).toMatchObject({ isSafe: true });
    expect(writeSheet(path, blank, null)).toMatchObject({ is: "failed", words: expect.stringContaining("already") });
    expect(writeSheet(path, blank, written.hash)).toMatchObject({ is: "sheetWritten" });
    writeFileSync(path, `${filled}# someone else's\n`);
    expect(writeSheet(path, blank, written.hash)).toMatchObject({ is: "failed" });
    expect(readFileSync(path, "utf8")).toContain("someone else's");
  });

  it("is opened from its file, from an example, and from a short list, which is not written over", async () => {
    const path = join(folder.path, "own.yaml");
    writeFileSync(path, filled);
    expect(await openSheet({ from: "file", path })).toMatchObject({ text: filled, file: path, known: { path } });
    const example = await openSheet({ from: "example", name: "donor-front" });
    expect(example).toMatchObject({ file: "", known: null, isSafe: true });
    const short = join(folder.path, "short.yaml");
    writeFileSync(short, "units: in\nking-pins-apart: 42\nleft-eye: 6 1/2\n");
    const grown = await openSheet({ from: "file", path: short });
    expect("text" in grown ? grown.text : "").toContain('  left eye: "6 1/2"');
    expect(grown).toMatchObject({ known: null });
    writeFileSync(path, filled.replace("180", "about"));
    const bad = await openSheet({ from: "file", path });
    expect("complaints" in bad ? bad.complaints.join() : "").toMatch(/line \d+: heights\.left eye: found "about"/);
  });
});

describe("what brings sheets together beside the keys", () => {
  it("answers the last one asked for, also where no thread can be had, and nothing once it has ended", async () => {
    const heard: Message[] = [];
    const settles = settler((message) => heard.push(message));
    settles.ask(blank);
    settles.ask(filled);
    const texts = () => heard.map((message) => (message.is === "settled" ? message.answer.text : message.is));
    await vi.waitFor(() => expect(texts()).toContain(filled), 20_000);
    const last = heard.at(-1);
    expect(last?.is === "settled" && "surveyed" in last.answer.outcome).toBe(true);
    const before = heard.length;
    settles.end();
    settles.ask(blank);
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(heard.length).toBe(before);
  });
});
