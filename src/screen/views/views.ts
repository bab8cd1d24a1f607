import { adjust } from "./adjust.tsx";
import { car } from "./car.tsx";
import { checks } from "./checks.tsx";
import { front, plan } from "./drawing.tsx";
import { locks } from "./locks.tsx";
import { map } from "./map.tsx";
import { steer } from "./steer.tsx";
import { travel } from "./travel.tsx";
import { trials } from "./trials.tsx";
import type { View } from "./view.ts";

/** The list of views, in the order of their tabs: a new view is a file beside this one and a line here. */
export const views: readonly View[] = [adjust, steer, travel, plan, front, map, car, trials, locks, checks];

/** The view that is seen first. */
export const firstView = adjust.name;

/** The view of that name; the first where there is none. */
export function viewOf(name: string): View {
  return views.find((each) => each.name === name) ?? adjust;
}
