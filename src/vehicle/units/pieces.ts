/**
 * A space that a line may end at: none within a number, "1 7/32", between a number and its unit, "2 in" or "1 ft 2 in", or
 * before the same number in decimals, "9/16 (0.563)".
 */
const mayEnd = /(?<!\d|\dft|\d ft) |(?<!ft) (?!\d+\/\d|(?:in|ft|mm|cm|m|deg|lb|N|kg)\b|[°%]|\(\d)/;

/** What a text may be broken between: a number is one word with its fraction and its unit. */
export function pieces(text: string): string[] {
  return text.split(mayEnd);
}
