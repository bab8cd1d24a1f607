import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "./build.js";
import { bundledPackages } from "./licences.js";

/** @typedef {{ severity: string, nodes: string[], via: (string | { title: string, url: string })[] }} Known */

/**
 * What is known against the packages of which something is in the bundle, a line each: npm's answer on all that is
 * installed, without those that are only worked with.
 * @param {readonly string[]} folders of the bundled packages, from the root
 * @param {Readonly<Record<string, Known>>} vulnerabilities by name, as `npm audit --json` has them
 */
export function knownAgainst(folders, vulnerabilities) {
  return Object.entries(vulnerabilities).flatMap(([name, { severity, nodes, via }]) => {
    const inBundle = nodes.filter((node) => folders.includes(node));
    const why = via.map((each) => (typeof each === "string" ? `by way of ${each}` : `${each.title} (${each.url})`));
    return inBundle.length === 0 ? [] : [`${name} (${severity}): ${why.join("; ")}`];
  });
}

/**
 * What npm answered: what is known against which package, or why nothing can be told.
 * @param {string} json
 * @returns {{ vulnerabilities: Record<string, Known> } | { unanswered: string }}
 */
export function answerOf(json) {
  try {
    const { vulnerabilities, message } = JSON.parse(json);
    return vulnerabilities ? { vulnerabilities } : { unanswered: message ?? "its answer is of no known form" };
  } catch {
    return { unanswered: "there is no answer" };
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const root = fileURLToPath(new URL("..", import.meta.url));
  const folders = bundledPackages(await build());
  for (const folder of folders) {
    const { name, version } = JSON.parse(readFileSync(join(root, folder, "package.json"), "utf8"));
    console.log(`in the bundle: ${name} ${version}`);
  }
  const answer = answerOf(spawnSync("npm", ["audit", "--json"], { cwd: root, encoding: "utf8" }).stdout);
  if ("unanswered" in answer) {
    console.log(`NOT AUDITED: the registry could not be asked: ${answer.unanswered}`);
    process.exitCode = 2;
  } else {
    const known = knownAgainst(folders, answer.vulnerabilities);
    console.log(known.length === 0 ? "Nothing is known against any of these." : known.join("\n"));
    process.exitCode = known.length === 0 ? 0 : 1;
  }
}
