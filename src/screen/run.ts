import { printable } from "../output/printable.ts";
import { prepareEnvironment } from "../terminal/environment.ts";
import { openCar } from "./files.ts";
import type { Source } from "./model.ts";
import type { Surroundings } from "./surroundings.ts";

/** What the command line asks of the screen. */
export interface Asked {
  /** A car file to open. */
  readonly file?: string;
  /** The name of an example to open as a new car, when there is no file. */
  readonly preset?: string;
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
  const capabilities = prepareEnvironment(around.env, asked, around);
  const source: Source =
    asked.file === undefined ? { from: "preset", id: asked.preset ?? "" } : { from: "file", path: asked.file };
  const opened = await openCar(source, around.env);
  if ("complaints" in opened) {
    const { wrapped } = await import("./view/wrap.ts");
    const width = around.stdout.columns || usualColumns;
    around.stderr.write(`${opened.complaints.flatMap((each) => wrapped(printable(each), width)).join("\n")}\n`);
    return badFile;
  }
  if (capabilities.plain || !capabilities.interactive) {
    const { runPlain } = await import("./plain/run.ts");
    return runPlain(opened, around, capabilities);
  }
  const { runLive } = await import("./live.tsx");
  return runLive(opened, around, capabilities);
}
