import * as z from "zod/mini";
import { cornerGroups, cornerValues } from "./corner.ts";
import type { Linkage } from "./linkage.ts";
import { linkages } from "./linkages.ts";
import type { Choice, Mechanism } from "./mechanism.ts";
import { mechanisms } from "./mechanisms.ts";
import type { Groups, Value } from "./value.ts";
import { wholeGroups, wholeValues } from "./whole.ts";

type Shape = Record<string, z.ZodMiniType>;

function described(schema: z.ZodMiniType, description: string): z.ZodMiniType {
  z.globalRegistry.add(schema, { description });
  return schema;
}

const lengthHelp = 'A number in the file\'s units, or text such as "14 3/8", "365 mm", "1 ft 2 in" or "12 1/2 + 3/8".';
const angleHelp = 'A number of degrees, or text such as "1 1/2" or "0.1 rad".';

function numberOf(value: Value): z.ZodMiniType {
  const written = () => z.union([z.number(), z.string()]);
  const help = `${value.help} ${value.kind === "length" ? lengthHelp : angleHelp}`;
  if (!value.eachWay) return described(written(), help);
  const each = z.strictObject({
    left: described(written(), `${value.label}, to the driver's left.`),
    right: described(written(), `${value.label}, to the driver's right.`),
  });
  return described(z.union([z.number(), z.string(), each]), help);
}

interface Leaf {
  readonly path: readonly string[];
  readonly schema: z.ZodMiniType;
  readonly required: boolean;
}

function leaves(values: readonly Value[], choices: readonly Choice[] = []): readonly Leaf[] {
  return [
    ...values.map((value) => ({ path: value.path, schema: numberOf(value), required: value.absent === null })),
    ...choices.map(({ path, help, words }) => ({ path, schema: described(z.enum(words), help), required: false })),
  ];
}

/**
 * The nested mapping that holds these leaves. With `partial`, any key may be left out at every depth, as below front.both,
 * front.left and front.right, of which only the merged whole must be complete.
 */
function shapeOf(all: readonly Leaf[], groups: Groups, partial: boolean, depth = 0): Shape {
  const shape: Shape = {};
  for (const key of new Set(all.map((leaf) => leaf.path[depth] ?? ""))) {
    const below = all.filter((leaf) => leaf.path[depth] === key);
    const leaf = below.find((each) => each.path.length === depth + 1);
    const schema = leaf?.schema ?? z.strictObject(shapeOf(below, groups, partial, depth + 1));
    const path = below[0]?.path.slice(0, depth + 1).join(".") ?? "";
    const words = groups[path];
    const told = leaf === undefined && words !== undefined ? described(schema, words) : schema;
    const required = !partial && below.some((each) => each.required);
    shape[key] = required ? told : z.optional(told);
  }
  return shape;
}

function frontOf(linkage: Linkage): z.ZodMiniType {
  const side = (help: string) =>
    z.optional(
      described(
        z.nullable(
          z.strictObject(
            shapeOf(leaves([...linkage.values, ...cornerValues]), { ...linkage.groups, ...cornerGroups }, true),
          ),
        ),
        help,
      ),
    );
  return described(
    z.strictObject({
      linkage: described(z.literal(linkage.name), linkage.help),
      both: side("Left and right alike."),
      left: side("What differs on the driver's left; overrides any part of both, down to single coordinates."),
      right: side("What differs on the driver's right; overrides any part of both, down to single coordinates."),
    }),
    "The front end: what carries the uprights, and where.",
  );
}

function steeringOf(mechanism: Mechanism): z.ZodMiniType {
  return described(
    z.strictObject({
      mechanism: described(z.literal(mechanism.name), mechanism.help),
      ...shapeOf(leaves(mechanism.values, mechanism.choices), mechanism.groups, false),
    }),
    "What moves the inner ends of the tie rods.",
  );
}

/** One of several, told apart by a key; a single one stands for itself, so that its faults are told one by one. */
function oneOf(schemas: readonly z.ZodMiniType[]): z.ZodMiniType {
  return schemas.length === 1 && schemas[0] !== undefined ? schemas[0] : z.union(schemas);
}

/** A line of text without characters that could disturb a terminal. */
const line = z.string().check(z.regex(/^[^\p{Cc}\p{Zl}\p{Zp}]*$/u), z.maxLength(200));

/** Longer text, which may have lines of its own. */
const prose = z.string().check(z.regex(/^[^\p{Cc}]*([\t\n\r][^\p{Cc}]*)*$/u));

/** The car file as zod describes it, for one linkage and one mechanism. Free of transforms: it prints as JSON Schema. */
export function carSchema(front: readonly Linkage[], steering: readonly Mechanism[]): z.ZodMiniType {
  return z.strictObject({
    title: z.optional(described(line, "What the car is called.")),
    notes: z.optional(described(prose, "Anything the builder wants to keep with the car.")),
    units: described(z.enum(["in", "mm"]), "What bare lengths in this file are in."),
    ...shapeOf(leaves(wholeValues), wholeGroups, false),
    front: oneOf(front.map(frontOf)),
    steering: oneOf(steering.map(steeringOf)),
  });
}

/** The car file with every linkage and mechanism there is. */
export function wholeSchema(): z.ZodMiniType {
  return carSchema(linkages, mechanisms);
}
