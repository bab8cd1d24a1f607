import * as z from "zod/mini";
import { cornerGroups, cornerValues } from "./corner.ts";
import { kindHelp } from "./kinds.ts";
import type { Linkage } from "./linkage.ts";
import type { Maker } from "./maker.ts";
import type { Choice, Mechanism } from "./mechanism.ts";
import { type SectionName, sectionField } from "./sections.ts";
import type { Groups, Value } from "./value.ts";
import { travelValues, wholeGroups, wholeValues } from "./whole.ts";

type Schema = z.ZodMiniType;
type Shape = Record<string, Schema>;

function numberOf(value: Value, make: Maker): Schema {
  const help = `${value.help} ${kindHelp[value.kind]}`;
  if (!value.eachWay) return make.tell(make.written(), help);
  const each = z.strictObject({
    left: make.tell(make.written(), `${value.label}, to the driver's left.`),
    right: make.tell(make.written(), `${value.label}, to the driver's right.`),
  });
  return make.tell(z.union([z.number(), z.string(), each]), help);
}

interface Leaf {
  readonly path: readonly string[];
  readonly schema: Schema;
  readonly required: boolean;
}

function leaves(values: readonly Value[], choices: readonly Choice[], make: Maker): readonly Leaf[] {
  return [
    ...values.map((value) => ({ path: value.path, schema: numberOf(value, make), required: value.absent === null })),
    ...choices.map(({ path, help, words, required }) => ({ path, schema: make.tell(z.enum(words), help), required })),
  ];
}

/**
 * The nested mappings that hold these leaves. A partial one may leave out any key at every depth, as below front.both,
 * front.left and front.right, of which only the merged whole must be complete.
 */
function shapeOf(all: readonly Leaf[], groups: Groups, partial: boolean, make: Maker, depth = 0): Shape {
  const shape: Shape = {};
  for (const key of new Set(all.map((leaf) => leaf.path[depth] ?? ""))) {
    const below = all.filter((leaf) => leaf.path[depth] === key);
    const leaf = below.find((each) => each.path.length === depth + 1);
    const path = below[0]?.path.slice(0, depth + 1).join(".") ?? "";
    const group = () => make.tell(z.strictObject(shapeOf(below, groups, partial, make, depth + 1)), groups[path] ?? "");
    const schema = leaf?.schema ?? group();
    const required = !partial && below.some((each) => each.required);
    shape[key] = required ? schema : z.optional(schema);
  }
  return shape;
}

const frontHelp = "The front end: what carries the uprights, and where.";
const steeringHelp = "What moves the inner ends of the tie rods.";

function frontOf(linkage: Linkage, make: Maker): Schema {
  const values = leaves([...linkage.values, ...cornerValues], [], make);
  const groups = { ...linkage.groups, ...cornerGroups };
  const corner = make.tell(
    z.strictObject(shapeOf(values, groups, true, make)),
    "One corner of the front end, or what differs from the other.",
    `${linkage.name}-corner`,
  );
  const side = (help: string) => z.optional(make.tell(z.nullable(corner), help));
  return make.tell(
    z.strictObject({
      linkage: make.tell(z.literal(linkage.name), linkage.help),
      both: side("Left and right alike."),
      left: side("What differs on the driver's left; overrides any part of both, down to single coordinates."),
      right: side("What differs on the driver's right; overrides any part of both, down to single coordinates."),
    }),
    frontHelp,
  );
}

function steeringOf(mechanism: Mechanism, make: Maker): Schema {
  return make.tell(
    z.strictObject({
      mechanism: make.tell(z.literal(mechanism.word), mechanism.help),
      ...shapeOf(leaves(mechanism.values, mechanism.choices, make), mechanism.groups, false, make),
    }),
    steeringHelp,
  );
}

/** One of several; a single one stands for itself, so that its faults are told one by one. */
function oneOf(schemas: readonly Schema[], help: string, make: Maker): Schema {
  return schemas.length === 1 && schemas[0] !== undefined ? schemas[0] : make.tell(z.union(schemas), help);
}

/** Wheel travel has to be given where there is suspension; among several linkages it may be. */
function travelShape(front: readonly Linkage[], make: Maker): Shape {
  const suspended = front.filter((each) => each.noTravel === undefined);
  if (suspended.length === 0) return {};
  const shape = shapeOf(leaves(travelValues, [], make), wholeGroups, false, make);
  if (suspended.length === front.length) return shape;
  return Object.fromEntries(Object.entries(shape).map(([key, schema]) => [key, z.optional(schema)]));
}

/**
 * A line of text without characters that could disturb a terminal. Written without classes that only some readers of JSON
 * Schema know.
 */
const line = /^[^\u0000-\u001f\u007f-\u009f\u2028\u2029]*$/;

/** Longer text, which may have lines of its own. */
const prose = /^[\t\n\r\u0020-\u007e\u00a0-\uffff]*$/;

/** The optional sections of these names. An empty one counts as left out. */
function sectionShape(names: readonly SectionName[], front: readonly Linkage[], make: Maker): Shape {
  const of = (name: SectionName) => {
    const field = sectionField(name, front);
    return z.optional(make.tell(z.nullable(field.schema(make, false)), field.help));
  };
  return Object.fromEntries(names.map((name) => [name, of(name)]));
}

/**
 * The car file as zod describes it, for these linkages and mechanisms and with these optional sections. Free of
 * transforms: it prints as JSON Schema.
 */
export function carSchema(
  front: readonly Linkage[],
  steering: readonly Mechanism[],
  sections: readonly SectionName[],
  make: Maker,
): Schema {
  const title = z.string().check(z.regex(line), z.maxLength(200));
  const notes = z.string().check(z.regex(prose));
  return make.tell(
    z.strictObject({
      title: z.optional(make.tell(title, "What the car is called.")),
      notes: z.optional(make.tell(notes, "Anything the builder wants to keep with the car.")),
      job: z.optional(make.tell(title, "Whose job it is, or its number.")),
      date: z.optional(make.tell(title, "The job's date, in quotes.")),
      "as-built": z.optional(make.tell(notes, "What was built otherwise than drawn, and when it was measured.")),
      units: make.tell(z.enum(["in", "mm"]), "What bare lengths in this file are in."),
      ...shapeOf(leaves(wholeValues, [], make), wholeGroups, false, make),
      ...travelShape(front, make),
      front: oneOf(
        front.map((each) => frontOf(each, make)),
        frontHelp,
        make,
      ),
      steering: oneOf(
        steering.map((each) => steeringOf(each, make)),
        steeringHelp,
        make,
      ),
      ...sectionShape(sections, front, make),
    }),
    "A car as its builder measures it: the front end and its steering.",
  );
}
