import { describe, expect, it } from "vitest";
import { capabilitiesOf, type Environment } from "../../src/terminal/capabilities.ts";
import { prepareEnvironment } from "../../src/terminal/environment.ts";

const terminals = { stdin: true, stdout: true };
const usual: Environment = { TERM: "xterm-256color", LANG: "en_US.UTF-8" };

function of(env: Environment, wanted = {}) {
  return capabilitiesOf({ ...usual, ...env }, wanted, terminals);
}

describe("capabilitiesOf", () => {
  it("is interactive where both ends are a terminal that can address its cursor", () => {
    expect(of({})).toEqual({ interactive: true, plain: false, color: "16", unicode: true });
    expect(capabilitiesOf(usual, {}, { stdin: false, stdout: true }).interactive).toBe(false);
    expect(capabilitiesOf(usual, {}, { stdin: true, stdout: false }).interactive).toBe(false);
    for (const TERM of ["vt100", "xterm", "screen", "tmux-256color", "linux", "xterm-256color"]) {
      expect(of({ TERM }).interactive).toBe(true);
    }
  });

  it("talks in lines where the terminal is dumb or nothing is known of it, or when asked to", () => {
    for (const plain of [of({ TERM: "dumb" }), of({ TERM: "" }), of({ TERM: undefined }), of({}, { plain: true })]) {
      expect(plain).toMatchObject({ interactive: false, plain: true });
    }
    expect(capabilitiesOf({ ...usual, TERM: "dumb" }, {}, { stdin: true, stdout: false }).plain).toBe(false);
  });

  it.each([
    [{}, "16"],
    [{ NO_COLOR: "1" }, "none"],
    [{ NO_COLOR: "" }, "16"], // no-color.org: only when not empty
    [{ NO_COLOR: "1", FORCE_COLOR: "1" }, "none"],
    [{ FORCE_COLOR: "0" }, "none"],
    [{ FORCE_COLOR: "false" }, "none"],
    [{ TERM: "vt100" }, "none"],
    [{ TERM: "vt220", FORCE_COLOR: "1" }, "16"],
    [{ TERM: "xterm-mono" }, "none"],
    [{ TERM: "linux" }, "16"],
    [{ TERM: "dumb" }, "none"],
  ] as const)("with %j has colours: %s", (env, color) => {
    expect(of(env).color).toBe(color);
  });

  it.each([
    [{ LANG: "en_US.UTF-8" }, true],
    [{ LANG: "C" }, false],
    [{ LANG: "POSIX" }, false],
    [{ LANG: "C.UTF-8" }, true],
    [{ LANG: "en_US.utf8" }, true],
    [{ LANG: "de_DE.ISO-8859-1" }, false],
    [{ LANG: "en_US.UTF-8", LC_ALL: "C" }, false],
    [{ LANG: "C", LC_CTYPE: "en_US.UTF-8" }, true],
    [{ LANG: "en_US.UTF-8", LC_ALL: "", LC_CTYPE: "POSIX" }, false],
    [{ LANG: "ja_JP.UTF-8" }, false],
    [{ LANG: undefined }, true],
    [{ LANG: undefined, TERM: "vt100" }, false],
  ] as const)("with %j has Unicode: %s", (env, unicode) => {
    expect(of(env).unicode).toBe(unicode);
  });

  it("keeps to ASCII when asked to, whatever the locale", () => {
    expect(of({}, { ascii: true }).unicode).toBe(false);
  });
});

describe("prepareEnvironment", () => {
  const streams = { stdin: { isTTY: true }, stdout: { isTTY: true } };

  it("keeps CI, DEV and a missing NODE_ENV from breaking the screen", () => {
    const env: Record<string, string | undefined> = { ...usual, CI: "1", DEV: "true" };
    prepareEnvironment(env, {}, streams);
    expect(env).toMatchObject({ NODE_ENV: "production", CI: "false", FORCE_COLOR: "1" });
    expect("DEV" in env).toBe(false);
  });

  it("reads the wish for no colour before it takes the variable away", () => {
    const env: Record<string, string | undefined> = { ...usual, NO_COLOR: "1" };
    expect(prepareEnvironment(env, {}, streams).color).toBe("none");
    expect("NO_COLOR" in env).toBe(false);
  });

  it("leaves colour and CI as they are where nobody sits at a terminal", () => {
    const env: Record<string, string | undefined> = { ...usual, CI: "1", NO_COLOR: "1" };
    expect(prepareEnvironment(env, {}, { stdin: {}, stdout: {} }).interactive).toBe(false);
    expect(env).toMatchObject({ CI: "1", NO_COLOR: "1" });
  });
});
