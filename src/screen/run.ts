import { loadText } from "../files/load.ts";
import { presetNames } from "../files/presets.ts";
import { printable } from "../output/printable.ts";
import { prepareEnvironment } from "../terminal/environment.ts";
import { kindOf } from "../vehicle/file-kind.ts";
import { openCar, type Unopened } from "./files.ts";
import { openForm, prepareSurvey } from "./lateSurvey.ts";
import type { SheetSource, Source } from "./model.ts";
import type { Surroundings } from "./surroundings.ts";
import type { KeptSheet, Message } from "./turn.ts";

/** What the command line asks of the screen. */
export interface Asked {
  /** A car file to open, or a sheet of readings between points, which its form is opened on. */
  readonly file?: string;
  /** The name of an example to open as a new car, when there is no file. */
  readonly preset?: string;
  /** The name of an example of a sheet to open the form on. */
  readonly sheet?: string;
  /** Draw with plain ASCII only. */
  readonly ascii?: boolean;
  /** Talk in lines instead of drawing. */
  readonly plain?: boolean;
}

/** Columns of a window that does not say how wide it is. */
const usualColumns = 80;

/** A bad file: the exit code of the command line for it. */
const badFile = 2;

/**
 * Runs the screen until the builder leaves it, and gives the exit code: 0 when it was left, 2 when the file can't be
 * opened, 128 + n after a signal. The terminal is left as it was found whatever happens.
 */
export async function runScreen(asked: Asked, around: Surroundings): Promise<number> {
  // Node keeps what it is told here. Names are of this folder then, also once it has gone.
  process.cwd();
  const capabilities = prepareEnvironment(around.env, asked, around);
  const sheet = await sheetOf(asked);
  if (sheet !== null && "complaints" in sheet) return refused(sheet, around);
  const opened = await openCar(sheet === null ? sourceOf(asked) : anExample(), around.env);
  if ("complaints" in opened) return refused(opened, around);
  const first = sheet === null ? null : await openedSheet(sheet, around.env);
  if (capabilities.plain || !capabilities.interactive) {
    const { runPlain } = await import("./plain/run.ts");
    return runPlain(opened, around, capabilities, first);
  }
  const { runLive } = await import("./live.tsx");
  return runLive(opened, around, capabilities, first);
}

/** That a sheet was opened, beside the one that the form held before. */
function openedSheet(opened: KeptSheet, env: NodeJS.ProcessEnv): Promise<Message> {
  return new Promise((resolve) => openForm().keptSheet(env, (kept) => resolve({ is: "sheetOpened", opened, kept })));
}

function sourceOf({ file, preset = "" }: Asked): Source {
  return file === undefined ? { from: "preset", id: preset } : { from: "file", path: file };
}

/** What stands on the bench behind a form until a car is made in it. */
function anExample(): Source {
  const [first = ""] = presetNames();
  return { from: "preset", id: first };
}

async function refused({ complaints }: Unopened, { stdout, stderr }: Surroundings): Promise<number> {
  const { wrapped } = await import("./view/wrap.ts");
  const width = stdout.columns || usualColumns;
  stderr.write(`${complaints.flatMap((each) => wrapped(printable(each), width)).join("\n")}\n`);
  return badFile;
}

/** The sheet of readings between points that is to be opened; null where it is a car. */
async function sheetOf({ file, sheet }: Asked): Promise<KeptSheet | Unopened | null> {
  if (sheet !== undefined) return await theSheet({ from: "example", name: sheet });
  if (file === undefined) return null;
  const loaded = loadText(file);
  const isSheet = "text" in loaded && kindOf(loaded.text) === "survey";
  return isSheet ? await theSheet({ from: "file", path: file }) : null;
}

async function theSheet(source: SheetSource): Promise<KeptSheet | Unopened> {
  await prepareSurvey();
  return openForm().openSheet(source);
}
