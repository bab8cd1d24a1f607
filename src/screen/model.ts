import type { Refused, Study } from "../measures/study.ts";
import type { CheckReport } from "../solve/check/report.ts";
import type { MatchShown } from "../solve/match/shown.ts";
import type { SettledSheet, UnsettledSheet } from "../solve/survey/settled.ts";
import type { Car, LengthUnit, Wheel } from "../vehicle/car.ts";
import type { LabelName } from "../vehicle/labels.ts";
import type { Room } from "../vehicle/sections/find.ts";
import type { GoalName, Level } from "../vehicle/sections/goals.ts";
import type { LengthStyle } from "../vehicle/units/format.ts";
import type { AmountName, TypedAmounts } from "./amounts.ts";

/** Which wheels a key acts on. */
export type Sides = "both" | Wheel;

/** Where the builder has put the steering and the wheels. */
export interface Place {
  /** Rack, mm from mid-travel, or column, rad from its middle; positive to the driver's left. */
  readonly input: number;
  /** Wheel travels, mm from ride height. */
  readonly left: number;
  readonly right: number;
}

/** One change of the car: the text it made obsolete, or made anew, and what it did, in a builder's words. */
export interface Edit {
  readonly text: string;
  readonly what: string;
}

/** The car on the bench, and what is known of it. */
export interface Bench {
  readonly car: Car;
  readonly study: Study | Refused;
  /** The study before the last change, for showing what the change did; null when there was none, or it was refused. */
  readonly before: Study | null;
  /** Newest last. */
  readonly undo: readonly Edit[];
  readonly redo: readonly Edit[];
}

/** What to open: a car file, or a preset as a new car. */
export type Source =
  | { readonly from: "file"; readonly path: string }
  | { readonly from: "preset"; readonly id: string };

/** Where the car on the bench stands on disk. */
export interface Origin {
  /** The file that a save writes; null for a new, unnamed car. */
  readonly path: string | null;
  /** What the car was opened from, for its journal. */
  readonly source: Source;
  /** Its text when it was opened or last saved: anything else is unsaved. */
  readonly saved: string;
  /** The fingerprint of the file as it was then read or written; null for a new car. */
  readonly hash: string | null;
}

/** Where a sheet of readings between points can be opened from. */
export type SheetSource =
  | { readonly from: "file"; readonly path: string }
  | { readonly from: "example"; readonly name: string };

/** A car that can be opened, or a sheet of readings that makes one. */
export type Choice = {
  readonly name: string;
  /** One line: a preset's title, or where the file is. */
  readonly about: string;
} & ({ readonly source: Source } | { readonly sheet: SheetSource });

/** Edits that were not saved, found when the car was opened. */
export interface Offer {
  /** Where they are kept until the question is settled. */
  readonly path: string;
  /** The car's texts that they make one after the other. */
  readonly steps: readonly Edit[];
  /** What they are, in words: how many, how old, the last of them. */
  readonly what: string;
  /** True when the car's file changed since they were made. */
  readonly stale: boolean;
  /** The text that they were made on, where they cannot be made again on what the file now holds; else null. */
  readonly base: string | null;
}

/** What is still to be done once a question is settled. */
export type Next = { readonly do: "quit" } | { readonly do: "open"; readonly source: Source };

/** A question that holds everything else up; keys.ts lists the answers to each. */
export type Question =
  | { readonly about: "unsaved"; readonly next: Next }
  | {
      readonly about: "exists" | "changed";
      readonly path: string;
      readonly found: string | null;
      readonly next: Next | null;
    }
  /** Which of the offers is asked about; the others wait. */
  | { readonly about: "recover"; readonly offers: readonly Offer[]; readonly at: number };

