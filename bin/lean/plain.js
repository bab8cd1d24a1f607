/**
 * Text whose every code unit is one character, one column wide: Latin, and the punctuation, arrows, mathematics, box
 * drawing, blocks and shapes that a screen is made of. No combining marks, joiners, emoji or wide scripts.
 */
export const plainText =
  /^[\x20-\x7e\xa0-\xac\xae-\u02ff\u2010-\u2027\u2030-\u205e\u2190-\u21ff\u2200-\u22ff\u2500-\u25fc]*$/;
