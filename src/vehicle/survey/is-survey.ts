/** Whether a text is a sheet of readings between a front end's points: it names the front end as no car file does. */
export function isSurvey(text: string): boolean {
  return /^linkage *:/m.test(text) && /^mechanism *:/m.test(text) && !/^front *:/m.test(text);
}
