import type { Chance } from "./chance.ts";

type Mutation = (text: string, chance: Chance) => string;

const lines = (text: string) => text.split("\n");
const place = (text: string, { below }: Chance) => below(text.length + 1);
const put = (text: string, at: number, what: string, instead = 0) =>
  text.slice(0, at) + what + text.slice(at + instead);

/** Every number is followed by what is not a digit, so that a change of one is a change of all of it. */
const number = /-?\d+(?:\.\d+)?/g;

function changedNumber(text: string, { one }: Chance, into: (was: number) => string): string {
  const found = [...text.matchAll(number)];
  if (found.length === 0) return text;
  const { 0: was, index } = one(found);
  return put(text, index, into(Number(was)), was.length);
}

const oddNumbers = [
  "1e400",
  "-1e400",
  "1e-400",
  ".inf",
  "-.inf",
  ".nan",
  "0x7fffffff",
  "0o17",
  "9".repeat(400),
  `0.${"0".repeat(400)}1`,
  "1/0",
  "0/0",
  "14 3/8",
  "1 ft 2 in",
  "(((((1)))))",
  "2^9999",
  "1e308 * 10",
  "12 1/2 + 3/8",
  "'365 mm'",
  "~",
  "-0",
  "١٢",
  "",
];

const oddTexts = [
  "\u0000",
  "\u001b[2J",
  "\u202e",
  "\u200d",
  "👍🏽",
  "e\u0301",
  "\ud800",
  "\ufeff",
  "\u2028",
  "\u0085",
  "漢字",
  "\t",
  "\r",
  "\r\n",
  "&a ",
  "*a",
  "<<: *a",
  "!!binary x",
  "%YAML 1.1\n",
  "---\n",
  "...\n",
  "? ",
  "- ",
  "{",
  "}",
  "[",
  "]",
  ": ",
  ", ",
  "#",
  "'",
  '"',
  "|\n",
  ">\n",
  "__proto__: 1\n",
  "constructor: { prototype: 1 }\n",
];

const mutations: readonly Mutation[] = [
  // One bit.
  (text, chance) => {
    const at = chance.below(text.length);
    return put(text, at, String.fromCharCode(text.charCodeAt(at) ^ (1 << chance.below(8))), 1);
  },
  (text, chance) => put(text, place(text, chance), chance.one(oddTexts)),
  (text, chance) => put(text, place(text, chance), "", 1 + chance.below(40)),
  (text, chance) => changedNumber(text, chance, () => chance.one(oddNumbers)),
  (text, chance) => changedNumber(text, chance, (was) => String(was * 10 ** (chance.below(9) - 4))),
  (text, chance) => changedNumber(text, chance, (was) => String(-was)),
  // A line twice, lost, or somewhere else; indented otherwise.
  (text, chance) => {
    const all = lines(text);
    const [from, to] = [chance.below(all.length), chance.below(all.length)];
    const [line = ""] = all.splice(from, chance.below(2));
    all.splice(to, 0, line === "" ? (all[from] ?? "") : line);
    return all.join("\n");
  },
  (text, chance) => {
    const all = lines(text);
    all.splice(chance.below(all.length), 1 + chance.below(3));
    return all.join("\n");
  },
  (text, chance) => {
    const all = lines(text);
    const at = chance.below(all.length);
    all[at] = chance.one(["  ", " ", "\t", "    "]) + all[at];
    return all.join("\n");
  },
  (text) => text.replaceAll("\n", "\r\n"),
  (text) => `\ufeff${text}`,
  (text, { below }) => `${text}\nx: ${"[".repeat(below(3000))}`,
  (text, { below }) =>
    `a: &a [1,1]\n${Array.from({ length: below(20) }, (_, i) => `b${i}: [*a, *a]`).join("\n")}\n${text}`,
];

/** A text with up to four things changed in it that a bad disk, a bad editor or a bad neighbour could change. */
export function mutated(text: string, chance: Chance): string {
  let changed = text;
  for (let times = 1 + chance.below(4); times > 0; times -= 1) changed = chance.one(mutations)(changed, chance);
  return changed;
}

/** A car file with a few or all of its numbers moved by up to a tenth or so: mostly still a car, and often one that binds. */
export function shaken(text: string, { share, below, one }: Chance): string {
  const most = one([0.01, 0.05, 0.2]);
  const touched = one([0.1, 0.5, 1]);
  const body = text.indexOf("wheelbase");
  const moved = text.slice(body).replace(/(?<=[:{,] *[a-z-]*:? *)-?\d+(?:\.\d+)?(?= *[,}\n#])/g, (was) => {
    if (share() > touched) return was;
    const now = Number(was) * (1 + most * (2 * share() - 1)) + (below(20) === 0 ? share() - 0.5 : 0);
    return String(Math.round(now * 1e4) / 1e4);
  });
  return text.slice(0, body) + moved;
}
