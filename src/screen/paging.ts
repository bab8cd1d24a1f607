/** The first line that is seen of so many, after a key that goes a line or, by Space and the page keys, all that is seen. */
export function turned(top: number, ways: number, chord: string, seen: { room: number; lines: number }): number {
  const end = Math.max(0, seen.lines - seen.room);
  const by = chord === "space" || chord.startsWith("page") ? seen.room : 1;
  return Math.min(end, Math.max(0, top + ways * by));
}

/** The lines that are seen from that line on, and whether more follow. */
export function seenFrom(
  lines: readonly string[],
  top: number,
  room: number,
): { readonly shown: readonly string[]; readonly isMore: boolean } {
  const from = Math.min(top, Math.max(0, lines.length - room));
  return { shown: lines.slice(from, from + room), isMore: from + room < lines.length };
}

/** What a page's title says of the rest of it. */
export const restWords = (isMore: boolean) => (isMore ? "more below: Space or ↓" : "the end");
