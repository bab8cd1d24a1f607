import type { Joint, Linkage } from "../linkage.ts";
import { readThread, type Thread } from "../threads.ts";
import type { Field, Worth } from "./field.ts";
import { group, number, optional, otherwise, type Sides, sided, sound, text, word } from "./fields.ts";

const short = { kind: "length", low: 0, high: 500 } as const;

/** One end of a tie rod, where something is screwed into its tube. */
function end(which: string) {
  const whole = group(
    {
      size: text(
        "Thread, such as 1/2-20 (ASME B1.1) or M12x1.25 (ISO 261).",
        "a thread such as 1/2-20 or M12",
        readThread,
      ),
      hand: otherwise(word(["right", "left"], "Right-hand or left-hand thread. Left out, right."), "right"),
      fitting: otherwise(
        word(
          ["tapped", "bung", "donor"],
          "What it is: a rod end in the tapped tube, a rod end in a bung welded into the tube, or the donor's own inner rod in the threaded tube. Left out, tapped.",
        ),
        "tapped",
      ),
      reach: number(
        { kind: "length", low: 5, high: 1000 },
        "From the middle of the ball to the far end of the thread that goes into the tube.",
      ),
      thread: number({ kind: "length", low: 1, high: 500 }, "How long the thread is, measured back from that far end."),
      depth: optional(
        number(short, "How deep the tube or bung is threaded. Left out, deep enough for the whole thread."),
      ),
      shoulder: otherwise(number(short, "How far the bung stands out of the tube's end. Left out, 0."), 0),
      "jam-nut": optional(
        number(short, "Thickness of the jam nut. Left out, that of a standard thin nut of this thread."),
      ),
    },
    `The ${which} end: what is screwed into the tube there.`,
  );
  return sound(whole, ({ reach, thread }, written) => {
    if (thread < reach) return null;
    const message = `found ${written("thread")}, expected less than the reach, ${written("reach")}, which goes from the middle of the ball to the end of this thread`;
    return { key: "thread", message };
  });
}

const rodFields = {
  outer: end("outer"),
  inner: end("inner"),
  cut: optional(
    number(
      { kind: "length", low: 5, high: 2500 },
      "Length of the tube as cut, without bungs' shoulders. Left out, it is worked out.",
    ),
  ),
};

const rod = group(rodFields, "A tie rod's tube and what is screwed into it.");

/** One end of a tie rod; lengths mm. */
export interface RodThread {
  readonly size: Thread;
  readonly hand: "right" | "left";
  readonly fitting: "tapped" | "bung" | "donor";
  readonly reach: number;
  readonly thread: number;
  readonly depth: number | null;
  readonly shoulder: number;
  readonly "jam-nut": number | null;
}

/** The threads of one tie rod. */
export type RodThreads = Worth<typeof rod>;

/** The rod ends' threads of a corner's arms, by the arm and the joint, such as "lower-arm" and "front"; null where not said. */
export type ArmThreads = Readonly<Record<string, Readonly<Record<string, Thread | null>> | null>>;

/** The threads of one corner: its tie rod's, and those that its arms are adjusted by. */
export interface CornerThreads extends RodThreads {
  readonly arms: ArmThreads;
}

function armThread({ label }: Joint): Field<Thread | null> {
  return optional(
    text(
      `Thread of the rod end at the ${label}, such as 5/8-18: what one turn of it does.`,
      "a thread such as 1/2-20 or M12",
      readThread,
    ),
  );
}

/** Threads of the tie rods, and of the rod ends that the arms are adjusted by. */
export function threadsField(linked: readonly Linkage[]): Field<Sides<CornerThreads>> {
  const joints = linked.flatMap((each) => each.joints);
  const arms = Object.fromEntries(
    [...new Set(joints.map(({ path }) => path[0]))].map((arm) => {
      const own = joints
        .filter(({ path }) => path[0] === arm)
        .map((joint) => [joint.path[1], armThread(joint)] as const);
      return [
        arm,
        optional(group(Object.fromEntries(own), `Threads of the rod ends of the ${arm.replace("-", " ")}.`)),
      ];
    }),
  );
  const all = group({ ...rodFields, ...arms }, "A tie rod's tube and what is screwed into it, and the arms' threads.");
  const corner: Field<CornerThreads> = {
    ...all,
    read: (look) => {
      const read = all.read(look);
      if (read === undefined) return undefined;
      const { outer, inner, cut, ...rest } = read as RodThreads & ArmThreads;
      return { outer, inner, cut, arms: rest as ArmThreads };
    },
  };
  return sided("threads", corner, "Threads of the tie rods and of the arms' rod ends, for cut lengths and adjustment.");
}
