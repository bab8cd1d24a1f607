type Form = typeof import("./surveyForm.ts");

let fetched: Form | null = null;

/** Fetches the form for readings between points: a start does not wait for it. */
export async function prepareSurvey(): Promise<void> {
  fetched ??= await import("./surveyForm.ts");
}

/** The form, if it was fetched. */
export function surveyForm(): Form | null {
  return fetched;
}

/** The form, which stands on the screen only once it was fetched. */
export function openForm(): Form {
  if (fetched === null) throw new Error("the form for readings between points was not fetched");
  return fetched;
}
