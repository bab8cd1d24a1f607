import {
  chmodSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  readlinkSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, test, vi } from "vitest";
import { presetsFolder } from "../../src/files/examples.ts";
import { hashOf } from "../../src/files/hash.ts";
import { newFile, pathOf, type Saved, saveText } from "../../src/files/save.ts";
import { ownFolder } from "./folder.ts";

const { disk } = vi.hoisted(() => ({ disk: { fault: "", links: true, give: true, meanwhile: () => {} } }));

vi.mock("node:fs", async (original) => {
  const real = await original<typeof import("node:fs")>();
  const failing = (code: string) => Object.assign(new Error("from the system"), { code });
  const writeFileSync: typeof real.writeFileSync = (file, data, options) => {
    if (typeof file === "number") disk.meanwhile();
    if (disk.fault === "" || typeof file !== "number") return real.writeFileSync(file, data, options);
    // A full disk takes what still fits, and says so only then.
    real.writeSync(file, String(data).slice(0, String(data).length / 2));
    throw failing(disk.fault);
  };
  const linkSync: typeof real.linkSync = (...given) => {
    if (!disk.links) throw failing("EPERM");
    return real.linkSync(...given);
  };
  const chownSync: typeof real.chownSync = (...given) => {
    if (!disk.give) throw failing("EPERM");
    return real.chownSync(...given);
  };
  return { ...real, writeFileSync, linkSync, chownSync };
});

afterEach(() => {
  Object.assign(disk, { fault: "", links: true, give: true, meanwhile: () => {} });
});

const folder = ownFolder();

function complaint(saved: Saved): string {
  if (!("complaint" in saved)) throw new Error(JSON.stringify(saved));
  return saved.complaint;
}

function read(name: string): string {
  return readFileSync(folder.at(name), "utf8");
}

describe("a save is whole", () => {
  test("a new file", () => {
    expect(saveText(folder.at("car.yaml"), "new", null)).toEqual({
      saved: true,
      path: folder.at("car.yaml"),
      hash: hashOf("new"),
    });
    expect(read("car.yaml")).toBe("new");
    expect(folder.names()).toEqual(["car.yaml"]);
  });

  test("a file that is still what was loaded, its mode kept", () => {
    writeFileSync(folder.at("car.yaml"), "old");
    chmodSync(folder.at("car.yaml"), 0o640);
    expect(saveText(folder.at("car.yaml"), "new", hashOf("old"))).toMatchObject({ saved: true });
    expect(read("car.yaml")).toBe("new");
    expect(statSync(folder.at("car.yaml")).mode & 0o777).toBe(0o640);
    expect(folder.names()).toEqual(["car.yaml"]);
  });

  test("and takes away drafts that were left the days before by saves that were killed, and nothing else", () => {
    const old = [".car.yaml.17.mwxyrub3.new", ".car.yaml.notes.new", ".other.yaml.17.mwxyrub3.new"];
    const young = ".car.yaml.18.mwxyrub4.new";
    for (const name of ["car.yaml", ...old, young]) writeFileSync(folder.at(name), "old");
    const twoDaysAgo = Date.now() / 1000 - 2 * 24 * 60 * 60;
    for (const name of old) utimesSync(folder.at(name), twoDaysAgo, twoDaysAgo);
    expect(saveText(folder.at("car.yaml"), "new", hashOf("old"))).toMatchObject({ saved: true });
    expect(folder.names()).toEqual([young, ...old.slice(1), "car.yaml"].sort());
  });

  test("through a link, which stays one", () => {
    mkdirSync(folder.at("real"));
    writeFileSync(folder.at("real/car.yaml"), "old");
    symlinkSync("real/car.yaml", folder.at("link.yaml"));
    expect(saveText(folder.at("link.yaml"), "new", hashOf("old"))).toMatchObject({ path: folder.at("link.yaml") });
    expect(lstatSync(folder.at("link.yaml")).isSymbolicLink()).toBe(true);
    expect(readlinkSync(folder.at("link.yaml"))).toBe("real/car.yaml");
    expect(read("real/car.yaml")).toBe("new");
  });

  test("on a disk that knows neither second names nor owners", () => {
    Object.assign(disk, { links: false, give: false });
    expect(saveText(folder.at("car.yaml"), "one", null)).toMatchObject({ saved: true });
    expect(saveText(folder.at("car.yaml"), "two", hashOf("one"))).toMatchObject({ saved: true });
    expect(read("car.yaml")).toBe("two");
    expect(saveText(folder.at("car.yaml"), "three", null)).toMatchObject({ ask: "exists" });
    expect(folder.names()).toEqual(["car.yaml"]);
  });
});

