import { plainText } from "./plain.js";

const { Segmenter } = Intl;
const escapes = /\x1b/g;

/**
 * Stands in for Intl.Segmenter in the bundle. Setting one up costs a fifth of a start, and Ink's packages make three;
 * in plain text, escape sequences included, each code unit is a grapheme, and the real one is made for other text only.
 */
export class GraphemeSegmenter {
  /** @param {string} [locale] @param {Intl.SegmenterOptions} [options] */
  constructor(locale, options) {
    this.locale = locale;
    this.options = options;
    /** @type {Intl.Segmenter | undefined} */
    this.real = undefined;
  }

  /** @param {string} text */
  segment(text) {
    if (plainText.test(text.replace(escapes, ""))) return new Units(text);
    this.real ??= new Segmenter(this.locale, this.options);
    return this.real.segment(text);
  }
}

class Units {
  /** @param {string} input */
  constructor(input) {
    this.input = input;
  }

  /** @param {number} [index] */
  containing(index = 0) {
    return index in Object(this.input) ? { segment: this.input[index], index, input: this.input } : undefined;
  }

  *[Symbol.iterator]() {
    for (let index = 0; index < this.input.length; index += 1) {
      yield { segment: this.input[index], index, input: this.input };
    }
  }
}
