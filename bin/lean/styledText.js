import {
  ansiCodesToString,
  diffAnsiCodes,
  styledCharsFromTokens as styledFrom,
  tokenize as tokensOf,
} from "@alcalzone/ansi-tokenize";

/**
 * @typedef {ReturnType<typeof tokensOf>} Tokens
 * @typedef {ReturnType<typeof styledFrom>} StyledChars
 */

/**
 * Stands in for the package with which Ink takes lines apart and puts them together. Most lines of a frame stood in the
 * one before: what they were taken apart to is kept. And most characters are styled as the one before them, which needs
 * no comparing of sets.
 */

/** More lines than several screens hold. */
const most = 2000;

/** @type {Map<string, Tokens>} */
let tokens = new Map();
/** @type {WeakMap<Tokens, StyledChars>} */
const styled = new WeakMap();

/**
 * @param {string} text
 * @returns {Tokens}
 */
export function tokenize(text) {
  const known = tokens.get(text);
  if (known !== undefined) return known;
  if (tokens.size >= most) tokens = new Map();
  const made = tokensOf(text);
  tokens.set(text, made);
  return made;
}

/**
 * @param {Tokens} of
 * @returns {StyledChars}
 */
export function styledCharsFromTokens(of) {
  const known = styled.get(of);
  if (known !== undefined) return known;
  const made = styledFrom(of);
  for (const [at, each] of made.entries()) {
    const before = made[at - 1]?.styles;
    if (before !== undefined && alike(before, each.styles)) each.styles = before;
  }
  styled.set(of, made);
  return made;
}

/**
 * @param {StyledChars[number]["styles"]} one
 * @param {StyledChars[number]["styles"]} other
 */
function alike(one, other) {
  return one === other || (one.length === other.length && one.every(({ code }, at) => code === other[at]?.code));
}

/** @param {StyledChars} chars */
export function styledCharsToString(chars) {
  /** @type {StyledChars[number]["styles"]} */
  let now = [];
  let text = "";
  for (const { styles, value } of chars) {
    if (!alike(now, styles)) text += ansiCodesToString(diffAnsiCodes(now, styles));
    text += value;
    now = styles;
  }
  return text + ansiCodesToString(diffAnsiCodes(now, []));
}
