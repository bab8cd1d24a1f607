import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { answerOf, knownAgainst } from "../../bin/audit.js";

const read = (name: string) => readFileSync(fileURLToPath(new URL(`../../${name}`, import.meta.url)), "utf8");

/** The names in DEVELOPERS.md's table of packages, by whether it says that they are in the program. */
function tableOf(text: string): ReadonlyMap<string, boolean> {
  const [, rows = ""] = /^\| package \| in the program \| for \|\n.*\n((?:\|.*\n)+)/m.exec(text) ?? [];
  return new Map(
    rows
      .trimEnd()
      .split("\n")
      .flatMap((row) => {
        const [, names = "", is = ""] = row.split("|").map((cell) => cell.trim());
        expect(["yes", "no"], row).toContain(is);
        return names.split(", ").map((name): [string, boolean] => [name, is === "yes"]);
      }),
  );
}

const table = tableOf(read("DEVELOPERS.md"));

test("every package that is worked with has its reason in DEVELOPERS.md, and no other", () => {
  const { dependencies, devDependencies, optionalDependencies, peerDependencies } = JSON.parse(read("package.json"));
  expect({ dependencies, optionalDependencies, peerDependencies }).toEqual({});
  expect([...table.keys()].sort()).toEqual(Object.keys(devDependencies).sort());
});

test("the table tells rightly which of them are in the program, by what the bundle was made of", () => {
  const bundled = [...read("dist/THIRD-PARTY-LICENSES").matchAll(/^(@?[\w./-]+) \d+\.\d+\.\d+\S* \(/gm)].map(
    ([, name]) => name,
  );
  expect(bundled.length).toBeGreaterThan(20);
  for (const [name, isBundled] of table) expect(bundled.includes(name), name).toBe(isBundled);
});

describe("the audit of what is bundled", () => {
  const vulnerabilities = {
    one: {
      severity: "high",
      nodes: ["node_modules/one", "node_modules/test-tool/node_modules/one"],
      via: [{ title: "Reads too much", url: "https://example.invalid/1" }, "two"],
    },
    tool: { severity: "critical", nodes: ["node_modules/tool"], via: ["one"] },
  };

  test("tells what is known against a bundled package, and not what is known against a tool", () => {
    expect(knownAgainst(["node_modules/one", "node_modules/three"], vulnerabilities)).toEqual([
      "one (high): Reads too much (https://example.invalid/1); by way of two",
    ]);
    expect(knownAgainst(["node_modules/three"], vulnerabilities)).toEqual([]);
  });

  test("a copy that only a tool has is not the bundled one", () => {
    const other = { one: { ...vulnerabilities.one, nodes: ["node_modules/test-tool/node_modules/one"] } };
    expect(knownAgainst(["node_modules/one"], other)).toEqual([]);
  });

  test("says plainly that nothing was asked where the registry does not answer", () => {
    expect(answerOf("")).toEqual({ unanswered: "there is no answer" });
    expect(answerOf('{"message":"405 Method Not Allowed"}')).toEqual({ unanswered: "405 Method Not Allowed" });
    expect(answerOf('{"vulnerabilities":{}}')).toEqual({ vulnerabilities: {} });
  });
});
