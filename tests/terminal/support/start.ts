import { prepareEnvironment } from "../../../src/terminal/environment.ts";

/** Starts the harness as the program starts its screen: the environment first, Ink afterwards. */
const capabilities = prepareEnvironment(process.env, { ascii: process.argv.includes("--ascii") }, process);
const { runApp } = await import("./app.tsx");
process.exitCode = await runApp(capabilities);
