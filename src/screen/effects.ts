import { keepDraft, readDraft } from "../files/draft.ts";
import { discardLeftover, Journal } from "../files/journal.ts";
import { isTaken, newFile, saveText } from "../files/save.ts";
import type { Job } from "../solve/job.ts";
import { isUnsaved } from "./bench.ts";
import { journalName, listCars, openCar, shortly } from "./files.ts";
import { openGauges, writeGauges } from "./gaugeFiles.ts";
import { openForm, prepareSurvey, surveyForm } from "./lateSurvey.ts";
import type { Model, SheetSource } from "./model.ts";
import { settler } from "./settler.ts";
import type { Effect, KeptSheet, Message } from "./turn.ts";

/** What the effects reach: the way back into the model, the way out, and the surroundings. */
export interface World {
  readonly env: NodeJS.ProcessEnv;
  readonly send: (message: Message) => void;
  /** With what is to be said once the terminal is as it was, if anything. */
  readonly quit: (words: string | null) => void;
}

/** Does effects, and keeps the journal of the car on the bench. */
export interface Doer {
  /** `model` is the one that the effect came with. */
  do(effect: Effect, model: Model): void;
}

/** For how many milliseconds long work is done, a piece at a time, before keys and frames have their turn. */
const slice = 8;

/** Does long work between keys: one at a time, the last one asked for. */
function worker(send: World["send"]) {
  let current: { readonly key: string; readonly job: Job<unknown> } | null = null;
  const go = (mine: NonNullable<typeof current>): void => {
    if (current !== mine) return;
    try {
      goOn(mine);
    } catch (error) {
      current = null;
      send({ is: "failed", words: `It could not be worked out: ${String(error)}.` });
    }
  };
  const goOn = (mine: NonNullable<typeof current>): void => {
    const { key, job } = mine;
    const until = performance.now() + slice;
    let done = false;
    while (!done && performance.now() < until) done = job.step(1);
    if (done) current = null;
    send({ is: "worked", key, progress: job.progress(), done, result: job.best() });
    if (!done) setImmediate(go, mine);
  };
  return {
    start: (key: string, job: Job<unknown>): void => {
      const mine = { key, job };
      current = mine;
      setImmediate(go, mine);
    },
    halt: (): void => {
      current = null;
    },
  };
}

