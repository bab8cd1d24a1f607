import { isMap } from "yaml";
import type { Complaint } from "../complaint.ts";
import { mechanismOf } from "../mechanisms.ts";
import { nearest } from "../nearest.ts";
import { quantitiesOf } from "../quantities.ts";
import { safe } from "../shown.ts";
import { complaintAt, complaintAtKey, sourceAt, spotAt, type Tree, wordAt } from "../tree.ts";
import type { LengthUnit } from "../words.ts";
import { worth } from "../worth.ts";
import { pointsOf, type SurveyForm } from "./points.ts";

/** What a sheet says of the car beside its points. */
interface Given {
  readonly given: ReadonlyMap<string, number>;
  readonly words: ReadonlyMap<string, string>;
  readonly complaints: readonly Complaint[];
}

/** The ids of what comes of a front end's points alone. */
export function pointQuantities(form: SurveyForm): ReadonlySet<string> {
  const own = pointsOf(form).flatMap(({ id, sideways }) =>
    id === null ? [] : [`${id}.ahead`, `${id}.${sideways}`, `${id}.up`],
  );
  const ofRack = ["ahead", "up", "eye-to-eye", "offset", "tilt"].map((key) => `rack.${key}`);
  return new Set(form.mechanism === "rack" ? [...own, ...ofRack] : own);
}

/**
 * The sheet's part `car`: what no tape reads between points, in the car file's own words and places. Points and what comes
 * of them stand among the readings instead.
 */
export function givenIn(tree: Tree, form: SurveyForm, units: LengthUnit): Given {
  const given = new Map<string, number>();
  const words = new Map<string, string>();
  const complaints: Complaint[] = [];
  const known = new Set<string>(["car"]);
  const allow = (path: readonly string[]) => {
    for (let depth = 1; depth <= path.length; depth++) known.add(path.slice(0, depth).join("\0"));
  };
  const ofPoints = pointQuantities(form);
  for (const quantity of quantitiesOf(form)) {
    if (ofPoints.has(quantity.id)) continue;
    for (const path of [quantity.path, quantity.shared]) {
      if (path === null) continue;
      const at = ["car", ...path];
      allow(at);
      const source = sourceAt(tree, at);
      if (source === null || given.has(quantity.id)) continue;
      const value = worth(source, quantity, units);
      if (typeof value === "number") given.set(quantity.id, value);
      else if (!complaints.some((each) => each.part === at.join(".")))
        complaints.push(complaintAt(tree, at, value.complaint));
    }
  }
  for (const choice of mechanismOf(form.mechanism).choices) {
    const at = ["car", "steering", ...choice.path];
    allow(at);
    const word = wordAt(tree, at);
    if (word === null) continue;
    if (choice.words.includes(word)) words.set(choice.path.join("."), word);
    else complaints.push(complaintAt(tree, at, `found "${safe(word)}", expected ${choice.words.join(" or ")}`));
  }
  return { given, words, complaints: [...complaints, ...strangers(tree, known)] };
}

function strangers(tree: Tree, known: ReadonlySet<string>): readonly Complaint[] {
  const paths = [...tree.spots.keys()].filter((path) => path === "car" || path.startsWith("car\0"));
  const leaves = paths.filter((path) => !known.has(path) && !isMap(spotAt(tree, path.split("\0"))?.full));
  return leaves.map((path) => {
    const at = path.split("\0");
    const word = at.at(-1) ?? "";
    const near = nearest(
      word,
      [...known].map((each) => each.split("\0").at(-1) ?? ""),
    );
    const advice =
      near === null || near === word
        ? "points and what comes of them stand among the readings, and other parts go into the car file itself"
        : `did you mean "${near}"?`;
    return complaintAtKey(tree, at, `not what a sheet can say of the car: ${advice}`);
  });
}
