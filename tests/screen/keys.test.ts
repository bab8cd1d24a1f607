import { describe, expect, it } from "vitest";
import { keys } from "../../src/screen/keys.ts";
import { update } from "../../src/screen/update.ts";
import { helpLines } from "../../src/screen/view/helpText.ts";
import { Bench, opened } from "./support/bench.tsx";

const groups = Object.values(keys).flat();

describe("the list of keys", () => {
  it("is in help without exception, each key with its words, at any width", () => {
    const { model } = new Bench(opened("balanced-two-seater"));
    for (const columns of [80, 120, 200]) {
      const lines = helpLines(model, columns);
      const page = lines.join(" ").replace(/\s+/g, " ");
      for (const { heading, bindings } of groups) {
        expect(lines).toContain(heading);
        for (const binding of bindings) expect(page).toContain(`${binding.shown} ${binding.help}`);
      }
      for (const line of lines) expect(line.length).toBeLessThanOrEqual(columns - 1);
    }
  });

  it("means one thing by a key at a time", () => {
    for (const [focus, groupsOf] of Object.entries(keys)) {
      const chords = groupsOf.flatMap((group) => group.bindings.flatMap((binding) => binding.keys));
      expect(new Set(chords).size, focus).toBe(chords.length);
    }
  });

  it("gives a way back out of everything that stands in front of the bench", () => {
    for (const [focus, groupsOf] of Object.entries(keys)) {
      if (focus === "bench") continue;
      const back = groupsOf.flatMap(({ bindings }) => bindings).find((binding) => binding.keys.includes("escape"));
      expect(back?.footer, focus).not.toBeNull();
    }
  });

  it("says why a key does nothing just now, on the screen and in help", () => {
    const bench = new Bench(opened("balanced-two-seater")).press("u");
    expect(bench.text()).toContain("There is nothing to take back.");
    expect(helpLines(bench.model, 80).join(" ").replace(/\s+/g, " ")).toContain(
      "(off just now). There is nothing to take back.",
    );
  });

  it("ignores keys that mean nothing", () => {
    const { model } = new Bench(opened("balanced-two-seater"));
    for (const chord of ["z", "ctrl+x", "f7", "paste", "delete"])
      expect(update(model, { is: "key", chord }).model).toBe(model);
  });
});
