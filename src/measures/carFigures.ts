import type { FigureWords } from "./figure.ts";
import type { SteerRow } from "./steerTable.ts";
import type { Study } from "./study.ts";
import { shortOfIdeal } from "./turning.ts";
import { overallWidth } from "./turningCircle.ts";

/** Read from a whole study: locks, worst values over the range, lengths to cut. */
export interface CarFigure extends FigureWords {
  readonly of: "car";
  readonly read: (study: Study) => number | null;
}

const SIDES = ["left", "right"] as const;

/** What is read at each lock: the end of its id, its words, and how. */
const AT_LOCK: readonly (FigureWords & { readonly read: (row: SteerRow) => number | null })[] = [
  {
    id: "Inner",
    kind: "angle",
    label: "inner wheel",
    sign: "toward the turn positive",
    explanation: "How far the inner wheel has turned at full lock. Buggies have 25° to 40°.",
    read: (row) => row.inner,
  },
  {
    id: "Outer",
    kind: "angle",
    label: "outer wheel",
    sign: "toward the turn positive",
    explanation: "How far the outer wheel has turned at full lock. It decides how tight the car turns.",
    read: (row) => row.outer,
  },
  {
    id: "InnerShortOfIdeal",
    kind: "angle",
    label: "inner short of ideal",
    sign: "too little turn positive",
    explanation: "How many degrees the inner wheel lacks at full lock of rolling without scrubbing.",
    read: shortOfIdeal,
  },
  {
    id: "PercentOfIdealInner",
    kind: "percent",
    label: "share of ideal inner turn",
    sign: "",
    explanation: "The inner wheel's turn at full lock as a share of what it should be: 100 % is no scrubbing.",
    read: (row) => row.percentOfIdealInner,
  },
  {
    id: "Ackermann",
    kind: "percent",
    label: "Ackermann",
    sign: "inner turning more than outer positive",
    explanation:
      "Of the difference that the wheels should have at full lock, how much they have: 0 % is parallel steer, 100 % no scrubbing.",
    read: (row) => row.ackermann,
  },
  {
    id: "TurnRadius",
    kind: "length",
    label: "turning radius",
    sign: "",
    explanation: "From the middle of the tightest circle to the outer front tyre's contact, rolling slowly.",
    read: (row) => row.turnRadius,
  },
];

const lockFigures: readonly CarFigure[] = SIDES.flatMap((side) =>
  AT_LOCK.map((figure): CarFigure => {
    const { read } = figure;
    return {
      ...figure,
      of: "car",
      id: `${side}Lock${figure.id}`,
      label: `${side === "left" ? "Left" : "Right"} lock, ${figure.label}`,
      read: (study) => {
        const row = study.locks[side];
        return row === null ? null : read(row);
      },
    };
  }),
);

const differenceFigures: readonly CarFigure[] = [
  {
    of: "car",
    id: "lockDifferenceInner",
    kind: "angle",
    label: "Inner locks, left less right",
    sign: "left lock larger positive",
    explanation:
      "How unequal the inner wheels' locks are. It comes mostly from steering that is not on its middle when the wheels are straight.",
    read: (study) => study.locks.difference.inner,
  },
  {
    of: "car",
    id: "lockDifferenceOuter",
    kind: "angle",
    label: "Outer locks, left less right",
    sign: "left lock larger positive",
    explanation: "How unequal the outer wheels' locks are: a cure for the inner ones may not be one for these.",
    read: (study) => study.locks.difference.outer,
  },
  {
    of: "car",
    id: "lockDifferenceTurnRadius",
    kind: "length",
    label: "Turning radius, left less right",
    sign: "left circle larger positive",
    explanation: "How much wider the car turns to the left than to the right.",
    read: (study) => study.locks.difference.turnRadius,
  },
];

const sideFigures: readonly CarFigure[] = SIDES.flatMap((side): readonly CarFigure[] => {
  const end = side === "left" ? "Left" : "Right";
  return [
    {
      of: "car",
      id: `rodLength${end}`,
      kind: "length",
      label: `${end} tie rod, eye to eye`,
      sign: "",
      explanation: "Length to cut this tie rod to, between the middles of its rod ends' balls; or as it was cut.",
      read: (study) => study.rodLengths[side],
    },
    {
      of: "car",
      id: `worstToe${end}`,
      kind: "angle",
      label: `${end} wheel, worst toe change`,
      sign: "toe-in positive",
      explanation: "The largest toe change of this wheel over its whole travel, wheels straight ahead.",
      read: (study) => study.worst.toe[side]?.toeChange ?? null,
    },
    {
      of: "car",
      id: `worstToeAcrossTyre${end}`,
      kind: "length",
      label: `${end} wheel, worst toe across the tyre`,
      sign: "toe-in positive",
      explanation:
        "The same as a tape shows it: how much further apart the tyre's back edge goes than its front edge. Judge bump steer by this.",
      read: (study) => study.worst.toe[side]?.acrossTyre ?? null,
    },
    {
      of: "car",
      id: `leastRodAngle${end}`,
      kind: "angle",
      label: `${end} tie rod, least rod-to-arm angle`,
      sign: "",
      explanation:
        "The least rod-to-arm angle over all steering and all travel: at 0° the rod is at its dead point. Under 30° is doubtful, under 20° dangerous.",
      read: (study) => study.worst.rodAngle[side]?.angle ?? null,
    },
  ];
});

/** Figures of the whole car. */
export const carFigures: readonly CarFigure[] = [
  ...lockFigures,
  ...differenceFigures,
  {
    of: "car",
    id: "zero",
    kind: "length",
    label: "Rack off its middle, straight ahead",
    sign: "to the left positive",
    explanation:
      "Where the rack stands when both wheels are straight. Off its middle it makes the locks unequal: about 3° for 1/16 in.",
    read: (study) => (study.inputKind === "rack" ? study.zero : null),
  },
  {
    of: "car",
    id: "zeroColumn",
    kind: "angle",
    label: "Column off its middle, straight ahead",
    sign: "turned left positive",
    explanation:
      "Where the steering column stands when both wheels are straight. Off its middle it makes the locks unequal.",
    read: (study) => (study.inputKind === "column" ? study.zero : null),
  },
  {
    of: "car",
    id: "worstBounceSteer",
    kind: "angle",
    label: "Worst bounce steer",
    sign: "to the left positive",
    explanation: "The furthest that both wheels steer the same way as both go up or down together, straight ahead.",
    read: (study) => study.worst.bounce?.bounceSteer ?? null,
  },
  ...sideFigures,
  {
    of: "car",
    id: "track",
    kind: "length",
    label: "Track",
    sign: "",
    explanation: "Between the middles of the two front tyres on the ground, as drawn.",
    read: (study) => study.track,
  },
  {
    of: "car",
    id: "overallWidth",
    kind: "length",
    label: "Overall width over the front tyres",
    sign: "",
    explanation:
      "From the outermost place of one front tyre to that of the other, as drawn: what has to fit a gate or a trailer.",
    read: overallWidth,
  },
  {
    of: "car",
    id: "kingPinSpacing",
    kind: "length",
    label: "King-pin spacing",
    sign: "",
    explanation:
      "Between the places where the two steering axes meet the ground. With the wheelbase it sets the ideal.",
    read: (study) => study.kingPinSpacing,
  },
];
