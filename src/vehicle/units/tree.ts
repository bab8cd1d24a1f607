import type { Literal } from "./literal.ts";

/** An expression: a value, or one of the four operations on two of them. */
export type Tree =
  | { readonly kind: "literal"; readonly literal: Literal }
  | { readonly kind: "negate"; readonly of: Tree }
  | { readonly kind: "+" | "-" | "*" | "/"; readonly left: Tree; readonly right: Tree };
