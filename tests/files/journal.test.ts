import { spawn } from "node:child_process";
import { once } from "node:events";
import {
  appendFileSync,
  copyFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { buildSync } from "esbuild";
import fc from "fast-check";
import { beforeEach, describe, expect, test } from "vitest";
import { discardLeftover, findLeftovers, Journal } from "../../src/files/journal.ts";
import { type EditLine, readJournal } from "../../src/files/record.ts";
import { replayed } from "../../src/files/replay.ts";
import { spliceBetween, withSplice } from "../../src/files/splice.ts";
import { stateFolder } from "../../src/files/state.ts";
import { ownFolder } from "./folder.ts";

const folder = ownFolder();
let environment: NodeJS.ProcessEnv = {};
let car = "";

beforeEach(() => {
  environment = { XDG_STATE_HOME: folder.path };
  car = folder.at("car.yaml");
  writeFileSync(car, "one\n");
});

function files(): readonly string[] {
  try {
    return readdirSync(folder.at("rackwright/journals"));
  } catch {
    return [];
  }
}

/** What another run would have left: a journal of a process that is no more. */
function leave(texts: readonly string[], base = "one\n", of = car): string {
  const journal = new Journal(of, base, environment);
  for (const text of texts) expect(journal.record(text, `to ${text.trim()}`)).toBeNull();
  const path = journal.path ?? "";
  const content = readFileSync(path, "utf8");
  // A process has this number on no system: it is beyond what any gives out.
  const dead = content.replace(`"pid":${process.pid}`, '"pid":2147483647');
  const left = join(
    folder.at("rackwright/journals"),
    path.slice(path.lastIndexOf("/") + 1).replace(/-\d+-/, "-2147483647-"),
  );
  journal.close();
  writeFileSync(left, dead);
  return left;
}

describe("a journal", () => {
  test("writes nothing before the first edit, and is gone when it is closed", () => {
    const journal = new Journal(car, "one\n", environment);
    expect(files()).toEqual([]);
    expect(journal.path).toBeNull();
    expect(journal.record("two\n", "to two")).toBeNull();
    expect(files()).toHaveLength(1);
    journal.close();
    expect(files()).toEqual([]);
    journal.close();
  });

  test("has each edit in its file before record returns, readable by its owner alone", () => {
    const journal = new Journal(car, "one\n", environment);
    const texts = ["two\n", "two and a half\n", "", "three\n"];
    for (const [index, text] of texts.entries()) {
      journal.record(text, `edit ${index}`);
      const found = readJournal(readFileSync(journal.path ?? "", "utf8"));
      expect(found?.text).toBe(text);
      expect(found?.whats).toHaveLength(index + 1);
    }
    expect(statSync(journal.path ?? "").mode & 0o777).toBe(0o600);
    expect(statSync(folder.at("rackwright")).mode & 0o777).toBe(0o700);
    journal.close();
  });

  test("begins anew once the car is saved", () => {
    const journal = new Journal(car, "one\n", environment);
    journal.record("two\n", "to two");
    journal.saved("two\n");
    expect(files()).toEqual([]);
    journal.record("three\n", "to three");
    const found = readJournal(readFileSync(journal.path ?? "", "utf8"));
    expect(found).toMatchObject({ whats: ["to three"], text: "three\n", head: { text: "two\n" } });
    journal.close();
  });

  test("stays bounded however long the car is worked on", () => {
    const journal = new Journal(car, "one\n", environment);
    const long = "x".repeat(200_000);
    for (let edit = 0; edit < 40; edit++) expect(journal.record(`${edit}${long}${edit}`, "long")).toBeNull();
    expect(statSync(journal.path ?? "").size).toBeLessThan(2 * 1024 * 1024);
    expect(readJournal(readFileSync(journal.path ?? "", "utf8"))?.text).toBe(`39${long}39`);
    expect(files()).toHaveLength(1);
    journal.close();
  });

  test("is written into no other file, though a link to one stands in its way", () => {
    const journal = new Journal(car, "one\n", environment);
    const long = "x".repeat(1_100_000);
    expect(journal.record(long, "long")).toBeNull();
    writeFileSync(folder.at("elsewhere"), "secret");
    symlinkSync(folder.at("elsewhere"), `${journal.path}.new`);
    expect(journal.record(`${long}y`, "longer")).toBeNull();
    expect(readFileSync(folder.at("elsewhere"), "utf8")).toBe("secret");
    expect(readJournal(readFileSync(journal.path ?? "", "utf8"))?.text).toBe(`${long}y`);
    journal.close();
  });

  test("says once it cannot be kept, and the program works on", () => {
    const nowhere = new Journal(car, "one\n", { XDG_STATE_HOME: car, HOME: car, TMPDIR: folder.path });
    const blocked = new Journal(car, "one\n", environment);
    mkdirSync(folder.at("rackwright"), { recursive: true });
    writeFileSync(folder.at("rackwright/journals"), "a file in the way");
    expect(blocked.record("two\n", "to two")).toMatch(/^Unsaved edits cannot be kept safe: .+\.$/);
    // With no folder of its own the temporary one is used, so this one is kept.
    expect(nowhere.record("two\n", "to two")).toBeNull();
    const none = new Journal(car, "one\n", { XDG_STATE_HOME: car, HOME: car, TMPDIR: car });
    expect(none.record("two\n", "to two")).toContain("there is no folder for them");
    nowhere.close();
    blocked.close();
  });
});

describe("edits left over", () => {
  test("are offered with what they are, newest journal first", () => {
    leave(["two\n", "three\n"]);
    const found = findLeftovers(car, "one\n", environment);
    expect(found.openElsewhere).toBe(0);
    expect(found.offers).toMatchObject([{ whats: ["to two", "to three"], text: "three\n", stale: false }]);
    expect(Math.abs((found.offers[0]?.when ?? 0) - Date.now())).toBeLessThan(60_000);
  });

  test("are found by whatever path the car is opened", () => {
    leave(["two\n"]);
    symlinkSync(car, folder.at("link.yaml"));
    expect(findLeftovers(folder.at("link.yaml"), "one\n", environment).offers).toHaveLength(1);
    expect(findLeftovers(folder.at("other.yaml"), "one\n", environment).offers).toHaveLength(0);
  });

  test("of a new car without a file are found by its word", () => {
    leave(["two\n"], "one\n", "preset balanced-two-seater");
    expect(findLeftovers("preset balanced-two-seater", "one\n", environment).offers).toHaveLength(1);
    expect(findLeftovers("preset rack-ahead", "one\n", environment).offers).toHaveLength(0);
  });

  test("are said to be stale where the car's file changed since", () => {
    leave(["two\n"]);
    expect(findLeftovers(car, "someone else's\n", environment).offers).toMatchObject([{ text: "two\n", stale: true }]);
  });

  test("are cleared away when turned down, or when they came to nothing", () => {
    const path = leave(["two\n"]);
    discardLeftover(path);
    expect(files()).toEqual([]);
    leave(["two\n", "one\n"]);
    expect(findLeftovers(car, "one\n", environment).offers).toEqual([]);
    expect(files()).toEqual([]);
  });

  test("survive a last line that was torn off, at whatever byte", () => {
    const path = leave(["two\n", "three\n", "four\n"]);
    const whole = readFileSync(path);
    for (let size = whole.length; size > 0; size--) {
      truncateSync(path, size);
      const found = readJournal(readFileSync(path, "utf8"));
      if (found === null) expect(size).toBeLessThan(whole.indexOf("\n") + 1);
      else expect(["one\n", "two\n", "three\n", "four\n"]).toContain(found.text);
    }
  });

  test("are not made of rubbish", () => {
    const path = leave(["two\n"]);
    for (const rubbish of [
      "\n",
      "{}\n",
      '{"at":-1,"cut":0,"put":"x","what":""}\n',
      '{"at":99,"cut":9,"put":"x","what":""}\n',
      "\0\0\0\n",
    ]) {
      appendFileSync(path, rubbish);
      expect(findLeftovers(car, "one\n", environment).offers).toMatchObject([{ text: "two\n", whats: ["to two"] }]);
    }
    for (const rubbish of ["", "\n", "[]\n", "null\n", '{"format":2}\n']) expect(readJournal(rubbish)).toBeNull();
  });

  test("that cannot be read are told by their file, and left where they are", () => {
    const path = leave(["two\n"]);
    const content = readFileSync(path, "utf8");
    const elsewhere = folder.at("elsewhere");
    writeFileSync(elsewhere, content);
    for (const spoil of [
      () => writeFileSync(path, content.slice(1)),
      () => writeFileSync(path, content.replace('"pid":2147483647', '"pid":-1')),
      () => writeFileSync(path, content.replace('"put":"two', `"put":"${"x".repeat(1_100_000)}`)),
      () => symlinkSync(elsewhere, path),
    ]) {
      discardLeftover(path);
      spoil();
      expect(findLeftovers(car, "one\n", environment)).toEqual({ offers: [], openElsewhere: 0, unread: [path] });
      expect(files()).toHaveLength(1);
    }
    expect(readFileSync(elsewhere, "utf8")).toBe(content);
  });

  test("of more edits than anyone makes are not gone through to the end", () => {
    const content = readFileSync(leave(["two\n", "three\n"]), "utf8");
    const through = "two\n".length + "three\n".length;
    expect(readJournal(content, through)?.text).toBe("three\n");
    expect(readJournal(content, through - 1)).toBeNull();
  });

  test("of many runs are offered by the newest twenty", () => {
    const path = leave(["two\n"]);
    for (let run = 0; run < 24; run++) {
      const copy = path.replace(/[^-]*$/, `${run}.journal`);
      copyFileSync(path, copy);
      utimesSync(copy, run, run);
    }
    const { offers } = findLeftovers(car, "one\n", environment);
    expect(offers.map(({ when }) => when / 1000).slice(1)).toEqual(Array.from({ length: 19 }, (_, i) => 23 - i));
  });

  test("of a running copy are left alone, and the copy is counted", async () => {
    const running = spawn(process.execPath, ["-e", "setInterval(() => {}, 1000)"]);
    await once(running, "spawn");
    const path = leave(["two\n"]);
    const content = readFileSync(path, "utf8").replace('"pid":2147483647', `"pid":${running.pid}`);
    writeFileSync(path, content.replace(/"birth":"\d*"/, '"birth":""'));
    expect(findLeftovers(car, "one\n", environment)).toEqual({ offers: [], openElsewhere: 1, unread: [] });
    // The same number, but another process: that copy is no more.
    writeFileSync(path, content.replace(/"birth":"\d*"/, '"birth":"1"'));
    const onLinux = process.platform === "linux";
    expect(findLeftovers(car, "one\n", environment).offers).toHaveLength(onLinux ? 1 : 0);
    running.kill("SIGKILL");
    await once(running, "exit");
    writeFileSync(path, content.replace(/"birth":"\d*"/, '"birth":""'));
    expect(findLeftovers(car, "one\n", environment).offers).toHaveLength(1);
  });

  test.runIf(process.platform === "linux")(
    "of a copy that has ended are offered though nobody took note of its end",
    async () => {
      // A shell that becomes something else never asks how its child ended.
      const parent = spawn("sh", ["-c", "sleep 0.3 & echo $!; exec sleep 60"]);
      const [bytes] = await once(parent.stdout, "data");
      const pid = Number(String(bytes));
      const fields = () => readFileSync(`/proc/${pid}/stat`, "utf8").split(" ");
      await expect.poll(() => fields()[2]).toBe("Z");
      const path = leave(["two\n"]);
      const content = readFileSync(path, "utf8").replace('"pid":2147483647', `"pid":${pid}`);
      writeFileSync(path, content.replace(/"birth":"\d*"/, `"birth":"${fields()[21]}"`));
      expect(findLeftovers(car, "one\n", environment)).toMatchObject({ offers: [{ text: "two\n" }], openElsewhere: 0 });
      parent.kill("SIGKILL");
      await once(parent, "exit");
    },
  );

  test("after kill -9 lack nothing that record had returned from", async () => {
    const script = folder.at("work.mjs");
    buildSync({
      stdin: {
        contents: `import { Journal } from "./src/files/journal.ts";
          const journal = new Journal(${JSON.stringify(car)}, "one\\n");
          for (let edit = 1; ; edit++) {
            const told = journal.record("edit " + edit + "\\n", "edit " + edit);
            if (told !== null) throw new Error(told);
            process.stdout.write(edit + "\\n");
            await new Promise((resolve) => setTimeout(resolve, 2));
          }`,
        resolveDir: fileURLToPath(new URL("../..", import.meta.url)),
      },
      bundle: true,
      platform: "node",
      format: "esm",
      outfile: script,
    });
    const child = spawn(process.execPath, [script], { env: { ...process.env, XDG_STATE_HOME: folder.path } });
    let told = "";
    child.stdout.on("data", (bytes: Buffer) => {
      told += bytes.toString();
      if (told.split("\n").length > 12) child.kill("SIGKILL");
    });
    await once(child, "close");
    const last = Number(told.trim().split("\n").at(-1));
    const [offer] = findLeftovers(car, "one\n", environment).offers;
    expect(last).toBeGreaterThan(10);
    expect(offer?.whats.length).toBeGreaterThanOrEqual(last);
    expect(offer?.text).toBe(`edit ${offer?.whats.length}\n`);
  });
});

test("a splice between two texts makes the one of the other", () => {
  const text = fc.string({ unit: fc.constantFrom("a", "b", "\n", "\u{1f697}"), maxLength: 12 });
  fc.assert(
    fc.property(text, text, (before, after) => {
      const splice = spliceBetween(before, after);
      expect(withSplice(before, splice)).toBe(after);
      expect(splice.put.length).toBeLessThanOrEqual(after.length);
    }),
  );
});

describe("the folder for unsaved edits", () => {
  test("is in the user's state folder, else in his home, else among temporary files", () => {
    expect(stateFolder({ XDG_STATE_HOME: folder.path })).toBe(folder.at("rackwright"));
    expect(stateFolder({ HOME: folder.path })).toBe(folder.at(".local/state/rackwright"));
    expect(stateFolder({ XDG_STATE_HOME: "not/absolute", HOME: folder.path })).toBe(
      folder.at(".local/state/rackwright"),
    );
  });

  test("is another one where the first cannot be had", () => {
    expect(stateFolder({ XDG_STATE_HOME: car, HOME: folder.path })).toBe(folder.at(".local/state/rackwright"));
    symlinkSync("/", folder.at("rackwright"));
    expect(stateFolder({ XDG_STATE_HOME: folder.path, HOME: folder.path })).toBe(folder.at(".local/state/rackwright"));
    expect(stateFolder({ XDG_STATE_HOME: car, HOME: car, TMPDIR: folder.path })).toMatch(
      /\/rackwright-test-[^/]+\/rackwright-[^/]+$/,
    );
    expect(stateFolder({ XDG_STATE_HOME: car, HOME: car, TMPDIR: car })).toBeNull();
  });
});

describe("edits made again on a text that was changed elsewhere", () => {
  const base = "name: car\nwheelbase: 68\nleft: 1\nright: 2\n";
  const swap = (text: string, from: string, to: string, what: string): EditLine => ({
    ...spliceBetween(text, text.replace(from, to)),
    what,
  });
  const first = swap(base, "left: 1", "left: 10", "left to 10");
  const second = swap(base.replace("left: 1", "left: 10"), "right: 2", "right: 25", "right to 25");

  test.each([
    ["before them", base.replace("68", "70 1/2")],
    ["behind them", `${base}# theirs\n`],
    ["by a line less", base.replace("name: car\n", "")],
  ])("come out on it, wherever it was changed: %s", (_, onto) => {
    const steps = replayed(base, [first, second], onto);
    const wanted = onto.replace("left: 1", "left: 10");
    expect(steps).toEqual([
      { text: wanted, what: "left to 10" },
      { text: wanted.replace("right: 2", "right: 25"), what: "right to 25" },
    ]);
  });

  test("come out where it was changed between them", () => {
    const middle = "left: 1\nmiddle: 3\nright: 2\n";
    const last = swap(middle.replace("left: 1", "left: 100"), "right: 2", "right: 25", "right");
    const steps = replayed(middle, [swap(middle, "left: 1", "left: 100", "left"), last], middle.replace("3", "4"));
    expect(steps?.at(-1)?.text).toBe("left: 100\nmiddle: 4\nright: 25\n");
  });

  test("do not where both changed a line, or put something in at the same place", () => {
    expect(replayed(base, [first], base.replace("left: 1", "left: 1 in"))).toBeNull();
    expect(replayed(base, [first], base.replace("left: 1\n", ""))).toBeNull();
    expect(replayed(base, [swap(base, "right: 2\n", "right: 2\na: 1\n", "a")], `${base}b: 2\n`)).toBeNull();
  });
});
