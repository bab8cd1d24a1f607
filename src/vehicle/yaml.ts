import { isMap, LineCounter, parseDocument } from "yaml";
import type { Complaint } from "./complaint.ts";
import { safe } from "./shown.ts";
import { gather, type Tree } from "./tree.ts";

/** The most that a car file may hold, in characters: many times what any car needs. */
export const largestText = 256 * 1024;

/** What YAML's own complaints mean to a builder, by their code. */
const words: Readonly<Record<string, string>> = {
  BAD_INDENT: "the indentation does not fit, or a bracket or brace is not closed",
  BLOCK_AS_IMPLICIT_KEY: "the indentation does not fit, or a second colon stands on the line",
  MULTILINE_IMPLICIT_KEY: "a key has no colon after it, or the indentation does not fit",
  TAB_AS_INDENT: "there is a tab in the indentation: use spaces",
  MISSING_CHAR: "a quote, bracket, brace, comma or colon is missing",
  MULTIPLE_DOCS: "a second document begins here: a file holds one car",
  BAD_ALIAS: "a reference (*name) is not written properly",
  NON_STRING_KEY: "a key is not a plain word",
  TAG_RESOLVE_FAILED: "tags (!name) are not used in car files",
  UNEXPECTED_TOKEN: "something stands here that does not belong",
};

const twice = "the same key stands here a second time: keep one of them";
const tooDeep = "the keys are nested too deeply for a car file";

function wholeFile(message: string): { complaints: readonly Complaint[] } {
  return { complaints: [{ line: null, column: null, part: "", message }] };
}

/** The first character that no text file holds: a control character (YAML 1.2.2, 5.1), or what broken bytes turn into. */
function binaryAt(text: string): number {
  return text.search(/[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ufffd\ufffe\uffff]/);
}

function restOfLine(text: string, at: number): string {
  return safe(/^.*/.exec(text.slice(at))?.[0].trim() ?? "");
}

function lastLine(text: string): string {
  const end = text.trimEnd();
  return restOfLine(end, end.lastIndexOf("\n") + 1);
}

function parsed(text: string): Tree | { complaints: readonly Complaint[] } {
  const lines = new LineCounter();
  const place = (offset: number) => {
    const { line, col } = lines.linePos(offset);
    const marked = line === 1 && text.charCodeAt(0) === 0xfeff;
    return { line: Math.max(line, 1), column: Math.max(marked ? col - 1 : col, 1) };
  };
  const document = parseDocument(text, {
    lineCounter: lines,
    version: "1.2",
    schema: "core",
    merge: false,
    stringKeys: true,
    // Keys that stand twice are found while gathering: here each is compared with all before it, for half a minute in a long file.
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: "error",
  });
  const fault = document.errors[0] ?? document.warnings[0];
  if (fault?.code === "RESOURCE_EXHAUSTION") return wholeFile(tooDeep);
  if (fault !== undefined) {
    const reason = words[fault.code] ?? `it cannot be read as YAML: ${safe(fault.message)}`;
    // What is missing at the end is missing after the last thing that stands there, not on a line that does not exist.
    const end = text.trimEnd().length;
    const isEnd = fault.pos[0] >= end;
    const at = isEnd ? Math.max(0, end - 1) : fault.pos[0];
    const found = isEnd
      ? `the file ends with "${lastLine(text)}"`
      : `found "${restOfLine(text, at) || lastLine(text.slice(0, at))}"`;
    return { complaints: [{ ...place(at), part: "", message: `${reason}; ${found}` }] };
  }
  if (document.directives.yaml.version !== "1.2")
    return {
      complaints: [{ ...place(0), part: "", message: "car files are written in YAML 1.2: leave out the %YAML line" }],
    };
  const root = document.contents;
  if (root === null) return wholeFile("the file holds nothing but comments; a car file begins with title: and units:");
  if (!isMap(root))
    return wholeFile("this is not a car file: it should be keys and values, such as units: in and wheelbase: 68");
  const gathered = gather(root, document);
  if (gathered === "too deep") return wholeFile(tooDeep);
  if (gathered === "too many parts")
    return wholeFile("the file has too many parts, or refers to its own parts (&name, *name) too many times over");
  if ("twice" in gathered) {
    const at = gathered.twice.range?.[0] ?? 0;
    return { complaints: [{ ...place(at), part: "", message: `${twice}; found "${restOfLine(text, at)}"` }] };
  }
  if ("unnamed" in gathered) {
    const { source, range } = gathered.unnamed;
    const message = `*${safe(source)} refers to a part that is not named (&${safe(source)}) before it`;
    return { complaints: [{ ...place(range?.[0] ?? 0), part: "", message }] };
  }
  return { text, root, document, place, ...gathered };
}

/** The last text that was read: an edit reads it again, and the text after an edit is read twice. */
let last: { readonly text: string; readonly result: Tree | { complaints: readonly Complaint[] } } | null = null;

/** The text of a car file as YAML, or what keeps it from being that. Never throws, whatever the text. */
export function readYaml(text: string): Tree | { complaints: readonly Complaint[] } {
  if (last?.text !== text) last = { text, result: read(text) };
  return last.result;
}

function read(text: string): Tree | { complaints: readonly Complaint[] } {
  if (text.length > largestText)
    return wholeFile(`the file is too large for a car: more than ${largestText / 1024} KiB`);
  if (text.trim() === "") return wholeFile("the file is empty; a car file begins with title: and units:");
  const binary = binaryAt(text);
  if (binary >= 0) {
    const before = text.slice(0, binary).split("\n");
    const column = (before.at(-1)?.length ?? 0) + 1;
    const message = "this is not a text file: it holds a character that no car file has";
    return { complaints: [{ line: before.length, column, part: "", message }] };
  }
  try {
    return parsed(text);
  } catch (error) {
    if (error instanceof RangeError) return wholeFile(tooDeep);
    return wholeFile("the file cannot be read as YAML");
  }
}
