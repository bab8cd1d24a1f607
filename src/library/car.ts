import type { BumpTable } from "../measures/bumpTable.ts";
import { carFigures } from "../measures/carFigures.ts";
import type { Locks } from "../measures/locks.ts";
import type { Pair, Span } from "../measures/span.ts";
import type { SteerTable } from "../measures/steerTable.ts";
import { type Study, studyOf } from "../measures/study.ts";
import type { Worst } from "../measures/worst.ts";
import type { Complaint } from "../vehicle/complaint.ts";
import { readCar } from "../vehicle/read.ts";
import { complaintOn } from "../vehicle/sound.ts";
import { mayHoldProducts, prepareProducts } from "../vehicle/units/products.ts";
import type { LengthUnit } from "../vehicle/words.ts";
import { type Asked, type Figures, type Pose, poseAt } from "./pose.ts";

/** A text that is no car, or a car that does not go together: all that is wrong with it. */
export interface NoCar {
  readonly complaints: readonly Complaint[];
}

/** A car whose front end stands. Lengths mm, angles rad; inputs mm of rack or rad of column, positive to the left. */
export interface OpenCar {
  readonly title: string;
  /** What the file's bare lengths are in; nothing here is in them. */
  readonly units: LengthUnit;
  /** Doubtful but usable. */
  readonly warnings: readonly Complaint[];
  /** What is moved to steer. */
  readonly inputKind: "rack" | "column";
  /** How far the input goes from its middle to each side, to what stops it first; both positive. */
  readonly inputTravel: Pair<number>;
  /** Of the wheel centre from ride height, both positive; null without suspension. */
  readonly wheelTravel: { readonly bump: number; readonly droop: number } | null;
  /** The input at which the wheels are straight; null where there is none in reach. */
  readonly zero: number | null;
  /** Both ends of the steering. */
  readonly locks: Locks;
  /** The worst over the whole of the steering's and the wheels' travel. */
  readonly worst: Worst;
  /** Figures of the whole car, by their ids. */
  readonly figures: Figures;
  /** Lock to lock at ride height, in 21 rows unless a span of inputs is given. */
  readonly steerTable: (span?: Span) => SteerTable;
  /** Both wheels up and down together, full droop to full bump in 21 rows unless a span of travels is given; null without suspension. */
  readonly bumpTable: (input: number, span?: Span) => BumpTable | null;
  /** Both wheels at one place. */
  readonly pose: (asked?: Asked) => Pose;
}

/**
 * The car that the text of a car file describes, or what is wrong with it, each complaint with its place in the text.
 * Never rejects on a text, and reads nothing but it.
 */
export async function openCar(text: string): Promise<OpenCar | NoCar> {
  if (mayHoldProducts(text)) await prepareProducts();
  const car = readCar(text);
  if ("complaints" in car) return { complaints: car.complaints };
  const study = studyOf(car);
  return "refused" in study ? { complaints: [complaintOn(text, study.part, study.refused)] } : opened(study);
}

function opened(study: Study): OpenCar {
  const { car, inputKind, inputTravel, zero, steerTable, bumpTable } = study;
  return {
    title: car.title,
    units: car.form.units,
    warnings: car.warnings,
    inputKind,
    inputTravel,
    wheelTravel: study.suspended ? study.wheelTravel : null,
    zero,
    get locks() {
      return study.locks;
    },
    get worst() {
      return study.worst;
    },
    get figures() {
      return Object.fromEntries(carFigures.map(({ id, read }) => [id, read(study)]));
    },
    steerTable,
    bumpTable,
    pose: (asked = {}) => poseAt(study, asked),
  };
}
