import { benchKeys } from "./keys/bench.ts";
import type { Binding, BindingGroup, FocusName } from "./keys/binding.ts";
import { fieldKeys } from "./keys/fields.ts";
import { pageKeys } from "./keys/pages.ts";
import { questionKeys } from "./keys/questions.ts";
import type { Focus, Model } from "./model.ts";
import { viewOf, views } from "./views/views.ts";

/** The one list of keys: what each does while something has the keyboard, and all that is said about it. */
export const keys: Readonly<Record<FocusName, readonly BindingGroup[]>> = {
  bench: benchKeys,
  ...fieldKeys,
  ...pageKeys,
  ...questionKeys,
};

/** The part of the list that works just now. */
export function focusName(focus: Focus): FocusName {
  return focus.on === "question" ? focus.question.about : focus.on;
}

/** The keys of a view's own, which come before all others while it is seen. */
function ownKeys(model: Model): readonly Binding[] {
  return model.focus.on === "bench" ? viewOf(model.view).keys : [];
}

/** The bindings that work just now, those of the view first. */
export function bindingsNow(model: Model): readonly Binding[] {
  return [...ownKeys(model), ...keys[focusName(model.focus)].flatMap((group) => group.bindings)];
}

/** Every key there is, under headings: those of the view that is seen first, those of the other views last. */
export function allKeys(model: Pick<Model, "view">): readonly BindingGroup[] {
  const groupOf = ({ name, keys: bindings }: (typeof views)[number]) => ({
    heading: `IN THE VIEW "${name.toUpperCase()}"`,
    bindings,
  });
  const seen = viewOf(model.view);
  const others = views.filter((each) => each !== seen && each.keys.length > 0);
  return [groupOf(seen), ...Object.values(keys).flat(), ...others.map(groupOf)];
}

/** What a chord means just now; a view's own key that is off lets the common one through. Undefined where it means nothing. */
export function bindingOf(model: Model, chord: string): Binding | undefined {
  const meant = bindingsNow(model).filter((binding) => binding.keys.includes(chord));
  return meant.find((binding) => !binding.off?.(model)) ?? meant[0];
}
