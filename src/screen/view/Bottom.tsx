import { Text, Transform } from "ink";
import TextInput from "ink-text-input";
import { cursorFromInverse } from "../../terminal/cursor.ts";
import { adjustableOf, quantitiesOn, valueNow, whyFixed } from "../adjust.ts";
import { echoOf, sampleOf } from "../entry.ts";
import { isStarting } from "../frontEnd.ts";
import { bindingsNow } from "../keys.ts";
import { saidValue } from "../lengths.ts";
import type { Model } from "../model.ts";
import { questionWords } from "../questions.ts";
import { tones } from "./tone.ts";
import { wrapped } from "./wrap.ts";

/** Lines between the bench and the caution: a field, a question, the last thing done, or what is selected. */
const wordRows = 2;

/** What the text field tells of. */
export type Typed = (text: string) => void;

function Lines({ texts, strong = false }: { readonly texts: readonly string[]; readonly strong?: boolean }) {
  return Array.from({ length: wordRows }, (_, index) => ({ at: index, text: texts[index] ?? "" })).map(
    ({ at, text }) => (
      <Text key={at} {...(strong ? tones.warn : {})} wrap="truncate">
        {text === "" ? " " : ` ${text}`}
      </Text>
    ),
  );
}

/** The two lines of words: what is asked, what was done, or what the selected line is. */
export function Words({ model, onTyped }: { readonly model: Model; readonly onTyped: Typed }) {
  const { focus, notice, columns } = model;
  if (focus.on === "entry") return <EntryField model={model} text={focus.text} onTyped={onTyped} />;
  if (focus.on === "saveAs") return <NameField complaint={focus.complaint} text={focus.text} onTyped={onTyped} />;
  if (focus.on === "question") return <Lines texts={wrapped(questionWords(focus.question), columns - 2)} strong />;
  if (notice !== null) return <Lines texts={wrapped(notice.text, columns - 2)} strong={notice.tone === "wrong"} />;
  const line = adjustableOf(model.bench.car, model.selected);
  const why = whyFixed(model.bench.car, line, model.sides);
  const guess = isStarting(model.bench.car, line) ? "STARTING VALUE: measure it; x once it is right. " : "";
  return <Lines texts={wrapped(guess + (why ?? line.quantities[0]?.help ?? ""), columns - 2)} />;
}

function Field({ label, text, onTyped }: { readonly label: string; readonly text: string; readonly onTyped: Typed }) {
  return (
    <Transform transform={cursorFromInverse}>
      <Text wrap="truncate">
        <Text bold>{` ${label} `}</Text>
        <TextInput value={text} onChange={onTyped} />
      </Text>
    </Transform>
  );
}

function EntryField({
  model,
  text,
  onTyped,
}: {
  readonly model: Model;
  readonly text: string;
  readonly onTyped: Typed;
}) {
  const line = adjustableOf(model.bench.car, model.selected);
  const [first] = quantitiesOn(line, model.sides);
  const echo = echoOf(model);
  const sides = line.quantities.length < 2 ? "" : model.sides === "both" ? ", both sides" : `, ${model.sides} only`;
  const now = first === undefined ? "" : valueNow(model.bench, first);
  const stands =
    first === undefined || now === "" || now === null ? "" : ` (now ${saidValue(now, first, model.display)})`;
  return (
    <>
      <Field label={`${line.label}${sides}${stands}:`} text={text} onTyped={onTyped} />
      <Text {...(echo?.good === false ? tones.bad : {})} wrap="truncate">
        {` ${echo === null ? sampleOf(first ?? { kind: "length" }) : echo.text}`}
      </Text>
    </>
  );
}

function NameField({
  complaint,
  text,
  onTyped,
}: {
  readonly complaint: string | null;
  readonly text: string;
  readonly onTyped: Typed;
}) {
  return (
    <>
      <Field label="Save as:" text={text} onTyped={onTyped} />
      <Text {...(complaint === null ? {} : tones.bad)} wrap="truncate">
        {` ${complaint ?? "Type a file name, such as buggy.yaml. A file that is there already is not overwritten unasked."}`}
      </Text>
    </>
  );
}

/** The keys most needed just now, as many as fit; made from the list of keys. */
export function Footer({ model }: { readonly model: Model }) {
  return <Text wrap="truncate">{footerText(model)}</Text>;
}

function footerText(model: Model): string {
  return ` ${bindingsNow(model)
    .flatMap(({ footer }) => (footer === null ? [] : [footer]))
    .join("  ")}`;
}
