import { describe, expect, it } from "vitest";
import { loadSheet } from "../../src/files/sheets.ts";
import { bindingOf } from "../../src/screen/keys.ts";
import { typedInto } from "../../src/screen/typing.ts";
import { Bench, opened } from "./support/bench.tsx";

const loaded = loadSheet("sheets", "donor-front");
const kept = { text: "text" in loaded ? loaded.text : "", file: "", car: "", known: null, isSafe: false };

const balanced = () => new Bench(opened("balanced-two-seater"));
const forms = {
  "a new car from the tape": () => balanced().press("T").send({ is: "readings", kept: null }),
  "readings between points": () =>
    balanced()
      .press("T")
      .send({ is: "readings", kept: null })
      .press("pageDown", "pageDown")
      .send({ is: "keptSheet", kept }),
  "readings on the built car": () => balanced().press("M").send({ is: "keptGauges", kept: null }),
  "the upright on the bench": () => balanced().press("U"),
};

describe("what is typed into a form's field that holds something", () => {
  const standing = { text: "14 3/8", typing: "standing" } as const;

  it("takes its place, as a value does on the bench", () => {
    expect(typedInto(standing, "14 3/81", true)).toBe("1");
    expect(typedInto({ text: "in", typing: "standing" }, "inm", true)).toBe("m");
    expect(typedInto({ text: "", typing: "standing" }, "1", true)).toBe("1");
  });

  it("goes on with it where it begins as what goes on does, or once it was typed in", () => {
    for (const more of [" ", ",", "+", "/"]) expect(typedInto(standing, `14 3/8${more}`, true)).toBe(`14 3/8${more}`);
    expect(typedInto({ text: "14", typing: "typed" }, "143", true)).toBe("143");
    expect(typedInto({ text: "14", typing: "stopped" }, "143", true)).toBe("143");
  });

  it("is mended by Backspace and by what is typed further ahead", () => {
    expect(typedInto(standing, "14 3/", true)).toBe("14 3/");
    expect(typedInto(standing, "14 13/8", false)).toBe("14 13/8");
    expect(typedInto({ text: "31", typing: "standing" }, "311", false)).toBe("311");
  });
});

describe.each(Object.entries(forms))("Esc in %s", (_, form) => {
  it("stops what is being typed first and says so, and leaves when it is pressed once more", () => {
    const bench = form();
    const { car } = bench.model.bench;
    const { on } = bench.model.focus;
    expect(bindingOf(bench.press("=14").model, "escape")?.footer).toBeTypeOf("function");
    expect(bench.text()).toContain("Esc stop typing");
    // The slip, and what was typed on behind it.
    bench.press("escape");
    expect(bench.model.focus).toMatchObject({ on, text: "14", typing: "stopped" });
    expect(bench.text()).toContain("Esc once more goes to the bench");
    bench.press("=14 3/8", "escape");
    expect(bench.model.focus).toMatchObject({ on, text: "14 3/8" });
    expect(bench.press("escape").model.focus.on).toBe("bench");
    expect(bench.model.bench.car).toBe(car);
  });

  it("leaves at once where nothing was typed", () => {
    expect(form().press("down", "escape").model.focus.on).toBe("bench");
  });
});
