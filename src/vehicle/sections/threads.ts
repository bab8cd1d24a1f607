import { readThread, type Thread } from "../threads.ts";
import type { Field, Worth } from "./field.ts";
import { group, number, optional, otherwise, type Sides, sided, text, word } from "./fields.ts";

const short = { kind: "length", low: 0, high: 500 } as const;

/** One end of a tie rod, where something is screwed into its tube. */
function end(which: string) {
  return group(
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
}

const rod = group(
  {
    outer: end("outer"),
    inner: end("inner"),
    cut: optional(
      number(
        { kind: "length", low: 5, high: 2500 },
        "Length of the tube as cut, without bungs' shoulders. Left out, it is worked out.",
      ),
    ),
  },
  "A tie rod's tube and what is screwed into it.",
);

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

/** Threads of the tie rods. */
export const threadsField: Field<Sides<RodThreads>> = sided(
  "threads",
  rod,
  "Threads of the tie rods, for cut lengths, engagement and adjustment.",
);
