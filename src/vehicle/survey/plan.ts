import { linkageOf } from "../linkages.ts";
import { axisEnds } from "../starting/steering-axis.ts";
import { diagonalsOf } from "./diagonals.ts";
import { pointsOf, type SurveyForm, type SurveyPoint } from "./points.ts";
import type { Kind } from "./readings.ts";

/** A reading to take, its points by their names. */
export interface ToTake {
  readonly kind: Kind;
  readonly names: readonly string[];
}

const wheels = ["left", "right"] as const;

/** Marks on the floor that the tape is held slantwise to, one a side. */
export const floorMarks: readonly SurveyPoint[] = wheels.map((wheel) => ({
  name: `${wheel} floor mark`,
  wheel,
  id: null,
  sideways: "offset",
  help: "A mark on the floor, on the axle line under the lower arm",
}));

type Pair = readonly [string, string];

/** Where a corner's parts are hung on the frame, by their paths below it. */
function hungOn({ linkage }: SurveyForm): readonly string[] {
  const places = linkageOf(linkage).bodies.flatMap(({ moves }) => {
    if (moves === "with the upright") return [];
    return "about" in moves ? moves.about : [moves.across];
  });
  return [...new Set(places)];
}

/**
 * The pairs of one corner's points that a tape is held between, by their paths below it: along each part, then around the
 * upright.
 */
function cornerPairs(form: SurveyForm): readonly Pair[] {
  const { bodies } = linkageOf(form.linkage);
  const ends = axisEnds[form.linkage];
  const [lower, upper] = ends;
  const along = bodies.flatMap(({ moves, tubes }) =>
    moves === "with the upright"
      ? []
      : [...("about" in moves ? [moves.about] : []), ...tubes.map(([a, b]): Pair => [b, a])],
  );
  const carried = bodies.flatMap(({ moves, tubes }) => (moves === "with the upright" ? tubes : []));
  // A part that no arm of its own holds, such as a strut's foot or a king pin's upper end, is held to what the frame has.
  const own = pointsOf(form).flatMap(({ name }) => (name.startsWith("left ") ? [name.slice("left ".length)] : []));
  const free = own.filter((path) => !along.flat().includes(path) && !/^(tie-rod|wheel)\.|^eye$/.test(path));
  const around: readonly Pair[] = [
    [lower, upper],
    ...free.flatMap((path) => hungOn(form).map((place) => [place, path] as const)),
    ...ends.flatMap((end) => [["tie-rod.outer", end] as const, ["wheel.center", end] as const]),
    ["tie-rod.outer", "wheel.center"],
  ];
  return [...along, ...carried, ...around].filter(([a, b]) => a !== b);
}

/** The pairs between the steering's own points, and from its eyes to the tabs and to what stands beside them. */
function steeringPairs(form: SurveyForm): readonly Pair[] {
  const beside = [hungOn(form)[1] ?? hungOn(form)[0] ?? axisEnds[form.linkage][0], axisEnds[form.linkage][1]];
  const rods = wheels.flatMap((wheel) => [
    [`${wheel} tie-rod.outer`, `${wheel} eye`] as const,
    ...beside.map((path) => [`${wheel} eye`, `${wheel} ${path}`] as const),
  ]);
  const eyes: Pair = ["left eye", "right eye"];
  if (form.mechanism === "relay")
    return [
      ...rods,
      ["pitman.pivot", "pitman.joint"],
      ["idler.pivot", "idler.joint"],
      ["pitman.pivot", "idler.pivot"],
      ["pitman.joint", "idler.joint"],
      ["pitman.joint", "left eye"],
      ["idler.joint", "right eye"],
      eyes,
    ];
  return form.mechanism === "steering-plate"
    ? [...rods, eyes, ["column", "left eye"], ["column", "right eye"]]
    : [...rods, eyes];
}

/** The same points of both sides, a tape held across the car. */
function acrossPairs(form: SurveyForm): readonly Pair[] {
  const paths = new Set([
    ...axisEnds[form.linkage],
    ...hungOn(form),
    ...(form.linkage === "strut" ? ["strut.bottom"] : []),
  ]);
  return [...paths].map((path) => [`left ${path}`, `right ${path}`]);
}

function withoutTwins(pairs: readonly Pair[]): readonly Pair[] {
  const key = (pair: Pair) => [...pair].sort().join("\0");
  return [...new Map(pairs.map((pair) => [key(pair), pair])).values()];
}

/**
 * The readings to take of a front end, in the order of a walk around it: heights off the floor, then the plumb marks' places
 * on it, then the tape from centre to centre, each side by itself and across. So many that each is checked by the others.
 */
export function planOf({ linkage, mechanism }: SurveyForm): readonly ToTake[] {
  const name = `${linkage} ${mechanism}`;
  const plan = plans.get(name) ?? made({ linkage, mechanism });
  plans.set(name, plan);
  return plan;
}

const plans = new Map<string, readonly ToTake[]>();

function made(form: SurveyForm): readonly ToTake[] {
  const names = pointsOf(form).map(({ name }) => name);
  const slants = names.flatMap((name) =>
    wheels
      .filter((wheel) => !name.startsWith(wheel === "left" ? "right " : "left "))
      .map((wheel): Pair => [name, `${wheel} floor mark`]),
  );
  const distances = withoutTwins([
    ...slants,
    ...wheels.flatMap((wheel) => cornerPairs(form).map(([a, b]): Pair => [`${wheel} ${a}`, `${wheel} ${b}`])),
    ...steeringPairs(form),
    ...acrossPairs(form),
    ...diagonalsOf(form),
  ]);
  return [
    ...(["height", "out", "ahead"] as const).flatMap((kind) =>
      [...floorMarks.map((mark) => mark.name), ...names].map((name) => ({ kind, names: [name] })),
    ),
    ...distances.map((pair) => ({ kind: "distance" as const, names: pair })),
  ];
}
