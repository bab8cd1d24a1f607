import { plainText } from "./plain.js";

const colours = /\x1b\[[\d;]*m/g;

/**
 * Stands in for the package string-width in the bundle. The package asks of every cluster whether it is an emoji, and
 * the first such question costs more than the rest of a start; plain text needs no asking.
 * @param {string} text
 * @param {{ ambiguousIsNarrow?: boolean, countAnsiEscapeCodes?: boolean }} [options]
 * @returns {number} columns
 */
export default function stringWidth(text, options) {
  if (options === undefined && typeof text === "string") {
    const bare = text.includes("\x1b") ? text.replace(colours, "") : text;
    if (plainText.test(bare)) return bare.length;
  }
  return require("string-width").default(text, options);
}
