import { execFileSync } from "node:child_process";
import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { describe, expect, test, vi } from "vitest";
import { largestFile } from "../../src/files/largestFile.ts";
import { loadCar, loadText } from "../../src/files/load.ts";
import { plain } from "../vehicle/cars.ts";
import { ownFolder } from "./folder.ts";

const { fault } = vi.hoisted(() => ({ fault: { code: "" } }));

vi.mock("node:fs", async (original) => {
  const real = await original<typeof import("node:fs")>();
  const openSync: typeof real.openSync = (...given) => {
    if (fault.code !== "") throw Object.assign(new Error("from the system"), { code: fault.code });
    return real.openSync(...given);
  };
  return { ...real, openSync };
});

const folder = ownFolder();

function complaint(path: string): string {
  const loaded = loadText(path);
  if (!("complaints" in loaded)) throw new Error("it was loaded");
  expect(loaded.complaints).toHaveLength(1);
  expect(loaded.complaints[0]).toMatchObject({ line: null, column: null });
  return loaded.complaints[0]?.message ?? "";
}

describe("a car file is loaded", () => {
  test("with its text as it is, byte-order mark and line ends kept", () => {
    const text = `\ufeff${plain.replaceAll("\n", "\r\n")}`;
    writeFileSync(folder.at("car.yaml"), text);
    expect(loadText(folder.at("car.yaml"))).toMatchObject({ text, path: folder.at("car.yaml") });
  });

  test("through a link", () => {
    writeFileSync(folder.at("car.yaml"), plain);
    symlinkSync("car.yaml", folder.at("link.yaml"));
    expect(loadText(folder.at("link.yaml"))).toMatchObject({ text: plain, path: folder.at("link.yaml") });
  });

  test("as a car, with products in its lengths read", async () => {
    writeFileSync(folder.at("car.yaml"), plain.replace("wheelbase: 2000", 'wheelbase: "2 * (900 + 100)"'));
    const loaded = await loadCar(folder.at("car.yaml"));
    if ("complaints" in loaded) throw new Error(loaded.complaints[0]?.message);
    expect(loaded.car.numbers[0]).toBe(2000);
    expect(loaded.file.text).toBe(loaded.car.text);
  });

  test("or what is wrong with it is told", async () => {
    writeFileSync(folder.at("car.yaml"), "units: mm\n");
    expect(await loadCar(folder.at("car.yaml"))).toMatchObject({ complaints: [{ line: 1 }, { line: 1 }] });
    expect(await loadCar(folder.at("none.yaml"))).toMatchObject({ complaints: [{ line: null }] });
  });

  test("its fingerprint changes with its text", () => {
    writeFileSync(folder.at("a.yaml"), plain);
    writeFileSync(folder.at("b.yaml"), `${plain} `);
    const [a, b, again] = ["a.yaml", "b.yaml", "a.yaml"].map((name) => loadText(folder.at(name)));
    expect(a).toEqual(again);
    expect(a).not.toMatchObject({ hash: (b as { hash: string }).hash });
  });
});

describe("what is no car file gets one clear complaint", () => {
  test("a file that is not there", () => {
    expect(complaint(folder.at("none.yaml"))).toBe("cannot be read: there is no such file");
    expect(complaint(folder.at("no/such/folder.yaml"))).toBe("cannot be read: there is no such file");
    expect(complaint("")).toContain("no file is named");
    expect(complaint("a\0b")).toContain("cannot be read");
  });

  test("a folder, a pipe, a device", () => {
    mkdirSync(folder.at("folder.yaml"));
    execFileSync("mkfifo", [folder.at("pipe.yaml")]);
    expect(complaint(folder.at("folder.yaml"))).toContain("it is a folder");
    expect(complaint(folder.at("pipe.yaml"))).toContain("a device or a pipe");
    expect(complaint("/dev/zero")).toContain("a device or a pipe");
  });

  test("a link in a circle, or to nothing", () => {
    symlinkSync("a", folder.at("b"));
    symlinkSync("b", folder.at("a"));
    symlinkSync("none", folder.at("c"));
    expect(complaint(folder.at("a"))).toContain("a link that leads back to itself");
    expect(complaint(folder.at("c"))).toBe("cannot be read: it is a link to a file that is not there");
  });

  test("a path through a file, or with too long a name", () => {
    writeFileSync(folder.at("car.yaml"), plain);
    expect(complaint(folder.at("car.yaml/x"))).toContain("a part of its path is a file");
    expect(complaint(folder.at("x".repeat(300)))).toContain("its name is too long");
  });

  test("a file that is too large", () => {
    writeFileSync(folder.at("car.yaml"), Buffer.alloc(largestFile + 1, "#"));
    expect(complaint(folder.at("car.yaml"))).toContain("too large for a car file: 1025 KiB");
  });

  test.each([
    ["zeros", Buffer.from([0x75, 0, 0, 0])],
    ["a picture", Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d])],
    ["Latin-1", Buffer.from("title: Stra\xdfe\n", "latin1")],
    ["a cut-off character", Buffer.from([0x61, 0xe2, 0x82])],
  ])("bytes that are no text: %s", (_, bytes) => {
    writeFileSync(folder.at("car.yaml"), bytes);
    expect(complaint(folder.at("car.yaml"))).toContain("not a text file");
  });

  test("UTF-16", () => {
    writeFileSync(folder.at("car.yaml"), Buffer.from(`\ufeff${plain}`, "utf16le"));
    expect(complaint(folder.at("car.yaml"))).toContain("UTF-16");
  });

  test.each([
    ["EACCES", "its permissions do not allow it"],
    ["EMFILE", "too many files are open"],
    ["EIO", "the disk reports an error"],
    ["EWHATEVER", "the system refused (EWHATEVER)"],
  ])("the system's %s", (code, words) => {
    writeFileSync(folder.at("car.yaml"), plain);
    fault.code = code;
    try {
      expect(complaint(folder.at("car.yaml"))).toBe(`cannot be read: ${words}`);
    } finally {
      fault.code = "";
    }
  });

  test("names line ends that are carriage returns alone", () => {
    writeFileSync(folder.at("cr.yaml"), "title: car\runits: in\r");
    expect(complaint(folder.at("cr.yaml"))).toContain("carriage returns alone (CR)");
  });
});
