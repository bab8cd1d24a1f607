import { fileURLToPath } from "node:url";
import { leanStringWidth, leanStyledText, noDeveloperTools, nodeRequired, yogaAtOnce } from "./lean/plugins.js";

/** @param {string} place from this folder */
const at = (place) => fileURLToPath(new URL(place, import.meta.url));

/**
 * esbuild's settings for everything that is run as a user runs it: the program, and what the benches measure.
 * @satisfies {import("esbuild").BuildOptions}
 */
export const bundleOptions = {
  bundle: true,
  minify: true,
  splitting: true,
  metafile: /** @type {const} */ (true),
  format: /** @type {const} */ ("esm"),
  platform: /** @type {const} */ ("node"),
  target: "node20",
  jsx: /** @type {const} */ ("automatic"),
  legalComments: /** @type {const} */ ("none"),
  logLevel: /** @type {const} */ ("warning"),
  define: {
    "process.env.NODE_ENV": '"production"',
    "process.env.DEV": '"false"',
    "Intl.Segmenter": "GraphemeSegmenter",
  },
  loader: { ".ttf": /** @type {const} */ ("binary") },
  inject: [at("lean/segmenter.js")],
  // Of the two builds in the package, the ES modules leave out what is not used.
  alias: { yaml: at("../node_modules/yaml/browser/index.js") },
  // Some packages are CommonJS and require Node's own modules.
  banner: { js: 'import{createRequire as makeRequire}from"node:module";const require=makeRequire(import.meta.url);' },
  plugins: [noDeveloperTools, leanStringWidth, leanStyledText, yogaAtOnce, nodeRequired],
};
