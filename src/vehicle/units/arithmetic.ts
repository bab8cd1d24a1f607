import type { ConstantNode, MathNode, OperatorNode, ParenthesisNode } from "mathjs";
import { create, parseDependencies } from "mathjs/number";
import type { Token } from "./literal.ts";
import type { Tree } from "./tree.ts";

const math = create({ parseDependencies });

/**
 * What mathjs is shown: each value as its number in the list, and the signs + - * / ( ). No name, function, unit or
 * assignment can get in, whatever a file says, and nothing is evaluated there: only its reading of order is used.
 */
function expressionOf(tokens: readonly Token[]): string {
  return tokens.map((token, index) => (token.kind === "literal" ? `${index}` : token.sign)).join(" ");
}

function treeOf(node: MathNode, tokens: readonly Token[]): Tree | null {
  if (node.type === "ParenthesisNode") return treeOf((node as ParenthesisNode).content, tokens);
  if (node.type === "ConstantNode") {
    const token = tokens[Number((node as ConstantNode).value)];
    return token?.kind === "literal" ? { kind: "literal", literal: token.literal } : null;
  }
  if (node.type !== "OperatorNode") return null;
  const { op, args } = node as OperatorNode;
  const [left, right] = args.map((each) => treeOf(each, tokens));
  if (left === null || left === undefined || right === null) return null;
  if (right === undefined) return op === "-" ? { kind: "negate", of: left } : op === "+" ? left : null;
  return op === "+" || op === "-" || op === "*" || op === "/" ? { kind: op, left, right } : null;
}

/** The tree of values and signs in the usual order of operations; null where they do not fit together. */
export function readTree(tokens: readonly Token[]): Tree | null {
  try {
    return treeOf(math.parse(expressionOf(tokens)), tokens);
  } catch {
    return null;
  }
}
