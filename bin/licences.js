import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const permissive = new Set(["MIT", "ISC", "BSD-2-Clause", "BSD-3-Clause", "Apache-2.0", "0BSD", "BlueOak-1.0.0"]);

/** Fonts under the SIL Open Font License may be put into programs and documents; the rest of such a package is permissive. */
permissive.add("MIT AND OFL-1.1");

/**
 * The folders of the npm packages whose code is in the bundle, as esbuild's metafile names its inputs, sorted.
 * @param {import("esbuild").Metafile} metafile
 */
export function bundledPackages(metafile) {
  /** @type {Set<string>} */
  const folders = new Set();
  for (const output of Object.values(metafile.outputs))
    for (const [input, { bytesInOutput }] of Object.entries(output.inputs)) {
      const folder = input.match(/^.*node_modules\/(?:@[^/]+\/)?[^/]+/)?.[0];
      if (folder && bytesInOutput > 0) folders.add(folder);
    }
  return [...folders].sort();
}

/**
 * The licence texts of everything in the bundle, for dist/THIRD-PARTY-LICENSES. Throws when a package's licence is not
 * a permissive one: such a package can't be shipped inside this one.
 * @param {import("esbuild").Metafile} metafile
 * @param {string} root
 */
export function licencesOf(metafile, root) {
  return bundledPackages(metafile)
    .map((folder) => {
      const { name, version, license } = JSON.parse(readFileSync(join(root, folder, "package.json"), "utf8"));
      if (!permissive.has(license))
        throw new Error(`${name} ${version} is licensed ${license}, which is not known to be permissive.`);
      const files = readdirSync(join(root, folder)).filter((entry) => /^licen[cs]e/i.test(entry));
      const texts = files.sort().map((file) => readFileSync(join(root, folder, file), "utf8").trim());
      const text = texts.length > 0 ? texts.join("\n\n") : "(the package carries no licence text)";
      return `${name} ${version} (${license})\n\n${text}\n`;
    })
    .join(`\n${"-".repeat(80)}\n\n`);
}
