/** Text that libraries print while the screen is up. */
export interface Held {
  /** From now on keep it. */
  hold(): void;
  /** Print it after all, now that there is a place for it, and keep nothing more. */
  release(): void;
}

const mostHeld = 65536;

/**
 * Keep what anything prints on these streams off the screen, and print it once the screen is gone. The screen itself
 * is written past the streams.
 */
export function holdWrites(streams: readonly NodeJS.WriteStream[]): Held {
  let releases: (() => void)[] = [];
  return {
    hold() {
      if (releases.length === 0) releases = streams.map(holdOne);
    },
    release() {
      const now = releases;
      releases = [];
      for (const release of now) release();
    },
  };
}

function holdOne(stream: NodeJS.WriteStream): () => void {
  const write = stream.write;
  let text = "";
  stream.write = (chunk: Uint8Array | string, ...rest: unknown[]): boolean => {
    if (text.length < mostHeld) text += typeof chunk === "string" ? chunk : Buffer.from(chunk).toString();
    const written = rest.findLast((argument) => typeof argument === "function");
    if (typeof written === "function") setImmediate(() => written());
    return true;
  };
  return () => {
    stream.write = write;
    if (text !== "") stream.write(text);
  };
}
