import { type SettledSheet, settleSheet, type UnsettledSheet } from "../solve/survey/settled.ts";
import { mayHoldProducts, prepareProducts } from "../vehicle/units/products.ts";

/** What a desk answers: what a sheet's text comes to. */
export interface SurveyAnswer {
  readonly text: string;
  readonly outcome: SettledSheet | UnsettledSheet;
}

/** Where this module stands, for the thread that is to load it. */
export const address = import.meta.url;

/** Brings one sheet together at a time, the last one asked for: those that came meanwhile and are old again are passed over. */
export function surveyDesk(answer: (answer: SurveyAnswer) => void): (text: string | null) => void {
  let wanted: string | null = null;

  async function go(text: string): Promise<void> {
    if (mayHoldProducts(text)) await prepareProducts();
    if (wanted !== text) return;
    try {
      answer({ text, outcome: settleSheet(text) });
    } catch (error) {
      answer({ text, outcome: { complaint: `The readings could not be brought together: ${String(error)}.` } });
    }
  }

  return (text) => {
    wanted = text;
    if (text !== null) setImmediate(() => go(text));
  };
}
