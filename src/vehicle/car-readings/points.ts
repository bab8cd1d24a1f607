import type { Car } from "../car.ts";
import { quantitiesOf } from "../quantities.ts";

/**
 * The points of a front end that a tape can go to, by name, such as "left.tie-rod.outer"; the rods' inner ends among them,
 * whatever carries those.
 */
export function pointNames({ form }: Pick<Car, "form">): readonly string[] {
  const written = quantitiesOf(form).flatMap(({ id, path }) =>
    path[0] === "front" && id.endsWith(".ahead") ? [id.slice(0, -".ahead".length)] : [],
  );
  return [...written, "left.tie-rod.inner", "right.tie-rod.inner"];
}
