/** What the program may count on in the terminal it was started in. */
export interface Capabilities {
  /** A person sits at a terminal that can address its cursor. */
  readonly interactive: boolean;
  /** Values in sentences instead of a screen: asked for, or all that the terminal can do. */
  readonly plain: boolean;
  readonly color: "none" | "16";
  /** Characters beyond ASCII are shown. */
  readonly unicode: boolean;
}

/** The part of the environment that says what a terminal can do. */
export type Environment = Readonly<Record<string, string | undefined>>;

/** What was asked for on the command line. */
export interface Wanted {
  readonly ascii?: boolean;
  readonly plain?: boolean;
}

/** What the terminal can do, read from the environment; both streams must be terminals for any of it. */
export function capabilitiesOf(
  env: Environment,
  wanted: Wanted,
  isTerminal: { readonly stdin: boolean; readonly stdout: boolean },
): Capabilities {
  const terminals = isTerminal.stdin && isTerminal.stdout;
  const dumb = isDumb(env);
  const plain = wanted.plain === true || (terminals && dumb);
  return {
    interactive: terminals && !plain,
    plain,
    color: isTerminal.stdout && !dumb ? colorOf(env) : "none",
    unicode: wanted.ascii !== true && hasUnicode(env),
  };
}

function isDumb(env: Environment): boolean {
  return (env.TERM ?? "") === "dumb" || ((env.TERM ?? "") === "" && !isWindows(env));
}

function isWindows(env: Environment): boolean {
  return env.OS === "Windows_NT";
}

/** NO_COLOR with any text in it forbids colour (no-color.org); FORCE_COLOR asks for it where TERM does not promise it. */
function colorOf(env: Environment): Capabilities["color"] {
  if (env.NO_COLOR) return "none";
  const forced = env.FORCE_COLOR;
  if (forced === "0" || forced === "false") return "none";
  if (forced !== undefined) return "16";
  return /^(vt\d|.*-m$|.*-mono$)/.test(env.TERM ?? "") ? "none" : "16";
}

/**
 * The locale's character set, by the order in POSIX: LC_ALL, then LC_CTYPE, then LANG, the first that is set. In the
 * locales of Chinese, Japanese and Korean, terminals may draw lines and degree signs two columns wide, so there the
 * frame is drawn in ASCII. With no locale at all only an old terminal is taken at its word.
 */
function hasUnicode(env: Environment): boolean {
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG;
  if (!locale) return isWindows(env) || !/^(vt\d|$)/.test(env.TERM ?? "");
  return /utf-?8/i.test(locale) && !/^(zh|ja|ko)/i.test(locale);
}
