import { Box, Text } from "ink";
import { adjustableOf, quantitiesOn, valueNow } from "../adjust.ts";
import { readAmount } from "../amounts.ts";
import { echoOf, sampleOf } from "../entry.ts";
import { guideWords } from "../guide.ts";
import type { Binding } from "../keys/binding.ts";
import { bindingsNow } from "../keys.ts";
import { bothValues } from "../lengths.ts";
import type { Focus, Model } from "../model.ts";
import { askedWords, questionWords } from "../questions.ts";
import { viewOf } from "../views/views.ts";
import { whyNoPlace, whyNoTravel } from "../why.ts";
import { Field, type Typed } from "./Field.tsx";
import { isEmptied } from "./NotTogether.tsx";
import { tones } from "./tone.ts";
import { wholeSentences, wrapped } from "./wrap.ts";

interface Said {
  readonly texts: readonly string[];
  readonly rows: number;
  readonly strong?: boolean;
}

function Sentences({ texts, rows, strong = false }: Said) {
  const lines = Array.from({ length: rows }, (_, index) => texts[index] ?? "");
  return (
    <Text {...(strong ? tones.warn : {})} wrap="truncate">
      {lines.map((text) => (text === "" ? " " : ` ${text}`)).join("\n")}
    </Text>
  );
}

/** The lines of words: what is asked, what was done, or what is under the cursor. */
export function Words({
  model,
  rows,
  onTyped,
}: {
  readonly model: Model;
  readonly rows: number;
  readonly onTyped: Typed;
}) {
  const { focus, notice, columns } = model;
  if (focus.on === "entry" || focus.on === "saveAs" || focus.on === "line") {
    return (
      <Box flexDirection="column" height={rows}>
        {focus.on === "entry" ? (
          <EntryField model={model} text={focus.text} onTyped={onTyped} />
        ) : (
          <LineField {...fieldWords(focus, model)} columns={columns} text={focus.text} onTyped={onTyped} />
        )}
      </Box>
    );
  }
  const width = columns - 2;
  if (focus.on === "question") {
    const words = `${notice?.tone === "wrong" ? `${notice.text} ` : ""}${questionWords(focus.question)}`;
    return <Sentences texts={wrapped(words, width)} rows={rows} strong />;
  }
  if (focus.on === "opening") return <Sentences texts={["Reading the other car: keys wait for it."]} rows={rows} />;
  const guide = guideWords(model);
  if (guide !== null) return <Sentences texts={wrapped(guide, width)} rows={rows} strong={notice?.tone === "wrong"} />;
  if (notice !== null)
    return <Sentences texts={wrapped(notice.text, width)} rows={rows} strong={notice.tone === "wrong"} />;
  return <Sentences texts={wholeSentences(viewOf(model.view).explain(model), width, rows)} rows={rows} />;
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
  const meant = quantitiesOn(line, model.sides);
  const refused = model.notice?.tone === "wrong" ? { text: model.notice.text, good: false } : null;
  const echo = refused ?? echoOf(model);
  const sides = line.quantities.length < 2 ? "" : model.sides === "both" ? ", both sides" : `, ${model.sides} only`;
  const values = meant.flatMap((quantity) => {
    const value = valueNow(model.bench, quantity);
    return value === null ? [] : [{ quantity, value }];
  });
  const now = values.length === 0 ? "" : ` (now ${bothValues(values, model.display)})`;
  const labels = [`${line.label}${sides}${now}:`, `${line.label}${now}:`, `${line.label}${sides}:`, `${line.label}:`];
  return (
    <>
      <Field labels={labels} columns={model.columns} text={text} onTyped={onTyped} />
      <Text {...(echo?.good === false ? tones.bad : {})} wrap="truncate">
        {` ${echo === null ? sampleOf(meant[0] ?? { kind: "length" }) : echo.text}`}
      </Text>
    </>
  );
}

interface FieldWords {
  readonly label: string;
  readonly hint: string;
  readonly complaint: string | null;
}

/** What a line of text is asked for, and what to type or what was read; a file name also with what the car's is now. */
function fieldWords(focus: Focus & { on: "saveAs" | "line" }, model: Model): FieldWords {
  const { complaint } = focus;
  if (focus.on === "line") {
    const asked = { ...askedWords(focus.asks), complaint };
    if (focus.asks.about !== "amount" || focus.text.trim() === "") return asked;
    const read = readAmount(focus.asks.amount, focus.text, model);
    return "complaint" in read ? { ...asked, complaint: read.complaint } : { ...asked, hint: read.echo };
  }
  const { path } = model.origin;
  const now = path === null ? "" : ` (now ${path.split(/[\\/]/).at(-1) ?? path})`;
  return {
    label: `Save as${now}:`,
    hint: "Type a name, such as buggy. No file that is there is overwritten unasked.",
    complaint,
  };
}

function LineField({
  label,
  hint,
  complaint,
  columns,
  text,
  onTyped,
}: {
  readonly label: string;
  readonly hint: string;
  readonly complaint: string | null;
  readonly columns: number;
  readonly text: string;
  readonly onTyped: Typed;
}) {
  return (
    <>
      <Field labels={[label]} columns={columns} text={text} onTyped={onTyped} />
      <Text {...(complaint === null ? {} : tones.bad)} wrap="truncate">
        {` ${complaint ?? hint}`}
      </Text>
    </>
  );
}

/** The keys most needed just now, as many as fit; made from the list of keys. */
export function Footer({ model }: { readonly model: Model }) {
  return <Text wrap="truncate">{footerText(model)}</Text>;
}

/** Footers that stay when there is no room for all: the way to help and the way out. */
const kept = 2;

/** Whether what makes a key idle lies in the car itself: it may go from the footer, since it does not come and go there. */
function isLasting(off: Binding["off"]): boolean {
  return off === whyNoTravel || off === whyNoPlace;
}

function footerText(model: Model): string {
  const own = model.focus.on === "bench" ? viewOf(model.view).keys : [];
  const all = bindingsNow(model).flatMap(({ footer, keys, off }) => {
    const isOwn = ["tape", "survey", "matched"].includes(model.focus.on) || own.some((each) => each.keys === keys);
    // What the view itself cannot do just now is not offered; of the common keys, nothing that needs a whole front end.
    const isIdle = isEmptied(model) ? isOwn || off?.(model) : (isOwn || isLasting(off)) && off?.(model);
    return footer === null || isIdle ? [] : [typeof footer === "string" ? footer : footer(model)];
  });
  const once = [...new Set(all)];
  const last = once.slice(-kept);
  const shown: string[] = [];
  for (const footer of once.slice(0, -kept)) {
    if (` ${[...shown, footer, ...last].join("  ")}`.length > model.columns) break;
    shown.push(footer);
  }
  return ` ${[...shown, ...last].join("  ")}`;
}
