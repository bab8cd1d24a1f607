import { execFileSync } from "node:child_process";
import { chownSync, mkdirSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readKept } from "../../src/files/kept.ts";
import { ownFolder } from "./folder.ts";

const folder = ownFolder();

describe("what was kept between runs", () => {
  test("is read with its time where it is an ordinary file of no more than so many bytes", () => {
    const path = folder.at("kept");
    writeFileSync(path, "½ in\n");
    expect(readKept(path, 6)).toEqual({ text: "½ in\n", when: expect.any(Number) });
    expect(Date.now() - (readKept(path, 6)?.when ?? 0)).toBeLessThan(60_000);
    expect(readKept(path, 5)).toBeNull();
    expect(readKept(folder.at("none"), 6)).toBeNull();
  });

  test("is nothing where a folder, a link or a pipe stands in its place, which is neither followed nor waited for", () => {
    writeFileSync(folder.at("elsewhere"), "secret");
    symlinkSync(folder.at("elsewhere"), folder.at("link"));
    symlinkSync("/dev/zero", folder.at("endless"));
    mkdirSync(folder.at("folder"));
    execFileSync("mkfifo", [folder.at("pipe")]);
    for (const name of ["link", "endless", "folder", "pipe"]) expect(readKept(folder.at(name), 100), name).toBeNull();
  });

  test("is nothing where the file is far too large, which is told before it is read", () => {
    writeFileSync(folder.at("huge"), "");
    truncateSync(folder.at("huge"), 2 ** 40);
    expect(readKept(folder.at("huge"), 100)).toBeNull();
  });

  test.runIf(process.getuid?.() === 0)("is nothing where it is another user's", () => {
    writeFileSync(folder.at("theirs"), "x");
    chownSync(folder.at("theirs"), 65534, 65534);
    expect(readKept(folder.at("theirs"), 100)).toBeNull();
  });
});
