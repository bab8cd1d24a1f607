import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { loadPreset } from "../../src/files/presets.ts";
import { doer } from "../../src/screen/effects.ts";
import { openCar } from "../../src/screen/files.ts";
import { questionWords } from "../../src/screen/questions.ts";
import type { Message } from "../../src/screen/turn.ts";
import { ownFolder } from "../files/folder.ts";
import { Bench } from "./support/bench.tsx";

const folder = ownFolder();

/** The screen on a car file without a terminal, with what it does outside of itself done at once. */
async function opened(path: string): Promise<Bench> {
  const car = await openCar({ from: "file", path }, { XDG_STATE_HOME: folder.path, HOME: folder.path });
  if ("complaints" in car) throw new Error(car.complaints[0]);
  const bench = new Bench(car);
  const env = { XDG_STATE_HOME: folder.path, HOME: folder.path };
  const effects = doer(bench.model, { env, send: (message) => bench.send(message), quit: () => undefined });
  const send = bench.send.bind(bench);
  bench.send = (message: Message) => {
    const before = bench.effects.length;
    send(message);
    for (const effect of bench.effects.slice(before)) effects.do(effect, bench.model);
    return bench;
  };
  return bench;
}

/** As if the process that keeps the journals had been killed: no process has this number. */
function killed(): void {
  const journals = join(folder.path, "rackwright", "journals");
  for (const name of readdirSync(journals)) {
    const path = join(journals, name);
    writeFileSync(path, readFileSync(path, "utf8").replace(`"pid":${process.pid}`, '"pid":2000000000'));
  }
}

function carFile(): string {
  const loaded = loadPreset("widened-offset-rack");
  if ("complaints" in loaded) throw new Error("no such example");
  writeFileSync(folder.at("a.yaml"), loaded.text);
  return folder.at("a.yaml");
}

const asked = ({ model }: Bench) => (model.focus.on === "question" ? questionWords(model.focus.question) : "");

describe("changes left over while the car's file was changed elsewhere", () => {
  it("are made again on what it now holds, and a save keeps both", async () => {
    const path = carFile();
    const first = await opened(path);
    first.press("right", "right");
    const edited = first.model.bench.car.text;
    killed();
    const base = readFileSync(path, "utf8");
    writeFileSync(path, base.replace("wheelbase: 68", "wheelbase: 70"));

    const again = await opened(path);
    expect(asked(again)).toContain("2 changes");
    expect(asked(again)).toContain("restoring them keeps what is new in it");
    again.press("r");
    again.press("s");
    const saved = readFileSync(path, "utf8");
    expect(saved).toBe(edited.replace("wheelbase: 68", "wheelbase: 70"));
    expect(saved).toContain("wheelbase: 70");
  });

  it("replace it only when told to, where both changed the same line: a save asks, also after a second drop", async () => {
    const path = carFile();
    const first = await opened(path);
    const selected = first.press("enter", "=-4", "enter", "right").model.bench.car.text;
    killed();
    const base = readFileSync(path, "utf8");
    const [line = ""] = base.split("\n").filter((each, at) => each !== selected.split("\n")[at]);
    const theirs = base.replace(line, `${line} # measured by someone else`);
    expect(theirs).not.toBe(base);
    writeFileSync(path, theirs);

    for (const drop of ["first", "second"]) {
      const again = await opened(path);
      expect(asked(again), drop).toContain("2 changes");
      expect(asked(again), drop).toContain("a save then asks before it writes over it");
      again.press("r", "s");
      expect(asked(again), drop).toContain("was changed by something else");
      expect(readFileSync(path, "utf8"), drop).toBe(theirs);
      killed();
    }
    const last = await opened(path);
    last.press("r", "s", "o");
    expect(readFileSync(path, "utf8")).toBe(selected);
  });
});

describe("changes taken back", () => {
  it("are named one by one after a second drop too", async () => {
    const path = carFile();
    (await opened(path)).press("right", "down", "right");
    killed();
    const found = asked(await opened(path));
    expect(found).toMatch(/2 changes, .*, the last "Tie-rod tab, out/);
    (await opened(path)).press("r");
    killed();
    expect(asked(await opened(path))).toBe(found);
  });
});

describe("changes that were kept", () => {
  it("but cannot be read are told when the car is opened, and the car is shown", async () => {
    const path = carFile();
    const first = await opened(path);
    first.press("right");
    killed();
    const journals = join(folder.path, "rackwright", "journals");
    const [name = ""] = readdirSync(journals);
    writeFileSync(join(journals, name), "rubbish");
    writeFileSync(join(journals, name.replace(/[^-]*$/, "x.journal")), "rubbish");
    const { model } = await opened(path);
    expect(model.notice?.text).toMatch(/were kept, but cannot be read: .*\.journal \(and 1 more\)\. They stay there/);
    expect(model.focus.on).toBe("bench");
    expect(readdirSync(journals)).toHaveLength(2);
  });

  it("are told shortly, however long the words of the last one are", async () => {
    const path = carFile();
    const first = await opened(path);
    first.press("right");
    killed();
    const journals = join(folder.path, "rackwright", "journals");
    for (const name of readdirSync(journals)) {
      const kept = readFileSync(join(journals, name), "utf8");
      writeFileSync(join(journals, name), kept.replace(/"what":"[^"]*"/, `"what":"${"W".repeat(5000)}"`));
    }
    const words = asked(await opened(path));
    expect(words).toContain(`the last "${"W".repeat(100)}..."`);
    expect(words.length).toBeLessThan(250);
  });
});