/** What does the effects of a screen that begins with this model. */
export function doer(first: Model, world: World): Doer {
  let journal = journalOf(first);
  const work = worker(world.send);
  const surveys = settler(world.send);

  function journalOf({ origin }: Model): Journal {
    return new Journal(journalName(origin.source), origin.saved, world.env);
  }

  function save({ path, known, next }: Effect & { do: "save" }, text: string): void {
    const outcome = saveText(path, text, known);
    if (outcome.saved) {
      // The edits are in the file; what is edited from here on is kept beside that file's name.
      journal.close();
      journal = new Journal(journalName({ from: "file", path: outcome.path }), text, world.env);
      world.send({ is: "saved", path: outcome.path, hash: outcome.hash, next });
    } else if ("complaint" in outcome) {
      world.send({ is: "failed", words: `It ${outcome.complaint}: ${path}` });
    } else if (outcome.ask === "gone") {
      // Nothing is there to be lost.
      save({ do: "save", path, known: null, next }, text);
    } else {
      world.send({ is: "doubted", about: outcome.ask, path, found: outcome.found, next });
    }
  }

  function write({ path, text }: Effect & { do: "write" }): void {
    const outcome = saveText(path, text, null);
    if (outcome.saved) world.send({ is: "written", path: outcome.path });
    else if ("complaint" in outcome) world.send({ is: "failed", words: `${path} ${outcome.complaint}.` });
    else world.send({ is: "failed", words: `There is a file ${path} already. Type another name.` });
  }

  function begin({ path, text }: Effect & { do: "begin" }): void {
    const outcome = newFile(path, text);
    if (outcome.saved) {
      world.send({ is: "begun", path: outcome.path });
    } else if ("complaint" in outcome) world.send({ is: "failed", words: `${path} ${outcome.complaint}.` });
  }

  function keepReadings({ answers }: Effect & { do: "keepReadings" }): void {
    const complaint = keepDraft(answers, world.env);
    if (complaint !== null) world.send({ is: "failed", words: complaint });
  }

  async function open({ source }: Effect & { do: "open" }): Promise<void> {
    const opened = await openCar(source, world.env);
    if ("complaints" in opened) {
      world.send({ is: "failed", words: shortly(opened) });
      return;
    }
    journal = new Journal(journalName(source), opened.car.text, world.env);
    world.send({ is: "opened", opened });
  }

  function cannotOpen(error: unknown): void {
    world.send({ is: "failed", words: `It cannot be opened: ${String(error)}.` });
  }

  async function takeSheet(source: SheetSource): Promise<void> {
    await prepareSurvey();
    const { openSheet, keptSheet } = openForm();
    const opened = await openSheet(source);
    if ("complaints" in opened) world.send({ is: "failed", words: shortly(opened) });
    else keptSheet(world.env, (kept) => world.send({ is: "sheetOpened", opened, kept }));
  }

  /** Once the form for it is fetched. */
  function withKeptSheet(take: (kept: KeptSheet | null) => void): void {
    const give = () => openForm().keptSheet(world.env, take);
    if (surveyForm() === null) prepareSurvey().then(give).catch(cannotOpen);
    else give();
  }

  function record({ what, settles }: Effect & { do: "journal" }, { bench, origin }: Model): void {
    // Changes that were found are kept on as the single ones that they are, and of the text that they were made on.
    if (settles?.base) journal = new Journal(journalName(origin.source), settles.base, world.env);
    const steps = settles?.steps ?? [{ text: bench.car.text, what }];
    const complaint = steps.reduce<string | null>(
      (failed, step) => failed ?? journal.record(step.text, step.what),
      null,
    );
    if (complaint !== null) world.send({ is: "failed", words: complaint });
    else if (settles !== null) discardLeftover(settles.path);
  }

  function end(): void {
    work.halt();
    surveys.end();
  }

  function quit(model: Model): void {
    if (!isUnsaved(model)) journal.close();
    end();
    world.quit(null);
  }

  function leave(model: Model): void {
    if (isUnsaved(model) && journal.path === null) {
      world.send({ is: "failed", words: "Your changes could not be kept safe: save them, or d drops them." });
      return;
    }
    end();
    const { source } = model.origin;
    const name = source.from === "file" ? source.path : source.id;
    world.quit(`Not saved, but kept: open ${name} again, and your changes are offered.`);
  }

  const acts: { readonly [Name in Effect["do"]]: (effect: Effect & { do: Name }, model: Model) => void } = {
    journal: record,
    forget: () => journal.close(),
    discard: ({ offer }) => discardLeftover(offer.path),
    save: (effect, model) => save(effect, model.bench.car.text),
    write,
    begin,
    keepReadings,
    lookFor: ({ path }) => {
      if (isTaken(path)) world.send({ is: "taken", path });
    },
    keptSheet: () => withKeptSheet((kept) => world.send({ is: "keptSheet", kept })),
    countSheet: () => {
      if (readDraft(world.env, "survey") === null) return;
      withKeptSheet((kept) => world.send({ is: "sheetCounted", count: openForm().countRead(kept?.text ?? "") }));
    },
    keepSheet: ({ sheet }) => {
      const complaint = openForm().keepSheet(sheet, world.env);
      if (complaint !== null) world.send({ is: "failed", words: complaint });
    },
    openSheet: ({ source }) => {
      takeSheet(source).catch(cannotOpen);
    },
    writeSheet: ({ path, text, known }) => world.send(openForm().writeSheet(path, text, known)),
    settle: ({ text }) => surveys.ask(text),
    keptGauges: () => world.send({ is: "keptGauges", kept: readDraft(world.env, "gauges") }),
    keepGauges: ({ answers }) => {
      const complaint = keepDraft(answers, world.env, "gauges");
      if (complaint !== null) world.send({ is: "failed", words: complaint });
    },
    openGauges: ({ name }) => {
      openGauges(name).then(world.send, cannotOpen);
    },
    writeGauges: ({ path, text }) => world.send(writeGauges(path, text)),
    readings: () => world.send({ is: "readings", kept: readDraft(world.env) }),
    work: ({ key, job }) => work.start(key, job),
    halt: () => work.halt(),
    open: (effect) => {
      open(effect).catch(cannotOpen);
    },
    list: () => world.send({ is: "listed", choices: listCars(process.cwd()) }),
    quit: (_, model) => quit(model),
    leave: (_, model) => leave(model),
  };

  function act<Name extends Effect["do"]>(effect: Effect & { do: Name }, model: Model): void {
    const { [effect.do as Name]: does } = acts;
    does(effect, model);
  }

  return { do: act };
}