/** What a line of text is asked for: the car's notes, one of its labels or a value of an optional section, the name of a trial or the file that one is written to, or by how much an adjuster is tried. */
export type Asked =
  | { readonly about: "notes" | "trial" }
  | { readonly about: "label"; readonly label: LabelName }
  /** A value of an optional section, by its path in the file; in words with what it is now, and what may stand there. */
  | { readonly about: "section"; readonly path: readonly string[]; readonly words: string; readonly hint: string }
  | { readonly about: "trialFile"; readonly trial: number }
  /** By how much is tried what the page of that view shows. */
  | { readonly about: "amount"; readonly amount: AmountName; readonly view: string };

/** A car that others are compared with. */
export interface Trial {
  readonly name: string;
  readonly car: Car;
  readonly study: Study | Refused;
}

/** Long work that a view has asked for, as far as it has come. */
export interface Work {
  /** What was asked for: work of another key is not this. */
  readonly key: string;
  /** From 0 to 1. */
  readonly progress: number;
  readonly state: "running" | "done" | "stopped";
  /** The best that is known so far; null before anything is. Its kind is the view's own. */
  readonly result: unknown;
}

/** The checks of a car over its whole range. */
export interface Checked {
  /** The text of the car that they are of: of any other text they are out of date. */
  readonly text: string;
  readonly report: CheckReport;
}

/** A step of saying what a search aims at or what it may move; `was`: what is changed by it, null for what is new. */
export type AimStep =
  /** Which figure, or which part. */
  | { readonly step: "goal" | "room" }
  /** Its value or band, then how much it counts; `typed` is what was typed for the value. */
  | { readonly step: "aim"; readonly name: GoalName; readonly was: Level | null }
  | { readonly step: "level"; readonly name: GoalName; readonly was: Level | null; readonly typed: string }
  /** The room of a part, then which sides of it move. */
  | { readonly step: "within"; readonly pair: string; readonly was: Room | null }
  | { readonly step: "sides"; readonly pair: string; readonly was: Room | null; readonly typed: string }
  /** The step that moves are whole numbers of. */
  | { readonly step: "size" };

/** How the field of a form stands: as it was come to, being typed in, or stopped at by a first Esc. */
export type Typing = "standing" | "typed" | "stopped";

/** What the field of a form holds, how it stands, and what is wrong with it. */
interface InField {
  readonly text: string;
  readonly typing: Typing;
  readonly complaint: string | null;
}

/** What has the keyboard: the bench itself, or something in front of it. */
export type Focus =
  | { readonly on: "bench" }
  /** `unlike` once it was said that one value would go over two that differ. */
  | { readonly on: "entry"; readonly text: string; readonly unlike?: true }
  | { readonly on: "saveAs"; readonly text: string; readonly next: Next | null; readonly complaint: string | null }
  | { readonly on: "line"; readonly asks: Asked; readonly text: string; readonly complaint: string | null }
  | { readonly on: "question"; readonly question: Question }
  /** Another car is being read: what would be changed meanwhile would be lost. */
  /** `saved`: the file that the car before was saved to on the way, which is said once the other one is open. */
  | { readonly on: "opening"; readonly saved: string | null }
  | { readonly on: "open"; readonly choices: readonly Choice[]; readonly cursor: number }
  /** The form for a new car from a tape; `text` is what its field holds. */
  | ({ readonly on: "tape"; readonly cursor: number } & InField)
  /** The form for readings between points. */
  | ({ readonly on: "survey"; readonly cursor: number } & InField)
  /** What they come to, every point with its uncertainty; `back` is where the form's cursor stands. */
  | { readonly on: "points"; readonly top: number; readonly back: number }
  /** The form for readings on the built car, beside what the car on the bench gives. */
  | ({ readonly on: "gauges"; readonly cursor: number } & InField)
  /** What the match to them says; `back` is where the form's cursor stands. */
  | { readonly on: "matched"; readonly top: number; readonly back: number }
  /** The form for an upright as a part on the bench; what was typed is by field. */
  | ({ readonly on: "upright"; readonly cursor: number; readonly answers: Answers } & InField)
  /** The list of what is looked for and what may move. */
  | { readonly on: "aims"; readonly cursor: number }
  /** Something of it is asked for; `cursor` is in the choices that are offered, `back` where the list's cursor stands. */
  | {
      readonly on: "aim";
      readonly asks: AimStep;
      readonly cursor: number;
      readonly text: string;
      readonly complaint: string | null;
      readonly back: number;
    }
  | { readonly on: "parts"; readonly cursor: number }
  | { readonly on: "starting"; readonly cursor: number }
  | { readonly on: "help"; readonly top: number };

