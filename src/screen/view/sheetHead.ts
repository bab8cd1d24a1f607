import { hashOf } from "../../files/hash.ts";
import type { Model } from "../model.ts";
import { linesOf } from "../survey.ts";
import type { Head } from "./head.ts";

/** What stands above a sheet of readings and its points: they are of no car yet, least of all of the one on the bench. */
export function sheetHead({ sheet, focus }: Model): Head | null {
  if (sheet === null || (focus.on !== "survey" && focus.on !== "points")) return null;
  const { known, text } = sheet;
  const title = linesOf(text)?.sheet.survey.title ?? "Readings with a tape";
  const name = known?.path.split(/[\\/]/).at(-1) ?? null;
  if (known === null || name === null) return { title, rights: ["a sheet, in no file yet", "in no file yet"] };
  const state = hashOf(text) === known.hash ? "written" : "NOT WRITTEN";
  return { title, rights: [`sheet ${name}, ${state}`, state] };
}
