import { carShare } from "./cars.ts";
import { commandShare } from "./commands.ts";
import { frontShare, frontsMet } from "./fronts.ts";
import { keyShare } from "./keys.ts";
import { sheetShare } from "./sheets.ts";
import { textShare } from "./texts.ts";

/**
 * Random numbers of front ends, cars, texts, sheets, commands and keys, for as long as is asked: `npm run soak -- 10` for ten minutes, `npm run soak --
 * 10 keys 4000` for keys only, from seed 4000 on. What is wrong is printed with its seed; the count comes at the end.
 */
const shares = {
  fronts: frontShare,
  cars: carShare,
  texts: textShare,
  sheets: sheetShare,
  commands: commandShare,
  keys: keyShare,
} as const;

type Name = keyof typeof shares;

const isName = (word: string): word is Name => Object.hasOwn(shares, word);
const words = process.argv.slice(2);
const [minutes = 5, first = 1] = words.map(Number).filter(Number.isFinite);
const names = words.filter(isName);
const wanted = names.length > 0 ? names : (Object.keys(shares) as Name[]);
const counts = new Map<Name, number>(wanted.map((name) => [name, 0]));
let wrong = 0;

/** How often the count so far is said, ms: a run that is stopped has then told what it did. */
const every = 300_000;
let tell = performance.now() + every;
const tally = () => [...counts].map(([name, count]) => `${name}: ${count} from seed ${first} on`).join("\n");

const until = performance.now() + minutes * 60_000;
for (let seed = first; seed === first || performance.now() < until; seed += 1) {
  if (performance.now() > tell) {
    tell += every;
    process.stdout.write(`so far ${tally().replaceAll("\n", ", ")}\n`);
  }
  for (const name of wanted) {
    const found = await Promise.resolve()
      .then(() => shares[name](seed))
      .catch((error: unknown) => (error instanceof Error ? (error.stack ?? error.message) : String(error)));
    counts.set(name, (counts.get(name) ?? 0) + 1);
    if (found === null) continue;
    wrong += 1;
    process.stdout.write(`${name} seed ${seed}: ${found}\n`);
  }
}
process.stdout.write(`${tally()}\n`);
if (wanted.includes("fronts")) process.stdout.write(`fronts: ${JSON.stringify(frontsMet)}\n`);
process.stdout.write(wrong === 0 ? "Nothing is wrong.\n" : `${wrong} wrong.\n`);
process.exitCode = wrong === 0 ? 0 : 1;
