import { Command } from "commander";
import type { Desk } from "../desk.ts";

export function presetsCommand(_desk: Desk): Command {
  return new Command("presets");
}
