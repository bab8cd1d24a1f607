import { isMap } from "yaml";
import * as z from "zod/mini";
import { kindHelp, kindWords } from "../kinds.ts";
import { shown } from "../shown.ts";
import { isSaid, sourceAt, spotAt } from "../tree.ts";
import type { LengthUnit } from "../words.ts";
import { type Range, told, worth } from "../worth.ts";
import type { Field, Look, Worth } from "./field.ts";

type Path = readonly string[];

/** The place where a field's text stands, and the text; null where no place has any. */
function textIn({ tree, places }: Look): { readonly path: Path; readonly source: string } | null {
  for (const path of places) {
    const source = sourceAt(tree, path);
    if (source !== null) return { path, source };
  }
  return null;
}

/** Whether any of a field's places has something. */
function isGiven({ tree, places }: Look): boolean {
  return places.some((path) => isSaid(tree, path));
}

/** Where a missing part should be written: beside what is there already. */
function missingAt({ tree, places }: Look): Path {
  const beside = places.find((path) => isMap(spotAt(tree, path.slice(0, -1))?.full));
  return beside ?? places.at(-1) ?? [];
}

/** What a text is worth, or what is wrong with it. */
type Parsed<T> = { readonly value: T } | { readonly complaint: string };

/** A single value that stands in one place. */
function leaf<T>(
  help: string,
  expected: string,
  schema: Field<T>["schema"],
  parse: (source: string, units: LengthUnit) => Parsed<T>,
): Field<T> {
  return {
    help,
    expected,
    required: true,
    schema,
    read: (look) => {
      const text = textIn(look);
      if (text === null) return undefined;
      const parsed = parse(text.source, look.units);
      if ("value" in parsed) return parsed.value;
      look.complain(text.path, parsed.complaint);
      return undefined;
    },
    keys: [],
    below: () => undefined,
  };
}

/** A length, an angle or a bare number within its sensible range. */
export function number(range: Range, help: string): Field<number> {
  const field = leaf<number>(
    help,
    kindWords[range.kind],
    (make) => make.tell(make.written(), `${help} ${kindHelp[range.kind]}`),
    (source, units) => {
      const value = worth(source, range, units);
      return typeof value === "number" ? { value } : value;
    },
  );
  return { ...field, range };
}

/** One of a few words. */
export function word<const W extends string>(words: readonly W[], help: string): Field<W> {
  const expected = words.join(" or ");
  return leaf(
    help,
    expected,
    (make) => make.tell(z.enum(words), help),
    (source) => {
      const value = words.find((each) => each === source);
      return value === undefined ? { complaint: `found ${shown(source)}, expected ${expected}` } : { value };
    },
  );
}

/** Text that has a meaning of its own, such as a thread's designation. `parse` complains of what it does not know. */
export function text<T>(
  help: string,
  expected: string,
  parse: (source: string, units: LengthUnit) => Parsed<T>,
): Field<T> {
  return leaf(
    help,
    expected,
    (make) => make.tell(make.written(), help),
    (source, units) => {
      const parsed = parse(source, units);
      return "value" in parsed ? parsed : { complaint: `found ${told(source)}, ${parsed.complaint}` };
    },
  );
}

/** A field that a file may leave out, and what it is worth then. */
export function otherwise<T, const A>(field: Field<T>, absent: A): Field<T | A> {
  return { ...field, required: false, read: (look) => (isGiven(look) ? field.read(look) : absent) };
}

/** A field that a file may leave out: null then. */
export function optional<T>(field: Field<T>): Field<T | null> {
  return otherwise(field, null);
}

type Fields = Readonly<Record<string, Field<unknown>>>;

/** A mapping with known keys. */
export function group<const F extends Fields>(
  fields: F,
  help: string,
): Field<{ readonly [K in keyof F]: Worth<F[K]> }> {
  const keys = Object.keys(fields);
  return {
    help,
    expected: `the keys ${keys.join(", ")}`,
    required: true,
    schema: (make, partial) => {
      const shape = Object.entries(fields).map(([key, field]) => {
        const schema = field.schema(make, partial);
        return [key, field.required && !partial ? schema : z.optional(schema)] as const;
      });
      return make.tell(z.strictObject(Object.fromEntries(shape)), help);
    },
    read: (look) => {
      let sound = true;
      const read = Object.entries(fields).map(([key, field]) => {
        const at: Look = { ...look, places: look.places.map((path) => [...path, key]) };
        if (field.required && !isGiven(at)) {
          look.complain(missingAt(at), `missing: ${field.help}`);
          sound = false;
          return [key, undefined] as const;
        }
        const value = field.read(at);
        if (value === undefined) sound = false;
        return [key, value] as const;
      });
      return sound ? (Object.fromEntries(read) as { readonly [K in keyof F]: Worth<F[K]> }) : undefined;
    },
    keys,
    below: (key) => (Object.hasOwn(fields, key) ? fields[key] : undefined),
  };
}

