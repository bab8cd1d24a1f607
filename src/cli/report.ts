import { type Command, Option } from "commander";
import { type Json, jsonText } from "../output/json.ts";
import { paperHtml } from "../output/paper/html.ts";
import { paperMarkdown } from "../output/paper/markdown.ts";
import type { Paper } from "../output/paper/paper.ts";
import { paperText } from "../output/paper/text.ts";
import { asciiLocale, printable, toAscii } from "../output/printable.ts";
import type { Length } from "../output/words.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { sayLength } from "../vehicle/units/format.ts";
import type { Desk } from "./desk.ts";
import { Ended, Exit } from "./exit.ts";

/** Options of every command that reports numbers. */
export interface ReportOptions {
  readonly units?: LengthUnit;
  readonly json?: boolean;
  readonly csv?: boolean;
  readonly ascii?: boolean;
}

/** Adds the options of a command that reports numbers; tables have CSV too. */
export function reporting(command: Command, forms: "table" | "whole"): Command {
  command
    .addOption(
      new Option("--units <unit>", "lengths in inches or millimetres (default: the file's)").choices(["in", "mm"]),
    )
    .addOption(jsonOption());
  if (forms === "table") command.addOption(new Option("--csv", "print rows for a spreadsheet").conflicts("json"));
  return command.addOption(asciiOption());
}

/** Options of a command whose report is a paper, to be printed or handed on. */
export interface PaperOptions extends ReportOptions {
  readonly markdown?: boolean;
  readonly html?: boolean;
  readonly pdf?: boolean;
}

/** Adds the options of a command whose report is a paper. */
export function papering(command: Command): Command {
  return reporting(command, "whole")
    .addOption(new Option("--markdown", "print Markdown").conflicts(["json", "html", "pdf"]))
    .addOption(
      new Option("--html", "print one HTML file that needs no other, for A4 or Letter").conflicts(["json", "pdf"]),
    )
    .addOption(
      new Option("--pdf", "print a PDF, on Letter where units are in and on A4 where they are mm").conflicts("json"),
    );
}

/** Prints a paper in the form that was asked for. */
export async function printPaper(
  desk: Desk,
  options: PaperOptions,
  unit: LengthUnit,
  forms: { readonly json: () => Json; readonly paper: () => Paper },
): Promise<void> {
  if (options.pdf) desk.print(await pdfOf(desk, unit, forms.paper()));
  else if (options.json) desk.print(jsonText(forms.json()));
  else if (options.html) desk.print(paperHtml(forms.paper()));
  else if (options.markdown) desk.print(readable(desk, options, paperMarkdown(forms.paper())));
  else desk.print(readable(desk, options, paperText(forms.paper())));
}

/** A PDF; its maker and its fonts are loaded only when one is asked for. */
async function pdfOf({ streams }: Desk, unit: LengthUnit, paper: Paper): Promise<Uint8Array> {
  if (streams.stdout.isTTY === true)
    throw new Ended(Exit.badInput, "a PDF is not for a terminal: put its name behind the command, such as > sheet.pdf");
  const { paperPdf } = await import("../output/paper/pdf.ts");
  return paperPdf(paper, unit === "in" ? "Letter" : "A4");
}

export function jsonOption(): Option {
  return new Option("--json", "print JSON for other programs, numbers not rounded");
}

export function asciiOption(): Option {
  return new Option("--ascii", "use plain ASCII characters only");
}

/** One report in the forms it can be had in. */
export interface Forms {
  readonly json: () => Json;
  readonly csv?: () => string;
  readonly text: () => readonly string[];
}

/** Prints a report in the form that was asked for. */
export function printReport(desk: Desk, options: ReportOptions, forms: Forms): void {
  if (options.json) desk.print(jsonText(forms.json()));
  else if (options.csv && forms.csv) desk.print(forms.csv());
  else desk.print(readable(desk, options, forms.text()));
}

/** Lines as text for a reader, in the characters he can see. */
export function readable(desk: Desk, options: { readonly ascii?: boolean }, lines: readonly string[]): string {
  const text = `${lines.map(printable).join("\n")}\n`;
  return options.ascii || asciiLocale(desk.streams.env) ? toAscii(text) : text;
}

/** Lengths in sentences: inches to the nearest 1/32, as a tape is read, or mm to a tenth. */
export function lengthsIn(unit: LengthUnit): Length {
  return (mm) => sayLength(mm, unit === "in" ? { unit, fraction: 32 } : { unit });
}
