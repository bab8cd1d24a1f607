import { Text } from "ink";
import { itemBrief } from "../../output/check.ts";
import { countOf, worstOf } from "../../solve/check/report.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { checks } from "../views/checks.tsx";
import { tones } from "./tone.ts";
import { fitting, shorterPhrases } from "./wrap.ts";

const label = 13;

/** How many checks are broken or close, and the worst of them, in ways that take less and less room. */
function words(model: Model): { readonly texts: readonly string[]; readonly tone: "plain" | "warn" | "bad" } {
  const report = model.check?.report ?? null;
  if (report === null) return { texts: ["all of steering by all of travel"], tone: "plain" };
  const [broken, close, open] = [countOf(report, "broken"), countOf(report, "close"), countOf(report, "not given")];
  const worst = worstOf(report);
  if (worst === null) {
    // What was not looked at is never left out: nothing wrong in the little that is given is no clean bill.
    const rest = open === 0 ? "" : `; ${open} not given (press ${checks.key})`;
    return { texts: [`nothing broken, nothing close${rest}`], tone: "plain" };
  }
  const counts = [broken === 0 ? "" : `${broken} BROKEN`, close === 0 ? "" : `${close} close`];
  const count = counts.filter((each) => each !== "").join(", ");
  const item = itemBrief(worst, model.display.unit, sayer(model.display));
  const pressed = `${count} (press ${checks.key})`;
  const shorter = shorterPhrases(worst.label).flatMap((label) => [`${pressed}: ${label}`, `${count}: ${label}`]);
  return {
    texts: [`${pressed}. Worst: ${item}`, `${pressed}: ${item}`, `${count}: ${item}`, ...shorter, pressed],
    tone: broken > 0 ? "bad" : "warn",
  };
}

/** The checks on one line, whatever view is seen. Numbers of the car before the last change stay until new ones are known. */
export function CheckLine({ model, columns }: { readonly model: Model; readonly columns: number }) {
  const { texts, tone } = words(model);
  const known = model.check !== null && model.check.text === model.bench.car.text;
  return (
    <Text wrap="truncate">
      <Text bold>{` ${known ? "CHECKS" : "CHECKING"}`.padEnd(label)}</Text>
      <Text {...tones[tone]}>{fitting(texts, columns - label - 1)}</Text>
    </Text>
  );
}
