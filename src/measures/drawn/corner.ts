import type { Corner } from "../../kinematics/drawn.ts";
import type { Form, Wheel } from "../../vehicle/car.ts";
import { numberAt, pointAt } from "./places.ts";

/** How to read what every corner has, whatever its linkage. A tie rod counts as cut where the file gives its length. */
function cornerAt(wheel: Wheel): (numbers: Float64Array, rods: Form["rods"]) => Corner {
  const tieRodOuter = pointAt(`${wheel}.tie-rod.outer`);
  const tieRodLength = numberAt(`${wheel}.tie-rod.length`);
  const wheelCenter = pointAt(`${wheel}.wheel.center`);
  const camber = numberAt(`${wheel}.wheel.camber`);
  const toe = numberAt(`${wheel}.wheel.toe`);
  return (numbers, rods) => ({
    tieRodOuter: tieRodOuter(numbers),
    tieRodLength: rods[wheel] === "cut" ? tieRodLength(numbers) : null,
    wheelCenter: wheelCenter(numbers),
    camber: camber(numbers),
    toe: toe(numbers),
  });
}

/** Both corners of a car as the kernel takes them, from its numbers. */
export const cornerOf = { left: cornerAt("left"), right: cornerAt("right") } as const;
