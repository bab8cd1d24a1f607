/** The finest mark of a tape, parts of an inch: halves to 64ths. */
const finest = 64n;

/** A whole number and so many 64ths as a tape is read: "44 15/16". */
function said(front: bigint, parts: bigint): string {
  const [wholes, left] = [front + parts / finest, parts % finest];
  if (left === 0n) return `${wholes}`;
  let [top, bottom] = [left, finest];
  while (top % 2n === 0n) [top, bottom] = [top / 2n, bottom / 2n];
  return wholes === 0n ? `${top}/${bottom}` : `${wholes} ${top}/${bottom}`;
}

/**
 * Why a whole number with a fraction, "44 13/14", is not read off a tape, and the marks that it lies between; null where a tape
 * has it. A slip of one digit in the part below the line would else pass for a reading. Thirds are still to be had as a sum: 44 + 1/3.
 */
export function whyNoMark(front: bigint, top: bigint, bottom: bigint): string | null {
  const hasMark = bottom > 1n && bottom <= finest && (bottom & (bottom - 1n)) === 0n;
  if (hasMark) return null;
  const below = (top * finest) / bottom;
  const onMark = (top * finest) % bottom === 0n;
  const marks = onMark ? [said(front, below)] : [said(front, below), said(front, below + 1n)];
  return `${front} ${top}/${bottom} is no mark of a tape, but ${marks.join(" and ")} ${onMark ? "is" : "are"}`;
}