/** How lengths are shown; it changes nothing in the file. */
export interface Display {
  readonly unit: LengthUnit;
  /** How inches are shown. */
  readonly inches: LengthStyle & { readonly unit: "in" };
  /** Which of the steps of each unit a change takes. */
  readonly step: number;
}

/** Where the cursor of a view stands, and which of its pages is seen. What a row and a column are is the view's own. */
export interface Spot {
  readonly row: number;
  readonly column: number;
  readonly page: number;
}

/** Readings with a tape as they were typed, by their field. */
export type Answers = Readonly<Record<string, string>>;

/** Readings on the built car, as the form has them. */
export interface GaugesOnBench {
  /** By the key of their row; beside them what the file of readings says besides, and its name. */
  readonly answers: Answers;
  /** What the match came to, and what it was made of: of any other readings or car it is old. */
  readonly matched: { readonly key: string; readonly shown: MatchShown } | null;
  /** Those that were thrown away for these. */
  readonly before: Answers | null;
}

/** A sheet of readings between points, as the form has it. */
export interface SheetOnBench {
  /** The sheet itself: what is typed into a field goes into its line. */
  readonly text: string;
  /** The names of the files that it and its car are to be written to, as they were typed. */
  readonly file: string;
  readonly car: string;
  /** The file that it was read from or written to, and the fingerprint of what stands there; null where there is none. */
  readonly known: { readonly path: string; readonly hash: string } | null;
  /** What a text of it came to: of any other text that is old. Null before anything is known. */
  readonly settled: { readonly text: string; readonly outcome: SettledSheet | UnsettledSheet } | null;
  /** The sheet that was thrown away for this one. */
  readonly before: SheetOnBench | null;
}

/** How far the guide has come: its step, or asked for while its car is not opened yet; null while it is off. */
export type Guide = number | "asked" | null;

/** Everything the screen shows, as plain data. Views read it; update makes the next one. */
export interface Model {
  readonly bench: Bench;
  readonly origin: Origin;
  /** The pair of quantities that is selected in the list of things to adjust. */
  readonly selected: string;
  /** The sides that a change acts on. */
  readonly sides: Sides;
  readonly place: Place;
  /** The wheels that go up and down. */
  readonly moving: Sides;
  readonly display: Display;
  /** The car that every number shows its change from; null where that is the car before the last change. */
  readonly pin: Trial | null;
  /** Named by the builder, oldest first; they last as long as the screen does. */
  readonly trials: readonly Trial[];
  /** The readings of a new car that is begun from a tape; null until the form is first seen. */
  readonly tape: Answers | null;
  /** The readings between points; null until the form for them is first seen. */
  readonly sheet: SheetOnBench | null;
  /** The readings on the built car; null until the form for them is first seen. */
  readonly gauges: GaugesOnBench | null;
  readonly guide: Guide;
  /** The long work of the view that is seen; null where none was asked for. */
  readonly work: Work | null;
  /** The last checks that were finished; null before the first. */
  readonly check: Checked | null;
  /** The view below the five numbers, by its name in the list of views. */
  readonly view: string;
  /** The spot of each view that has been moved about in, by its name. */
  readonly spots: Readonly<Record<string, Spot>>;
  /** By how much adjusters and wider front ends are tried, where it was typed. */
  readonly amounts: TypedAmounts;
  readonly focus: Focus;
  /** The last thing worth saying; gone with the next key. */
  readonly notice: Notice | null;
  readonly columns: number;
  readonly rows: number;
}

export interface Notice {
  readonly text: string;
  readonly tone: "done" | "wrong" | "change";
}
