import { type Key as InkKey, render, useInput } from "ink";
import { describe, expect, it } from "vitest";
import type { FieldCursor } from "../../src/terminal/fieldCursor.ts";
import { encodeForInk } from "../../src/terminal/inkKey.ts";
import { inkKeyboard, inkScreen } from "../../src/terminal/inkStreams.ts";
import { character, type Key, named, paste } from "../../src/terminal/key.ts";

interface Event {
  readonly input: string;
  readonly pressed: readonly string[];
}

function Listener({ onEvent }: { readonly onEvent: (event: Event) => void }) {
  useInput((input, key: InkKey) => {
    const pressed = Object.entries(key).filter(([, isPressed]) => isPressed === true);
    onEvent({ input, pressed: pressed.map(([name]) => name).sort() });
  });
  return null;
}

/** What Ink's own hook makes of keys typed one after the other. */
function eventsOf(keys: readonly Key[], room: FieldCursor["room"] = null): Event[] {
  const events: Event[] = [];
  const keyboard = inkKeyboard();
  const screen = inkScreen(
    () => ({ columns: 80, rows: 24 }),
    () => undefined,
  );
  const instance = render(<Listener onEvent={(event) => events.push(event)} />, {
    stdin: keyboard.stream,
    stdout: screen.stream,
    debug: true,
    exitOnCtrlC: false,
    patchConsole: false,
  });
  for (const key of keys) for (const chunk of encodeForInk(key, { room })) keyboard.type(chunk);
  instance.unmount();
  return events;
}

describe("encodeForInk", () => {
  it("gives Ink exactly one event a key, at once, Escape and what follows it kept apart", () => {
    const keys = [
      character("1"),
      character("Q"),
      character("°"),
      character(" "),
      named("escape"),
      character("a"),
      named("enter"),
      named("backspace"),
      named("left"),
      named("right"),
      named("up"),
      named("down"),
      named("home"),
      named("end"),
      named("pageUp"),
      named("pageDown"),
      named("tab"),
      named("tab", { shift: true }),
      paste("14 3/8\nin"),
    ];
    expect(eventsOf(keys)).toEqual([
      { input: "1", pressed: [] },
      { input: "Q", pressed: ["shift"] },
      { input: "°", pressed: [] },
      { input: " ", pressed: [] },
      { input: "", pressed: ["escape", "meta"] },
      { input: "a", pressed: [] },
      { input: "\r", pressed: ["return"] },
      { input: "", pressed: ["backspace"] },
      { input: "", pressed: ["leftArrow"] },
      { input: "", pressed: ["rightArrow"] },
      { input: "", pressed: ["upArrow"] },
      { input: "", pressed: ["downArrow"] },
      { input: "", pressed: ["home"] },
      { input: "", pressed: ["end"] },
      { input: "", pressed: ["pageUp"] },
      { input: "", pressed: ["pageDown"] },
      { input: "", pressed: ["tab"] },
      { input: "", pressed: ["shift", "tab"] },
      { input: "14 3/8 in", pressed: [] },
    ]);
  });

  it("withholds the keys that Ink's text field takes for others", () => {
    const keys = [named("delete"), named("f1"), named("f1", { ctrl: true }), named("insert"), paste("\n")];
    expect(eventsOf([...keys, character("a", { ctrl: true }), named("left", { alt: true })])).toEqual([]);
  });

  it("moves a field's cursor only as far as its text goes, and spells out what Ink's field does not know", () => {
    const pressed = (key: Key, left: number, right: number) =>
      eventsOf([key], { left, right }).flatMap((event) => event.pressed);
    expect(pressed(named("left"), 1, 0)).toEqual(["leftArrow"]);
    expect(pressed(named("left"), 0, 1)).toEqual([]);
    expect(pressed(named("right"), 0, 1)).toEqual(["rightArrow"]);
    expect(pressed(named("right"), 1, 0)).toEqual([]);
    expect(pressed(named("home"), 3, 2)).toEqual(["leftArrow", "leftArrow", "leftArrow"]);
    expect(pressed(named("end"), 3, 2)).toEqual(["rightArrow", "rightArrow"]);
    expect(pressed(named("delete"), 3, 2)).toEqual(["rightArrow", "backspace"]);
    expect(pressed(named("delete"), 3, 0)).toEqual([]);
    expect(pressed(named("backspace"), 0, 0)).toEqual(["backspace"]);
  });
});
