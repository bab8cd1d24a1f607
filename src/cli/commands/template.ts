import { basename } from "node:path";
import { Command, InvalidArgumentError, Option } from "commander";
import { type NewDocument, writeDocuments } from "../../files/documents.ts";
import { beforeCutting } from "../../output/beforeCutting.ts";
import type { PaperSize } from "../../output/paper/pdfDocument.ts";
import { printable } from "../../output/printable.ts";
import { writingIn } from "../../output/sheet/writing.ts";
import type { Drawing } from "../../output/template/flat.ts";
import { templatesJson, templatesText, type Written } from "../../output/template/listing.ts";
import { type Kind, kinds, templatesOf } from "../../output/template/templates.ts";
import { checkJob } from "../../solve/check/check.ts";
import { missedGoals } from "../../solve/goals/missed.ts";
import { finished } from "../../solve/job.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { printReport, type ReportOptions, reporting } from "../report.ts";

interface TemplateOptions extends ReportOptions {
  readonly draw?: readonly Kind[];
  readonly out?: string;
  readonly svg?: boolean;
  readonly dxf?: boolean;
  readonly pdf?: boolean;
  readonly paper?: PaperSize;
}

function kindsIn(text: string): readonly Kind[] {
  return text.split(",").map((each) => {
    const kind = kinds.find((one) => one === each.trim());
    if (kind === undefined)
      throw new InvalidArgumentError(`Found "${printable(each)}", expected some of ${kinds.join(", ")}.`);
    return kind;
  });
}

const sizes: readonly PaperSize[] = ["A4", "Letter"];

/** A size of paper, in whatever case it is typed. */
function paperIn(text: string): PaperSize {
  const size = sizes.find((each) => each.toLowerCase() === text.trim().toLowerCase());
  if (size === undefined) throw new InvalidArgumentError(`Found "${printable(text)}", expected ${sizes.join(" or ")}.`);
  return size;
}

/** Where drawings are written: nothing is no folder, and the one that one stands in has a name that says so. */
function folderIn(text: string): string {
  if (text.trim() === "")
    throw new InvalidArgumentError("Found no name, expected a folder, such as templates; . is this folder.");
  return text;
}

/** The files asked for; what draws each format is loaded only for it. */
async function documentsOf(
  title: string,
  drawings: readonly Drawing[],
  { svg, dxf, pdf }: TemplateOptions,
  paper: PaperSize,
): Promise<readonly NewDocument[]> {
  const documents: NewDocument[] = [];
  if (drawings.length > 0 && (pdf || !(svg || dxf))) {
    const { drawingsPdf } = await import("../../output/template/pdf.ts");
    documents.push({ name: "templates.pdf", data: await drawingsPdf(title, drawings, paper) });
  }
  if (svg) {
    const { drawingSvg } = await import("../../output/template/svg.ts");
    documents.push(...drawings.map((each) => ({ name: `${each.name}.svg`, data: drawingSvg(each) })));
  }
  if (dxf) {
    const { drawingDxf } = await import("../../output/template/dxf.ts");
    documents.push(...drawings.map((each) => ({ name: `${each.name}.dxf`, data: drawingDxf(each) })));
  }
  return documents;
}

/** `rackwright template FILE`: drawings at full size, to be stuck on plate or cut from. */
export function templateCommand(desk: Desk): Command {
  const command = new Command("template")
    .description(
      "Templates at full size: the tie rod's tab seen square to the steering axis, the uprights for the jig table, the rack's mounting plate and gauges for the arms' brackets. Lists them, and with --out writes them.",
    )
    .argument("<FILE>", "a car file, or a preset's name")
    .addOption(new Option("--draw <kinds>", "only some, with commas between").choices(kinds).argParser(kindsIn))
    .option(
      "--out <FOLDER>",
      "write them to this folder, as PDF unless --svg or --dxf is given; never over a file",
      folderIn,
    )
    .option("--pdf", "one PDF for all, over as many pages as they need, with crosses to join them")
    .option("--svg", "an SVG file for each")
    .option("--dxf", "a DXF file for each, in millimetres, on layers cut, mark and text")
    .addOption(
      new Option("--paper <size>", "pages of the PDF (default: Letter where units are in, A4 where they are mm)")
        .choices(sizes)
        .argParser(paperIn),
    );
  return reporting(command, "whole")
    .addHelpText(
      "after",
      examples(
        ["rackwright template car.yaml", "which drawings there are, and what some still need from the file"],
        ["rackwright template car.yaml --out templates", "all of them in templates/templates.pdf, for any printer"],
        ["rackwright template car.yaml --draw tab --dxf --out cut", "the tabs for a cutter"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<TemplateOptions>();
      const study = await openStudy(desk, file);
      const unit = options.units ?? study.car.form.units;
      const writing = writingIn(unit);
      const checks = finished(checkJob(study)) ?? { items: [] };
      const first = beforeCutting({ study, checks, missed: missedGoals(study) }, writing, null);
      const car = `${study.car.title} (${basename(file)})`;
      const templates = templatesOf(study, writing, options.draw, { car, before: first });
      let made: Written | null = null;
      if (options.out !== undefined) {
        const documents = await documentsOf(
          study.car.title,
          templates.drawings,
          options,
          options.paper ?? (unit === "in" ? "Letter" : "A4"),
        );
        if (documents.length === 0)
          throw new Ended(
            Exit.badInput,
            `nothing to write: ${templates.wanting.map(({ what, needs }) => `${what} needs ${needs}`).join("; ")}`,
          );
        const written = writeDocuments(options.out, documents);
        if ("complaint" in written) throw new Ended(Exit.badInput, `${printable(written.complaint)}.`);
        made = { folder: options.out, isNew: written.isNew, names: documents.map(({ name }) => name) };
      } else if (options.svg || options.dxf || options.pdf)
        throw new Ended(Exit.badInput, "where to? Name a folder with --out, such as --out templates.");
      printReport(desk, options, {
        json: () => templatesJson(templates, first, made),
        text: () => templatesText(study.car.title, templates, first, made, unit),
      });
    });
}
