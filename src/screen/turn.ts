import type { Job } from "../solve/job.ts";
import type { Car } from "../vehicle/car.ts";
import type {
  Answers,
  Checked,
  Choice,
  Model,
  Next,
  Offer,
  SheetOnBench,
  SheetSource,
  Sides,
  Source,
} from "./model.ts";

/** A sheet of readings between points as it is kept, or as it was read. */
export type KeptSheet = Pick<SheetOnBench, "text" | "file" | "car" | "known"> & {
  /** Whether nothing is lost without it: it stands in its file as it is, or nothing is read on it. */
  readonly isSafe: boolean;
};

/** A car that has been read, with what else was found of it. */
export interface Opened {
  readonly source: Source;
  readonly car: Car;
  /** The fingerprint of its file; null for an example, which opens as a new car. */
  readonly hash: string | null;
  /** Unsaved changes of it that earlier runs left, the newest first. */
  readonly offers: readonly Offer[];
  /** Something that the builder should know of it, in a sentence. */
  readonly remark: string | null;
}

/** Something to be done outside of the model; its outcome comes back as a message. */
export type Effect =
  /**
   * Keep the car as it now is as an unsaved change on disk, before the frame that shows it. Once it is kept, changes that
   * were found and are part of it need to be kept no more.
   */
  | { readonly do: "journal"; readonly what: string; readonly settles: Offer | null }
  /** The unsaved changes of the car on the bench are given up. */
  | { readonly do: "forget" }
  /** Unsaved changes that were found are settled, one way or the other. */
  | { readonly do: "discard"; readonly offer: Offer }
  /** Write the car, if the file still has the fingerprint that is known of it; null for a file that is not there yet. */
  | { readonly do: "save"; readonly path: string; readonly known: string | null; readonly next: Next | null }
  /** Write another car than that on the bench to a file that is not there yet. */
  | { readonly do: "write"; readonly path: string; readonly text: string }
  | { readonly do: "open"; readonly source: Source }
  /** Ask for the readings of a new car that were kept; null where there are none. */
  | { readonly do: "readings" }
  /** Keep them on disk, when they are a car too: one of them may turn out wrong. Null throws them away. */
  | { readonly do: "keepReadings"; readonly answers: Answers | null }
  /** Ask for the sheet of readings between points that was kept. */
  | { readonly do: "keptSheet" }
  /** Tell how many readings are on that sheet, without the form for it. */
  | { readonly do: "countSheet" }
  /** Keep it on disk with the names of its files. Null throws it away. */
  | { readonly do: "keepSheet"; readonly sheet: SheetOnBench | null }
  /** Read a sheet from a file, or an example of one. */
  | { readonly do: "openSheet"; readonly source: SheetSource }
  /** Write a sheet, where the file still has the fingerprint that is known of it; null for one that is not there yet. */
  | { readonly do: "writeSheet"; readonly path: string; readonly text: string; readonly known: string | null }
  /** Ask for the readings on the built car that were kept. */
  | { readonly do: "keptGauges" }
  /** Keep them on disk. Null throws them away. */
  | { readonly do: "keepGauges"; readonly answers: Answers | null }
  /** Read a file of readings on a built car, or an example of one. */
  | { readonly do: "openGauges"; readonly name: string }
  /** Write them to a file that is not there yet. */
  | { readonly do: "writeGauges"; readonly path: string; readonly text: string }
  /** Bring a sheet's readings together, in the place of any other. */
  | { readonly do: "settle"; readonly text: string }
  /** Tell whether a file has the name that a new car is to have. */
  | { readonly do: "lookFor"; readonly path: string }
  /** Write a car that was made from them to a file that is not there yet. */
  | { readonly do: "begin"; readonly path: string; readonly text: string }
  /** Do long work in pieces between keys, in the place of any that is being done. */
  | { readonly do: "work"; readonly key: string; readonly job: Job<unknown> }
  | { readonly do: "halt" }
  | { readonly do: "list" }
  | { readonly do: "quit" }
  /** Leave at once; unsaved changes stay where they are kept, and are offered when the car is opened next. */
  | { readonly do: "leave" };

/** Something that happened: a key, or the outcome of an effect. */
export type Message =
  | { readonly is: "key"; readonly chord: string }
  /** A line of the list of things to adjust was named, with the sides that are meant. */
  | { readonly is: "selected"; readonly pair: string; readonly sides: Sides }
  /** The text in the field changed. */
  | { readonly is: "typed"; readonly text: string }
  | { readonly is: "resized"; readonly columns: number; readonly rows: number }
  | { readonly is: "saved"; readonly path: string; readonly hash: string; readonly next: Next | null }
  /** How far long work has come. */
  | {
      readonly is: "worked";
      readonly key: string;
      readonly progress: number;
      readonly done: boolean;
      readonly result: unknown;
    }
  /** The checks of a car with that text are finished. */
  | { readonly is: "checked"; readonly checked: Checked }
  /** Another car than that on the bench was written. */
  | { readonly is: "written"; readonly path: string }
  /** Nothing was written, since the file is not as it was known. */
  | {
      readonly is: "doubted";
      readonly about: "exists" | "changed";
      readonly path: string;
      readonly found: string | null;
      readonly next: Next | null;
    }
  /** Something could not be done, in a sentence. */
  | { readonly is: "failed"; readonly words: string }
  | { readonly is: "readings"; readonly kept: Answers | null }
  | { readonly is: "keptSheet"; readonly kept: KeptSheet | null }
  /** How many readings are on the sheet that was kept. */
  | { readonly is: "sheetCounted"; readonly count: number }
  /** A sheet was read; `kept` is the one that the form held before. */
  | { readonly is: "sheetOpened"; readonly opened: KeptSheet; readonly kept: KeptSheet | null }
  | { readonly is: "sheetWritten"; readonly path: string; readonly text: string; readonly hash: string }
  | { readonly is: "keptGauges"; readonly kept: Answers | null }
  /** A file of readings on a built car was read. */
  | { readonly is: "gaugesOpened"; readonly name: string; readonly text: string; readonly isExample: boolean }
  | { readonly is: "gaugesWritten"; readonly path: string }
  | { readonly is: "settled"; readonly answer: NonNullable<SheetOnBench["settled"]> }
  /** A file has the name that a new car was to have. */
  | { readonly is: "taken"; readonly path: string }
  /** The car from a tape is written. */
  | { readonly is: "begun"; readonly path: string }
  | { readonly is: "opened"; readonly opened: Opened }
  | { readonly is: "listed"; readonly choices: readonly Choice[] };

/** What one message makes of the model, and what is to be done. */
export interface Turn {
  readonly model: Model;
  readonly effects: readonly Effect[];
}

/** A turn: the model as it is now, and what is to be done. */
export function turn(model: Model, ...effects: Effect[]): Turn {
  return { model, effects };
}

/** What a key does to the model. */
export type Act = (model: Model, chord: string) => Turn;
