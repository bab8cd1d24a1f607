import { Command } from "commander";
import type { Desk } from "../desk.ts";

export function newCommand(_desk: Desk): Command {
  return new Command("new");
}
