#!/usr/bin/env node
import { existsSync } from "node:fs";

const { argv, env, stdin, stdout, stderr, versions } = process;
const program = new URL("../dist/main.js", import.meta.url);
if (Number.parseInt(versions.node, 10) < 20) {
  stderr.write(`rackwright needs Node 20 or newer; this is Node ${versions.node}.\n`);
  process.exitCode = 2;
} else if (!existsSync(program)) {
  stderr.write("rackwright is not built yet: run `npm ci` or `npm run build` in its folder first.\n");
  process.exitCode = 2;
} else {
  const { main } = await import(program.href);
  process.exitCode = await main(argv.slice(2), { stdin, stdout, stderr, env });
}
