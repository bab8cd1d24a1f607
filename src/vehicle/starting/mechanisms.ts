import type { MechanismName } from "../mechanisms.ts";
import { degree } from "../value.ts";
import type { Wheel } from "../words.ts";
import type { Eyes } from "./eyes.ts";
import { type At, between, pointStarts, type Start } from "./place.ts";

/** What a mechanism's starting values are made from. */
interface Given {
  readonly eyes: Eyes;
  /** Whether the eyes have to go to the right for the wheels to go left: tabs behind the steering axis. */
  readonly behind: boolean;
}

function eyePoints(section: string, { left, right }: Eyes): readonly Start[] {
  return [
    ...pointStarts(`left.${section}.eye`, left),
    ...pointStarts(`right.${section}.eye`, { ...right, side: -right.side }),
  ];
}

function travels(section: string, each: number): readonly Start[] {
  return [
    { id: `left.${section}.travel`, value: each },
    { id: `right.${section}.travel`, value: each },
  ];
}

/** Rack travel that a file may have, mm. */
const leastTravel = 10;

function rack({ eyes }: Given): readonly Start[] {
  const middle = between(eyes.left, eyes.right, 0.5);
  return [
    { id: "rack.ahead", value: middle.ahead },
    { id: "rack.up", value: middle.up },
    { id: "rack.eye-to-eye", value: Math.max(0, eyes.left.side - eyes.right.side) },
    { id: "rack.offset", value: middle.side },
    ...travels("rack", Math.max(leastTravel, eyes.travel)),
  ];
}

/**
 * Half of the distance between a plate's eyes at most, mm; how far it turns each way; the share of the eyes' travel that
 * its eyes are given, since rods from the middle are long and turn the wheels further; and the column's rake.
 */
const plateHalf = 30;
const plateSwing = 35 * degree;
const plateShare = 0.85;
const plateRake = 30 * degree;

/** Eyes close together under the column (over it with the tabs ahead), at an arm that gives them that share of their travel. */
function steeringPlate({ eyes, behind }: Given): readonly Start[] {
  const middle = between(eyes.left, eyes.right, 0.5);
  const half = Math.min(plateHalf, Math.max(plateHalf / 2, Math.abs(eyes.left.side - eyes.right.side) / 2));
  const arm = (Math.max(leastTravel, plateShare * eyes.travel) / Math.sin(plateSwing)) * (behind ? 1 : -1);
  const foot = {
    ahead: middle.ahead + arm * Math.sin(plateRake),
    side: middle.side,
    up: middle.up + arm * Math.cos(plateRake),
  };
  const at = (hand: number): At => ({ ...middle, side: middle.side + hand * half });
  return [
    ...pointStarts("steering-plate", foot, "offset"),
    { id: "steering-plate.rake", value: plateRake },
    ...eyePoints("steering-plate", { ...eyes, left: at(1), right: at(-1) }),
    ...travels("steering-plate", plateSwing),
  ];
}

/** How far a pitman arm swings each way, and how many turns of the steering wheel turn it once. */
const pitmanSwing = 30 * degree;
const boxRatio = 16;

/** Two arms alike, behind their shafts (ahead of them with the tabs ahead), so that the link stays level. */
function relay({ eyes, behind }: Given): readonly Start[] {
  const middle = between(eyes.left, eyes.right, 0.5);
  const half = Math.max(150, 0.35 * Math.abs(eyes.left.side - eyes.right.side));
  const arm = (Math.max(leastTravel, eyes.travel) / Math.sin(pitmanSwing)) * (behind ? 1 : -1);
  const armStarts = (name: string, hand: number): readonly Start[] => {
    const joint = { ...middle, side: middle.side + hand * half };
    return [
      ...pointStarts(`relay.${name}.pivot`, { ...joint, ahead: joint.ahead + arm }, "offset"),
      ...pointStarts(`relay.${name}.joint`, joint, "offset"),
    ];
  };
  return [
    ...armStarts("pitman", 1),
    ...armStarts("idler", -1),
    ...eyePoints("relay", eyes),
    { id: "relay.ratio", value: boxRatio },
    ...travels("relay", boxRatio * pitmanSwing),
  ];
}

/** Of each mechanism, all that its numbers would be for given eyes. */
const STARTS: { readonly [Name in MechanismName]: (given: Given) => readonly Start[] } = {
  rack,
  "centre-rack": ({ eyes }) => [...eyePoints("rack", eyes), ...travels("rack", Math.max(leastTravel, eyes.travel))],
  "steering-plate": steeringPlate,
  relay,
};

/** What a mechanism's numbers could be on a car whose tie rods start at those eyes now. */
export function mechanismStarts(to: MechanismName, given: Given): readonly Start[] {
  return STARTS[to](given);
}

/** Where the tie rod's inner joint will be on one wheel, in the corner's own frame: among a mechanism's starts, else as it is. */
export function eyeAmong(starts: readonly Start[], eyes: Eyes, wheel: Wheel): At {
  const [ahead, side, up] = ["ahead", "out", "up"].map(
    (key) => starts.find(({ id }) => id.startsWith(`${wheel}.`) && id.endsWith(`.eye.${key}`))?.value,
  );
  if (ahead !== undefined && side !== undefined && up !== undefined) return { ahead, side, up };
  return wheel === "left" ? eyes.left : { ...eyes.right, side: -eyes.right.side };
}