/** What is wrong with a value as a whole: the key below it to point at, and what is wrong, in a builder's words. */
export interface FieldFault {
  readonly key: string;
  readonly message: string;
}

/** A field whose parts have to go together. `faultOf` may ask for a key's text as it is written. */
export function sound<T>(
  field: Field<T>,
  faultOf: (value: T, written: (key: string) => string) => FieldFault | null,
): Field<T> {
  return {
    ...field,
    read: (look) => {
      const value = field.read(look);
      if (value === undefined) return undefined;
      const at = (key: string) => {
        const places = look.places.map((path) => [...path, key]);
        return places.find((path) => isSaid(look.tree, path)) ?? look.places[0] ?? [];
      };
      const fault = faultOf(value, (key) => told(sourceAt(look.tree, at(key)) ?? ""));
      if (fault === null) return value;
      look.complain(at(fault.key), fault.message);
      return undefined;
    },
  };
}

/** A mapping whose keys are names that the builder gives, each with the same kind of thing below it. */
export function named<T>(each: Field<T>, help: string): Field<ReadonlyMap<string, T>> {
  return {
    help,
    expected: "names of your own, each with its own keys",
    required: true,
    schema: (make, partial) => make.tell(z.record(z.string(), each.schema(make, partial)), help),
    read: (look) => {
      const names = look.places.flatMap((path) => {
        const full = spotAt(look.tree, path)?.full;
        return isMap(full) ? full.items.map(({ key }) => String(key)) : [];
      });
      const read = new Map<string, T>();
      for (const name of new Set(names)) {
        const value = each.read({ ...look, places: look.places.map((path) => [...path, name]) });
        if (value === undefined) return undefined;
        read.set(name, value);
      }
      return read;
    },
    keys: [],
    below: () => each,
  };
}

/** A single value or a mapping in its stead. */
export function either<A, B>(single: Field<A>, mapping: Field<B>): Field<A | B> {
  return {
    help: single.help,
    ...(single.range === undefined ? {} : { range: single.range }),
    expected: `${single.expected}, or ${mapping.expected}`,
    required: true,
    schema: (make, partial) =>
      make.tell(z.union([single.schema(make, partial), mapping.schema(make, partial)]), single.help),
    read: (look) => {
      const own = look.places.find((path) => isSaid(look.tree, path));
      const isMapping = own !== undefined && isMap(spotAt(look.tree, own)?.full);
      return (isMapping ? mapping : single).read(look);
    },
    keys: mapping.keys,
    below: mapping.below,
  };
}

/** One of it at each side of the front end; null where the file has none there. */
export interface Sides<T> {
  readonly left: T | null;
  readonly right: T | null;
}

const sideHelp = {
  both: "Left and right alike.",
  left: "What differs on the driver's left; overrides any part of both.",
  right: "What differs on the driver's right; overrides any part of both.",
} as const;

/** A mapping with the keys both, left and right, of which left and right override any part of both. `name` is its section's. */
export function sided<T>(name: string, each: Field<T>, help: string): Field<Sides<T>> {
  const keys = Object.keys(sideHelp);
  return {
    help,
    expected: `the keys ${keys.join(", ")}`,
    required: true,
    schema: (make) => {
      const corner = make.tell(each.schema(make, true), each.help, `${name}-corner`);
      const side = (words: string) => z.optional(make.tell(z.nullable(corner), words));
      const { both, left, right } = sideHelp;
      return make.tell(z.strictObject({ both: side(both), left: side(left), right: side(right) }), help);
    },
    read: (look) => {
      const side = (wheel: "left" | "right") => {
        const places = look.places.flatMap((path) => [
          [...path, wheel],
          [...path, "both"],
        ]);
        const at: Look = { ...look, places };
        return isGiven(at) ? each.read(at) : null;
      };
      const [left, right] = [side("left"), side("right")];
      return left === undefined || right === undefined ? undefined : { left, right };
    },
    keys,
    below: (key) => (keys.includes(key) ? each : undefined),
  };
}

/** A point of the whole car, in its own frame: ahead, to the driver's left, up, mm. */
export function carPoint(help: string) {
  return pointOf("offset", help, "to the driver's left of the car's centreline, to his right negative");
}

/** A point of one corner: ahead, outboard on its own side, up, mm. */
export function cornerPoint(help: string) {
  return pointOf("out", help, "outboard of the car's centreline, on its own side");
}

const far = { kind: "length", low: -4000, high: 4000 } as const;

function pointOf<K extends string>(sideways: K, help: string, words: string) {
  const ahead = number(far, "How far ahead of the front-axle line, behind it negative.");
  const side = number(far, `How far ${words}.`);
  const up = number(far, "How far above the ground at ride height.");
  return group(
    { ahead, [sideways]: side, up } as { ahead: Field<number>; up: Field<number> } & Record<K, Field<number>>,
    help,
  );
}
