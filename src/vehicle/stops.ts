import type { Quantity, Role } from "./quantity.ts";
import { degree, type Groups, type Value } from "./value.ts";

/** A wheel's turn at which something other than the rack's end holds it: what, the words for it, and who may set it. */
const wheelStops: readonly (readonly [key: string, label: string, words: string, roles: readonly Role[]])[] = [
  ["upright", "Upright stop", "the upright meets its stop on the arm or the axle", ["find"]],
  ["tyre-rub", "Tyre rub", "the tyre first touches the frame, an arm or a rod", []],
];

/** The turn of a wheel, as the inner or the outer wheel of a turn, at which that happens. */
function turnValues(): readonly Value[] {
  return wheelStops.flatMap(([key, label, words, roles]) =>
    (["inner", "outer"] as const).map(
      (role): Value => ({
        path: ["stops", key, role],
        kind: "angle",
        label: `${label}, ${role} wheel`,
        help: `How far the left and the right wheel, as the ${role} wheel of a turn, have turned from straight when ${words}, degrees; one number means the same for both. Left out, there is none.`,
        low: 0,
        high: 80 * degree,
        absent: 0,
        roles,
        eachWay: true,
      }),
    ),
  );
}

/** A stop at less of a turn than this is none that is built, and at 0 the file says that there is none. */
export const leastTurn = 1 * degree;

/** Whether a quantity is the turn at which a stop holds a wheel, whose 0 means that there is no such stop. */
export function isTurnStop({ pair, kind }: Pick<Quantity, "pair" | "kind">): boolean {
  return kind === "angle" && pair.startsWith("stops.");
}

/** What keeps the steering from its own ends, below the root of the file; a file may leave all of it out. */
export const stopValues: readonly Value[] = [
  {
    path: ["stops", "collar"],
    kind: "length",
    label: "Rack collar",
    help: "How much of the rack's travel a collar takes away, at its end to the driver's left and to his right; one number means the same each way. Left out, there is none.",
    low: 0,
    high: 1000,
    absent: 0,
    roles: ["find"],
    eachWay: true,
  },
  ...turnValues(),
];

/** What the mappings of the section are for. */
export const stopGroups: Groups = {
  stops: "What stops the steering short of its own ends: collars, stops on the uprights, tyres that rub.",
  "stops.upright": "Stops on the uprights, by how far the wheel has turned from straight.",
  "stops.tyre-rub": "Where a tyre rubs, by how far the wheel has turned from straight.",
};
