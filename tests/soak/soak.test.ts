import { expect, test } from "vitest";
import { carShare } from "./cars.ts";
import { commandShare } from "./commands.ts";
import { frontShare } from "./fronts.ts";
import { keyShare } from "./keys.ts";
import { sheetShare } from "./sheets.ts";
import { textShare } from "./texts.ts";

/** A fixed share of what `npm run soak` goes on with: many seeds a test, so that each is small. */
const seeds = (from: number, count: number) => Array.from({ length: count }, (_, i) => from + i);

test.each(seeds(0, 10))(
  "any front end's numbers keep its lengths, have a mirror, and give figures or none: three hundreds %i",
  (thousand) => {
    for (const seed of seeds(300 * thousand + 1, 300)) expect(frontShare(seed), `seed ${seed}`).toBeNull();
  },
);

test.each(seeds(0, 10))("shaken cars are worked out or refused, with no number missing: tens %i", (ten) => {
  for (const seed of seeds(10 * ten + 1, 10)) expect(carShare(seed), `seed ${seed}`).toBeNull();
});

test.each(seeds(0, 10))("broken texts are read or refused, each with its place: hundreds %i", async (hundred) => {
  for (const seed of seeds(100 * hundred + 1, 100)) expect(await textShare(seed), `seed ${seed}`).toBeNull();
});

test.each(seeds(0, 5))("broken sheets and readings are read or refused: hundreds %i", async (hundred) => {
  for (const seed of seeds(100 * hundred + 1, 100)) expect(await sheetShare(seed), `seed ${seed}`).toBeNull();
});

test.each(seeds(0, 5))("commands say what they can of any file, and end as they should: tens %i", async (ten) => {
  for (const seed of seeds(10 * ten + 181, 10)) expect(await commandShare(seed), `seed ${seed}`).toBeNull();
});

test.each(seeds(0, 10))("a cat on the keys does no harm that undo does not take back: tens %i", (ten) => {
  for (const seed of seeds(10 * ten + 1, 10)) expect(keyShare(seed), `seed ${seed}`).toBeNull();
});
