#!/usr/bin/env node
const { argv, env, stdin, stdout, stderr, versions } = process;
const program = "../dist/main.js";
const refuse = (/** @type {string} */ why) => {
  stderr.write(`rackwright: ${why}\n`);
  return { main: () => 2 };
};
// Looking whether the program is there would load much of Node before it is needed.
const missing = (/** @type {NodeJS.ErrnoException} */ error) =>
  error.code === "ERR_MODULE_NOT_FOUND"
    ? refuse("the program is not built yet: run `npm ci` or `npm run build` in its folder first.")
    : Promise.reject(error);
const { main } =
  Number.parseInt(versions.node, 10) < 20
    ? refuse(`Node 20 or newer is needed; this is Node ${versions.node}.`)
    : await import(program).catch(missing);
process.exitCode = await main(argv.slice(2), { stdin, stdout, stderr, env });