describe("or nothing is changed", () => {
  test.each([
    ["ENOSPC", "the disk is full"],
    ["EDQUOT", "your share of the disk is used up"],
    ["EIO", "the disk reports an error"],
  ])("when the disk fails in the middle: %s", (code, words) => {
    writeFileSync(folder.at("car.yaml"), "what was there before");
    disk.fault = code;
    expect(complaint(saveText(folder.at("car.yaml"), "new text", hashOf("what was there before")))).toBe(
      `cannot be saved: ${words}`,
    );
    expect(complaint(saveText(folder.at("new.yaml"), "new text", null))).toContain(words);
    expect(complaint(newFile(folder.at("new.yaml"), "new text"))).toContain(words);
    disk.fault = "";
    expect(read("car.yaml")).toBe("what was there before");
    expect(folder.names()).toEqual(["car.yaml"]);
  });

  test("when someone else wrote the file since, until it is asked for all the same", () => {
    writeFileSync(folder.at("car.yaml"), "theirs");
    const saved = saveText(folder.at("car.yaml"), "ours", hashOf("old"));
    expect(saved).toEqual({ saved: false, ask: "changed", found: hashOf("theirs") });
    expect(read("car.yaml")).toBe("theirs");
    expect(saveText(folder.at("car.yaml"), "ours", hashOf("theirs"))).toMatchObject({ saved: true });
    expect(read("car.yaml")).toBe("ours");
  });

  test("when someone else writes it while a slow disk takes the new text: whoever saves is asked", () => {
    writeFileSync(folder.at("car.yaml"), "old");
    disk.meanwhile = () => {
      disk.meanwhile = () => {};
      writeFileSync(folder.at("car.yaml"), "theirs");
    };
    const saved = saveText(folder.at("car.yaml"), "ours", hashOf("old"));
    expect(saved).toEqual({ saved: false, ask: "changed", found: hashOf("theirs") });
    disk.meanwhile = () => writeFileSync(folder.at("new.yaml"), "theirs");
    expect(complaint(saveText(folder.at("new.yaml"), "ours", null))).toContain("a file of that name already");
    expect([read("car.yaml"), read("new.yaml")]).toEqual(["theirs", "theirs"]);
    expect(folder.names()).toEqual(["car.yaml", "new.yaml"]);
  });

  test("when a disk without second names fails as the new file takes its name", () => {
    Object.assign(disk, { links: false, meanwhile: () => mkdirSync(folder.at("car.yaml")) });
    expect(complaint(saveText(folder.at("car.yaml"), "ours", null))).toContain("a file of that name already");
    expect(folder.names()).toEqual(["car.yaml"]);
  });

  test("when the file is gone, or there already", () => {
    expect(saveText(folder.at("car.yaml"), "ours", hashOf("old"))).toEqual({ saved: false, ask: "gone", found: null });
    expect(folder.names()).toEqual([]);
    writeFileSync(folder.at("car.yaml"), "theirs");
    expect(saveText(folder.at("car.yaml"), "ours", null)).toMatchObject({ ask: "exists" });
    expect(complaint(newFile(folder.at("car.yaml"), "ours"))).toContain("there is a file of that name already");
    expect(read("car.yaml")).toBe("theirs");
  });

  test("when the file is write-protected", () => {
    writeFileSync(folder.at("car.yaml"), "old");
    chmodSync(folder.at("car.yaml"), 0o444);
    expect(complaint(saveText(folder.at("car.yaml"), "new", hashOf("old")))).toContain("write-protected");
    expect(read("car.yaml")).toBe("old");
  });

  test("when the place is none for a file", () => {
    mkdirSync(folder.at("folder.yaml"));
    writeFileSync(folder.at("file"), "x");
    symlinkSync("none", folder.at("loose"));
    expect(complaint(saveText(folder.at("folder.yaml"), "x", null))).toContain("it is a folder");
    expect(complaint(saveText(folder.at("no/car.yaml"), "x", null))).toContain(
      "the folder it should be in is not there",
    );
    expect(complaint(saveText(folder.at("file/car.yaml"), "x", null))).toContain("a part of its path is a file");
    expect(complaint(saveText(folder.at("loose"), "x", null))).toContain("a link to a file that is not there");
    expect(complaint(saveText("/dev/null", "x", null))).toContain("a device");
    expect(complaint(saveText("  ", "x", null))).toContain("no file is named");
    expect(complaint(saveText(folder.at("a\0b"), "x", null))).toContain("cannot be saved");
    expect(complaint(saveText(folder.at("x".repeat(300)), "x", null))).toContain("its name is too long");
  });

  test("when it is an example car, by whatever path", () => {
    const presets = presetsFolder() ?? "";
    const before = readFileSync(join(presets, "rack-ahead.yaml"), "utf8");
    symlinkSync(presets, folder.at("presets"));
    symlinkSync(join(presets, "rack-ahead.yaml"), folder.at("mine.yaml"));
    for (const path of [join(presets, "rack-ahead.yaml"), folder.at("presets/rack-ahead.yaml"), folder.at("mine.yaml")])
      expect(complaint(saveText(path, "x", hashOf(before)))).toContain("example cars cannot be changed");
    expect(complaint(newFile(join(presets, "other.yaml"), "x"))).toContain("example cars cannot be changed");
    expect(readFileSync(join(presets, "rack-ahead.yaml"), "utf8")).toBe(before);
  });
});

test("a name that a builder types is made a whole path", () => {
  expect(pathOf("~/cars/x.yaml")).toBe(join(homedir(), "cars/x.yaml"));
  expect(pathOf(" buggy ")).toBe(join(process.cwd(), "buggy.yaml"));
  expect(pathOf("buggy.yml")).toBe(join(process.cwd(), "buggy.yml"));
  expect(pathOf("/a/b.c/buggy")).toBe("/a/b.c/buggy.yaml");
});

test("a name that a folder has is no file's name with .yaml", () => {
  mkdirSync(folder.at("job"));
  expect(pathOf(folder.at("job"))).toBe(folder.at("job"));
  expect(pathOf(folder.at("jobs"))).toBe(folder.at("jobs.yaml"));
  expect(saveText(pathOf(folder.at("job")), "new", null)).toMatchObject({
    saved: false,
    complaint: expect.stringContaining("it is a folder"),
  });
});
