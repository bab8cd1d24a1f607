import type { Model } from "../model.ts";
import type { Act } from "../turn.ts";
import { filled, Lines } from "../view/Lines.tsx";
import type { MapPage } from "./mapPage.ts";
import { rangePage } from "./rangePage.ts";
import { sensitivityPage } from "./sensitivityPage.ts";
import { pageKey, spotOf } from "./spot.ts";
import { tabPage, whyPlaneStays, whyTabStays } from "./tabPage.ts";
import type { Room, View, ViewKey } from "./view.ts";
import { stopKey } from "./work.ts";

const name = "Map";

const pages: readonly MapPage[] = [rangePage, tabPage.page, sensitivityPage];

function pageOf(model: Model): MapPage {
  return pages[spotOf(model, name).page] ?? rangePage;
}

function arrow(chord: string, shown: string, footer: string | null, down: number, right: number): ViewKey {
  const act: Act = (model, pressed) => pageOf(model).move(down, right)(model, pressed);
  return { keys: [chord], shown, footer, help: `over the map: ${chord}`, act };
}

/** Why a key of the tab's page does nothing. */
function onTab(why: (model: Model) => string | null): (model: Model) => string | null {
  return (model) => (pageOf(model) === tabPage.page ? why(model) : "It moves the tab on the page of the tab: Space.");
}

const keys: readonly ViewKey[] = [
  arrow("up", "↑", null, -1, 0),
  arrow("down", "↓", "↑↓←→ look", 1, 0),
  arrow("left", "←", null, 0, -1),
  arrow("right", "→", null, 0, 1),
  pageKey(
    name,
    pages.map((page) => page.name),
  ),
  {
    keys: ["enter"],
    shown: "Enter",
    footer: "Enter tab here",
    help: "where may the tab go: move it to the cursor, on the sides that Tab says",
    off: onTab(whyTabStays),
    act: tabPage.put,
  },
  {
    keys: ["n"],
    shown: "n",
    footer: "n N number",
    help: "map the next number",
    act: (model, chord) => pageOf(model).other(1)(model, chord),
  },
  {
    keys: ["N"],
    shown: "N",
    footer: null,
    help: "map the number before",
    act: (model, chord) => pageOf(model).other(-1)(model, chord),
  },
  {
    keys: ["z"],
    shown: "z",
    footer: "z from behind",
    help: "where may the tab go: seen from above (ahead) or from behind (up)",
    off: onTab(whyPlaneStays),
    act: tabPage.plane,
  },
  stopKey("the map"),
];

/** Any number over steering and travel; where the tie-rod tab may go; what must be held tightly. */
export const map: View = {
  name,
  key: "6",
  help: "any number over steering and travel; where the tie-rod tab may go; what to hold tightly",
  keys,
  work: (model) => pageOf(model).work?.(model) ?? null,
  explain: (model) => pageOf(model).explain(model),
  Body,
};

function Body({ model, room }: { readonly model: Model; readonly room: Room }) {
  const { columns, rows } = room;
  return <Lines columns={columns} lines={filled(pageOf(model).lines(model, columns, rows), rows)} />;
}
