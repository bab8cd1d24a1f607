import type { OnUpright, StandingUpright } from "../../measures/bench/onUpright.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { type Writing, wayWords } from "../sheet/writing.ts";
import { degrees } from "../words.ts";
import { type At, crossAt, type Drawing, line, type Shape, words } from "./flat.ts";

/** A place and its name, which keeps off the king-pin line that stands at 0. */
function marked(at: At, text: string, above = 1.5): readonly Shape[] {
  const [x, y] = at;
  const start = x < 0 && x > -30 ? 8 : x + 8;
  return [...crossAt(at, 6), { is: "circle", layer: "mark", at, radius: 3 }, words([start, y + above], text)];
}

/** The upright on the jig table, its king-pin line upright: from behind, and from the wheel's side. */
export function uprightDrawings(wheel: Wheel, upright: StandingUpright, { cut }: Writing): readonly Drawing[] {
  const { upper, hole, spindle, wheelCenter } = upright;
  const lean = Math.atan2(spindle.up - wheelCenter.up, wheelCenter.out);
  const outward = wheel === "left" ? -1 : 1;
  const view = (across: (place: OnUpright) => number): readonly Shape[] => {
    const at = (place: OnUpright): At => [across(place), place.up];
    const foot = { ahead: 0, out: 0, up: 0 };
    return [
      line("mark", [-30, 0], [30, 0]),
      line("mark", [0, -15], [0, upper + 15]),
      ...marked(at(foot), "lower joint"),
      ...marked(at({ ...foot, up: upper }), "upper joint"),
      ...marked(at(spindle), "spindle"),
      ...marked(at(wheelCenter), "wheel's middle", -6.5),
      line("mark", at(spindle), at(wheelCenter)),
      ...marked(at(hole), "tie-rod hole"),
    ];
  };
  const sizes = [
    `Joint to joint ${cut(upper)}; the spindle's line passes the king-pin line ${wayWords(spindle.up, "above", "below", cut)} the lower joint and ${wayWords(spindle.ahead, "ahead of it", "behind it", cut)}.`,
    `The spindle leans ${degrees(Math.abs(lean))} ${lean < 0 ? "up" : "down"} at its end from square to the king-pin line; the wheel's middle is ${cut(wheelCenter.out / Math.cos(lean))} out along it.`,
  ];
  return [
    {
      name: "upright-from-behind",
      title: "Upright from behind",
      notes: ["The king-pin line stands upright; the table's line goes through the lower joint.", ...sizes],
      shapes: view(({ out }) => outward * out),
    },
    {
      name: "upright-from-the-side",
      title: "Upright from the wheel's side",
      notes: [
        `Seen from outside the car, ahead to the ${wheel}; the king-pin line stands upright.`,
        `The hole is ${wayWords(hole.ahead, "ahead of", "behind", cut)} the king-pin line and ${wayWords(hole.up, "above", "below", cut)} the lower joint.`,
        ...sizes,
      ],
      shapes: view(({ ahead }) => outward * ahead),
    },
  ];
}
