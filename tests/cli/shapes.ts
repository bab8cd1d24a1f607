import { z } from "zod";

// The shapes that other programs rely on, written out: no key more, no key less, and null where a number cannot be told.

const number = z.number();
const told = z.number().nullable();
const place = z.tuple([number, number, number]);

export const units = z.strictObject({ length: z.enum(["in", "mm"]), angle: z.literal("deg") });

const poseSide = z.strictObject({
  travel: number,
  steer: number,
  toe: number,
  camber: number,
  caster: number,
  kpi: number,
  scrubRadius: number,
  trail: number,
  tieRodLength: number,
  leverArm: number,
  transmissionAngle: number,
  points: z.strictObject({
    lowerJoint: place,
    upperJoint: place,
    tieRodOuter: place,
    tieRodInner: place,
    wheelCenter: place,
    contact: place,
  }),
});

/** Where the steering is: one of the two keys, by what the car has. */
const input = { rack: number.optional(), column: number.optional() };

export const poseShape = z.strictObject({ units, ...input, left: poseSide, right: poseSide });

const steerRow = z.strictObject({
  ...input,
  left: z.strictObject({ steer: told }),
  right: z.strictObject({ steer: told }),
  turn: z.enum(["left", "right"]).nullable(),
  inner: told,
  outer: told,
  idealInner: told,
  percentOfIdealInner: told,
  ackermann: told,
  turnRadius: told,
});

export const steerShape = z.strictObject({
  units,
  wheelbase: number,
  track: number,
  zero: told,
  rows: z.array(steerRow).min(1),
  locks: z.strictObject({
    left: steerRow.nullable(),
    right: steerRow.nullable(),
    difference: z.strictObject({ inner: told, outer: told, turnRadius: told }),
  }),
});

const bumpSide = z.strictObject({ toe: told, toeChange: told, camber: told, caster: told, trackChange: told });

export const bumpShape = z.strictObject({
  units,
  ...input,
  rows: z.array(z.strictObject({ travel: number, left: bumpSide, right: bumpSide, bounceSteer: told })).min(1),
  summary: z.strictObject({
    bumpSteer: z.strictObject({ left: told, right: told }),
    worstToeChange: told,
    worstBounceSteer: told,
  }),
});

export const summaryShape = z.strictObject({
  units,
  title: z.string(),
  job: z.string().nullable(),
  date: z.string().nullable(),
  asBuilt: z.string().nullable(),
  warnings: z.array(z.string()),
  steersBackwards: z.boolean().nullable(),
  rods: z.strictObject({ left: z.enum(["fit", "cut"]), right: z.enum(["fit", "cut"]) }),
  outOfReach: z
    .strictObject({ wheel: z.enum(["left", "right"]), link: z.string(), gap: number, travel: number, ...input })
    .nullable(),
  figures: z.record(z.string(), told),
});
