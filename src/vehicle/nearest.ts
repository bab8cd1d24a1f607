/** Changes of one letter (more, less, other, or two exchanged) that turn a into b. */
function changes(a: string, b: string): number {
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, (before[j - 2] ?? 0) + 1);
      next.push(least);
    }
    before = row;
    row = next;
  }
  return row[b.length] ?? 0;
}

function plain(word: string): string {
  return word.toLowerCase().replace(/[^a-z0-9]/g, "");
}

/** The known word nearest to a found one, when near enough to be a slip of the finger; else null. */
export function nearest(found: string, known: readonly string[]): string | null {
  const word = plain(found.slice(0, 40));
  const ranked = known.map((each) => ({ each, away: changes(word, plain(each)) })).sort((a, b) => a.away - b.away);
  const best = ranked[0];
  if (best === undefined) return null;
  return best.away <= Math.max(1, Math.floor(plain(best.each).length / 3)) ? best.each : null;
}
