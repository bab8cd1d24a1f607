import { add, divide, type Fraction, multiply, negate } from "./fraction.ts";
import type { Literal, Token } from "./literal.ts";
import { treeOf } from "./products.ts";
import type { Tree } from "./tree.ts";

/** A value while it is worked out: with `measured`, in base units; without, a bare number that may yet be a factor. */
interface Amount {
  readonly value: Fraction;
  readonly measured: boolean;
}

type Complaint = { readonly complaint: string };

function measured({ value, measured: done }: Amount, own: Fraction): Fraction {
  return done ? value : multiply(value, own);
}

function sum(a: Amount, b: Amount, own: Fraction): Amount {
  if (!a.measured && !b.measured) return { value: add(a.value, b.value), measured: false };
  return { value: add(measured(a, own), measured(b, own)), measured: true };
}

function amountOf(tree: Tree, own: Fraction): Amount | Complaint {
  if (tree.kind === "literal") return amount(tree.literal);
  if (tree.kind === "negate") {
    const of = amountOf(tree.of, own);
    return "complaint" in of ? of : { ...of, value: negate(of.value) };
  }
  const left = amountOf(tree.left, own);
  if ("complaint" in left) return left;
  const right = amountOf(tree.right, own);
  if ("complaint" in right) return right;
  if (tree.kind === "+") return sum(left, right, own);
  if (tree.kind === "-") return sum(left, { ...right, value: negate(right.value) }, own);
  if (tree.kind === "*") {
    if (left.measured && right.measured) return { complaint: "it multiplies two values that both have a unit" };
    return { value: multiply(left.value, right.value), measured: left.measured || right.measured };
  }
  if (right.measured) return { complaint: "it divides by a value that has a unit" };
  const value = divide(left.value, right.value);
  return value === null ? { complaint: "it divides by 0" } : { value, measured: left.measured };
}

function amount({ value, unit }: Literal): Amount {
  return unit === null ? { value, measured: false } : { value: multiply(value, unit), measured: true };
}

/** A sum or difference of values, read here since most files and entries hold no more; null where it is something else. */
function plainSum(tokens: readonly Token[], own: Fraction): Amount | null {
  let total: Amount | null = null;
  let minus = false;
  let signed = false;
  for (const token of tokens) {
    if (token.kind === "literal") {
      const next = amount(token.literal);
      const addend = minus ? { ...next, value: negate(next.value) } : next;
      total = total === null ? addend : sum(total, addend, own);
      minus = false;
      signed = false;
    } else {
      if (signed || (token.sign !== "+" && token.sign !== "-")) return null;
      minus = token.sign === "-";
      signed = true;
    }
  }
  return signed ? null : total;
}

/** Two signs in a row are a slip of the finger, and taking the one for the other would be dangerous. */
function twoSigns(tokens: readonly Token[]): boolean {
  const isSign = (token: Token | undefined) => token?.kind === "sign" && (token.sign === "+" || token.sign === "-");
  return tokens.some((token, index) => isSign(token) && isSign(tokens[index + 1]));
}

/** "14 -3/8" may mean a mixed number or a difference, so it is neither. */
function ambiguity(tokens: readonly Token[]): string | null {
  for (const [index, token] of tokens.entries()) {
    if (token.kind !== "sign" || token.sign !== "-" || token.lone) continue;
    const [before, after] = [tokens[index - 1], tokens[index + 1]];
    if (before?.kind !== "literal" || after?.kind !== "literal") continue;
    if (/^\d+$/.test(before.source) && /^\d+\/\d+/.test(after.source))
      return `it can be read two ways: write ${before.source}-${after.source} or ${before.source} - ${after.source}`;
  }
  return null;
}

/** The value of tokens in base units, exactly; `own` is the unit of values that name none, as so much of the base unit. */
export function evaluate(tokens: readonly Token[], own: Fraction): { value: Fraction } | Complaint {
  const doubt = ambiguity(tokens);
  if (doubt !== null) return { complaint: doubt };
  if (twoSigns(tokens)) return { complaint: "it has two signs in a row" };
  const simple = plainSum(tokens, own);
  if (simple !== null) return { value: measured(simple, own) };
  if (!tokens.some((token) => token.kind === "literal")) return { complaint: "it holds no number" };
  const tree = treeOf(tokens);
  if (tree === "unprepared") return { complaint: "sums with * / ( ) are still being made ready; try again" };
  if (tree === null) return { complaint: "its signs and brackets do not fit together" };
  const worked = amountOf(tree, own);
  return "complaint" in worked ? worked : { value: measured(worked, own) };
}
