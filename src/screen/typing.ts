import type { Focus, Model, Typing } from "./model.ts";

/** How a field stands that the cursor has just come to; what was complained of is put right where it stands. */
export function typingAt(text: string, complaint: string | null): Typing {
  return complaint === null || text === "" ? "standing" : "typed";
}

/** What goes on with a reading rather than begins another: " 3/8", ", 14 7/16", "+- 1/4". */
const goesOn = /^[\s,+±/]/;

/**
 * What a field holds after a key: the first thing typed in one that was only come to takes the place of what stood there,
 * as where a value is typed on the bench, unless it goes on with it. Backspace and the cursor keys mend what stands: `atEnd`
 * says whether the cursor was behind all of it.
 */
export function typedInto(
  { text, typing }: { readonly text: string; readonly typing: Typing },
  now: string,
  atEnd: boolean,
): string {
  // A digit put into 31 before its 1 makes 311 as well.
  const added = typing === "standing" && atEnd && now.startsWith(text) ? now.slice(text.length) : "";
  return text === "" || added === "" || goesOn.test(added) ? now : added;
}

type OnForm = Extract<Focus, { readonly typing: Typing }>;

/** The form that has the keyboard while something is typed in its field; null anywhere else. */
function typingIn({ focus }: Pick<Model, "focus">): OnForm | null {
  return "typing" in focus && focus.typing === "typed" ? focus : null;
}

export function isTyping(model: Pick<Model, "focus">): boolean {
  return typingIn(model) !== null;
}

/**
 * Esc in a form stops the typing first, and leaves by itself only when nothing was typed since: what is typed on after a slip
 * goes on in the field, where on the bench each letter would change the car. Null where nothing was being typed.
 */
export function stopTyping(model: Model): Model | null {
  const focus = typingIn(model);
  if (focus === null) return null;
  const notice = { text: "Esc once more goes to the bench; or type on.", tone: "done" } as const;
  return { ...model, focus: { ...focus, typing: "stopped" }, notice };
}
