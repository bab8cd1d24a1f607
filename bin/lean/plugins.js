import { readFileSync } from "node:fs";
import { builtinModules, createRequire } from "node:module";
import { fileURLToPath } from "node:url";

/** @typedef {import("esbuild").Plugin} Plugin */

/**
 * Ink reaches for React's developer tools, and through them for a web socket; a shop's screen has no use for either.
 * @type {Plugin}
 */
export const noDeveloperTools = {
  name: "no-developer-tools",
  setup(build) {
    build.onLoad({ filter: /[\\/]ink[\\/]build[\\/]devtools\.js$/ }, () => ({ contents: "" }));
  },
};

/**
 * Every string-width in the bundle is the lean one.
 * @type {Plugin}
 */
export const leanStringWidth = {
  name: "lean-string-width",
  setup(build) {
    const lean = fileURLToPath(new URL("stringWidth.js", import.meta.url));
    build.onResolve({ filter: /^string-width$/ }, ({ importer }) => (importer === lean ? undefined : { path: lean }));
  },
};

/**
 * What Ink takes styled lines apart with, and puts them together, is the lean one.
 * @type {Plugin}
 */
export const leanStyledText = {
  name: "lean-styled-text",
  setup(build) {
    const lean = fileURLToPath(new URL("styledText.js", import.meta.url));
    build.onResolve({ filter: /^@alcalzone\/ansi-tokenize$/ }, ({ importer }) =>
      importer === lean ? undefined : { path: lean },
    );
  },
};

/**
 * Yoga fetches its WebAssembly from a data: URL, which starts Node's HTTP client, and compiles it in the background
 * while nothing else is left to do. Its loader takes a function that makes the instance instead: here, at once.
 * @type {Plugin}
 */
export const yogaAtOnce = {
  name: "yoga-at-once",
  setup(build) {
    const inlined = /"data:application\/octet-stream;base64,([\w+/=]+)"/;
    const call = /await loadYoga\(\)/;
    build.onLoad({ filter: /[\\/]yoga-layout[\\/]dist[\\/]binaries[\\/].*\.js$/ }, ({ path }) => {
      const source = readFileSync(path, "utf8");
      if (!inlined.test(source)) throw new Error(`${path} no longer holds its WebAssembly as expected.`);
      return {
        contents: source.replace(inlined, '"data:application/octet-stream;base64,"').concat(`
          export const bytes = Buffer.from("${source.match(inlined)?.[1]}", "base64");`),
      };
    });
    build.onLoad({ filter: /[\\/]yoga-layout[\\/]dist[\\/]src[\\/]index\.js$/ }, ({ path }) => {
      const source = readFileSync(path, "utf8");
      if (!call.test(source)) throw new Error(`${path} no longer loads its WebAssembly as expected.`);
      return {
        contents: source.replace("import loadYoga from", "import loadYoga, { bytes } from").replace(
          call,
          `await loadYoga({
            instantiateWasm(imports, done) {
              done(new WebAssembly.Instance(new WebAssembly.Module(bytes), imports));
              return {};
            },
          })`,
        ),
      };
    });
  },
};

/** Parts of Node that are named at the start and hardly ever used: Ink asks for a size that a terminal tells, and so on. */
const seldom = new Set(["child_process", "crypto"]);

/**
 * Node's own modules are required, not imported: an import makes an ES module of each, which touches everything that it
 * exports, standard input and output and the streams of files among them. Those seldom used are required when something
 * that they export is first asked for.
 * @type {Plugin}
 */
export const nodeRequired = {
  name: "node-required",
  setup(build) {
    const names = new Set(builtinModules);
    build.onResolve({ filter: /^[\w:/]+$/ }, ({ path, kind, namespace }) => {
      const name = path.replace(/^node:/, "");
      const ours = kind === "import-statement" ? names.has(name) : kind === "require-call" && seldom.has(name);
      return ours && namespace !== "node-required" ? { path: name, namespace: "node-required" } : undefined;
    });
    build.onLoad({ filter: /./, namespace: "node-required" }, ({ path }) => {
      const whole = `require("node:${path}")`;
      if (!seldom.has(path)) return { contents: `module.exports = ${whole}` };
      const exported = Object.keys(createRequire(import.meta.url)(path));
      return {
        contents: `module.exports = { ${exported.map((name) => `get ${name}() { return ${whole}.${name} }`)} }`,
      };
    });
  },
};
