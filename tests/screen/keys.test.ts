import { describe, expect, it } from "vitest";
import { allKeys, bindingsNow, keys } from "../../src/screen/keys.ts";
import { update } from "../../src/screen/update.ts";
import { helpLines } from "../../src/screen/view/helpText.ts";
import { firstView, views } from "../../src/screen/views/views.ts";
import { Bench, opened } from "./support/bench.tsx";

const groups = allKeys({ view: firstView });

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

  it("gives every view a key of its own, and no key of a view's own hides the way to another", () => {
    const shown = views.map(({ key }) => key);
    expect(new Set(shown).size).toBe(views.length);
    for (const view of views) {
      const bench = new Bench(opened("widened-offset-rack")).press(view.key);
      expect(bench.model.view).toBe(view.name);
      const own = view.keys.flatMap((each) => each.keys);
      expect(new Set(own).size, view.name).toBe(own.length);
      for (const chord of [...shown, "?", "q", "u", "s", "-", "+"]) expect(own, view.name).not.toContain(chord);
      expect(bindingsNow(bench.model).slice(0, view.keys.length)).toEqual(view.keys);
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
