import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { run } from "../cli/run.ts";
import { type Chance, chanceOf } from "./chance.ts";
import { mutated, shaken } from "./mutations.ts";
import { presetTexts } from "./presets.ts";

/** ms: the slowest of these takes a few seconds on a busy machine. */
const longest = 60_000;

const place = mkdtempSync(join(tmpdir(), "rackwright-soak-"));
process.on("exit", () => rmSync(place, { recursive: true, force: true }));
const car = join(place, "car.yaml");
const other = join(place, "other.yaml");
const readings = fileURLToPath(new URL("../../presets/readings/as-built.yaml", import.meta.url));

type Draw = (chance: Chance) => readonly string[];

const amounts = ["0", "1", "-1", "3/8", "-2 1/4", "40 mm", "1e3", "1e-9", "9999", "x", "1e400", ""];
const forms = [[], [], ["--json"], ["--ascii"], ["--units=mm"], ["--units=in", "--json"]] as const;
const papers = [[], ["--json"], ["--html"], ["--markdown"]] as const;
const rows = [[], ["--csv"], ["--json"]] as const;

/** What is asked of a car, and with which options. Those that take seconds come seldom, below. */
const asked: readonly Draw[] = [
  ({ one }) => [
    "steer",
    car,
    ...one(rows),
    ...one([[], [`--from=${one(amounts)}`], [`--to=${one(amounts)}`], [`--step=${one(amounts)}`]]),
  ],
  ({ one }) => ["bump", car, ...one(rows), ...one([[], [`--rack=${one(amounts)}`], [`--from=${one(amounts)}`]])],
  ({ one }) => ["pose", car, `--rack=${one(amounts)}`, `--travel=${one(amounts)}`, ...one(forms)],
  ({ one }) => ["pose", car, `--travel-left=${one(amounts)}`, ...one(forms)],
  ({ one }) => ["--summary", car, ...one(forms)],
  ({ one }) => [
    "upright",
    car,
    ...one(forms),
    ...one([[], [`--tab-back=${one(amounts)}`], [`--camber=${one(amounts)}`], ["--take"]]),
  ],
  ({ one }) => ["template", car, ...one(forms)],
];

const slow: readonly Draw[] = [
  ({ one }) => ["check", car, ...one(forms)],
  ({ one }) => ["locks", car, ...one(forms)],
  ({ one }) => ["adjusters", car, ...one(forms), ...one([[], [`--turns=${one(amounts)}`], [`--shim=${one(amounts)}`]])],
  ({ one }) => ["widen", car, ...one(forms), ...one([[], [`--by=${one(amounts)}`]])],
  ({ one }) => ["compare", car, other, ...one(papers)],
  ({ one }) => ["sheet", car, ...one(papers)],
  ({ one }) => ["sheet", car, "--from", other, ...one(papers)],
  ({ one }) => ["sensitivity", car, ...one(rows)],
  ({ one }) => ["tolerance", car, "--builds=100", ...one(rows)],
  ({ one }) => ["match", car, readings, ...one(rows)],
];

/** What a number or a name that went missing looks like, and a fault of the program. */
const unfit = /\b(?:NaN|Infinity|undefined)\b|\[object|a fault in the program|\n\s+at (?:async )?\S+ \(/;
/** What acts on a terminal instead of showing. */
const acting = /[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/;

/** Asks one thing of a car that something happened to. Null where all is well, else what is wrong. */
export async function commandShare(seed: number): Promise<string | null> {
  const chance = chanceOf(seed);
  const text = () => {
    const whole = chance.one(presetTexts);
    return chance.below(3) === 0 ? mutated(whole, chance) : shaken(whole, chance);
  };
  writeFileSync(car, text());
  writeFileSync(other, text());
  const argv = chance.one(chance.below(8) === 0 ? slow : asked)(chance);
  const begun = performance.now();
  const { code, out, err } = await run(argv);
  const took = performance.now() - begun;
  const words = argv.join(" ").replaceAll(`${place}/`, "");
  if (took > longest) return `${words} took ${Math.round(took)} ms`;
  if (![0, 1, 2, 3].includes(code)) return `${words} ends with ${code}: ${err.slice(0, 500)}`;
  if (code === 2 && (out !== "" || err === ""))
    return `${words} is refused with ${JSON.stringify(`${out}${err}`.slice(0, 200))}`;
  const isText = argv[0] === "upright" && argv.includes("--take");
  for (const [where, said] of [
    ["out", isText ? "" : out],
    ["err", err],
  ] as const) {
    const odd = unfit.exec(said) ?? acting.exec(said);
    if (odd !== null)
      return `${words}: ${where} has ${JSON.stringify(said.slice(Math.max(odd.index - 80, 0), odd.index + 40))}`;
  }
  if (code === 0 && !isText && argv.some((each) => each.endsWith("--json"))) JSON.parse(out);
  return null;
}
