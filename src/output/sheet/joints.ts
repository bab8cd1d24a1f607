import type { Study } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { Joint } from "../../vehicle/linkage.ts";
import { linkageOf } from "../../vehicle/linkages.ts";
import { type DirectionName, type RodEnd, tieRodJoints } from "../../vehicle/sections/rod-ends.ts";
import { directionWords } from "../direction.ts";
import { mind, type PaperPart } from "../paper/paper.ts";
import { degrees } from "../words.ts";
import { sideTable, wheels } from "./writing.ts";

const directionNames: Readonly<Record<DirectionName, string>> = {
  vertical: "upright",
  "fore-and-aft": "fore and aft",
  crosswise: "straight across",
  "square-upright": "square to the shank, as upright as it goes",
  "square-flat": "square to the shank and level",
};

/** "bolt upright, 1/2-20 shank, 22.0° to each side, single shear". */
function rodEndWords({ bolt, size, angle, spacers, shear }: RodEnd): string {
  const way = typeof bolt === "string" ? directionNames[bolt] : directionWords([bolt.ahead, bolt.out, bolt.up]);
  return [
    `bolt ${way}`,
    ...(size === null ? [] : [`${size.name} shank`]),
    `${degrees(angle)} to each side`,
    ...(spacers === "yes" ? ["with misalignment spacers"] : []),
    ...(shear === null ? [] : [`${shear} shear`]),
  ].join(", ");
}

function jointWords({ car }: Study, wheel: Wheel, { path: [part, end] }: Joint): string | null {
  const rodEnd = car.sections["rod-ends"]?.[wheel]?.[part]?.[end] ?? null;
  const bolt = car.sections.hardware?.bolts?.[wheel]?.[part]?.[end] ?? null;
  const said = [rodEnd === null ? null : rodEndWords(rodEnd), bolt === null ? null : `bolt's thread ${bolt.name}`];
  return said.every((each) => each === null) ? null : said.filter((each) => each !== null).join("; ");
}

/** How the bolts of rod ends stand and what goes through the joints, as far as the file says; null where it says nothing. */
export function jointPart(study: Study): PaperPart | null {
  const joints = [...tieRodJoints, ...linkageOf(study.car.form.linkage).joints];
  const rows = joints.flatMap((joint) => {
    const said = { left: jointWords(study, "left", joint), right: jointWords(study, "right", joint) };
    if (wheels.every((wheel) => said[wheel] === null)) return [];
    return [{ label: joint.label, of: (wheel: Wheel) => said[wheel] ?? "not given" }];
  });
  if (rows.length === 0) return null;
  const single = wheels.some((wheel) =>
    joints.some(({ path: [part, end] }) => study.car.sections["rod-ends"]?.[wheel]?.[part]?.[end]?.shear === "single"),
  );
  return {
    heading: "Drill and bolt: joints",
    blocks: [
      sideTable("Joint", rows),
      ...(single
        ? [mind("Single shear bends the bolt and the tab: prefer double shear, and never leave out the safety washer.")]
        : []),
    ],
  };
}
