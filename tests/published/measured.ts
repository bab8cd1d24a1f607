import type { Front } from "../../src/kinematics/front.ts";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Link, Side } from "../../src/kinematics/slots.ts";
import { solve } from "../../src/kinematics/solve.ts";
import { camber } from "../../src/measures/camber.ts";
import { caster } from "../../src/measures/caster.ts";
import { contactY } from "../../src/measures/contact.ts";
import { kingPinInclination } from "../../src/measures/kingPinInclination.ts";
import { scrubRadius } from "../../src/measures/scrubRadius.ts";
import { toe } from "../../src/measures/toe.ts";
import { trail } from "../../src/measures/trail.ts";
import type { SideName } from "../oracles/corner.ts";
import { startOf } from "../oracles/kernel.ts";
import { degrees } from "../oracles/vectors.ts";

/** What the product itself reads of one wheel in one pose: angles in degrees, lengths in mm, signs of ISO 8855. */
export interface Measured {
  readonly toe: number;
  readonly camber: number;
  readonly caster: number;
  readonly kpi: number;
  readonly scrub: number;
  readonly trail: number;
  readonly contactOut: number;
}

export function measured(front: Front, side: SideName, rack: number, travel: number, radius: number): Measured {
  const poses = newPoses(1);
  solve(front, rack, travel, travel, poses, 0);
  const at = startOf(side);
  if (poses[at + Side.Blame] !== Link.None) throw new Error(`does not close at rack ${rack}, travel ${travel}`);
  return {
    toe: degrees(toe(poses, at)),
    camber: degrees(camber(poses, at)),
    caster: degrees(caster(poses, at)),
    kpi: degrees(kingPinInclination(poses, at)),
    scrub: scrubRadius(poses, at, radius),
    trail: trail(poses, at, radius),
    contactOut: contactY(poses, at, radius),
  };
}
