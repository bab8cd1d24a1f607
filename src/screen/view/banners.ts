import { blameWords } from "../../measures/blame.ts";
import { steersBackwards, wildToe } from "../../output/words.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { inputWords, type Tone, travelWords } from "./readout.ts";
import { wrapped } from "./wrap.ts";

/** What must not be overlooked, above all numbers, in lines that fit: steers backwards, out of reach, doubtful files. */
export function banners(model: Model, columns: number): readonly { readonly text: string; readonly tone: Tone }[] {
  const { study, car } = model.bench;
  const length = sayer(model.display);
  const said: { text: string; tone: Tone }[] = [];
  if (!("refused" in study)) {
    const backwards = steersBackwards(study);
    if (backwards !== null) said.push({ text: backwards, tone: "bad" });
    const toe = wildToe(study, " (c fits them)");
    if (toe !== null) said.push({ text: toe, tone: "bad" });
    const { blame } = study.worst;
    if (blame !== null) {
      const where = `at ${inputWords(study, blame.input, length)}, ${travelWords(study, blame.travel, length)}`;
      said.push({ text: `DOES NOT REACH ${where}: the ${blameWords(blame, length)}`, tone: "bad" });
    }
  }
  const [first, ...others] = car.warnings;
  if (first !== undefined) {
    const more = others.length > 0 ? ` (and ${others.length} more)` : "";
    said.push({
      text: `Look at the file${first.line === null ? "" : `, line ${first.line}`}: ${first.message}${more}`,
      tone: "warn",
    });
  }
  return said.flatMap(({ text, tone }) =>
    wrapped(text, columns - 1)
      .slice(0, 2)
      .map((line) => ({ text: ` ${line}`, tone })),
  );
}
