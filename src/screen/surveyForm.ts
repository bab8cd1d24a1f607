/** All that the form for readings between points takes, in one: it is fetched when it is first asked for. */
export { acceptSurvey, leavePoints, moveInSurvey, movePoints, surveyActs, typeInSurvey } from "./acts/survey.ts";
export {
  failedInSurvey,
  leaveSurvey,
  openSurvey,
  sheetOpened,
  sheetWritten,
  toSurvey,
} from "./acts/surveyFile.ts";
export { sheetSettled } from "./acts/surveyLine.ts";
export { keepSheet, keptSheet, openSheet, writeSheet } from "./sheetFiles.ts";
export { countRead } from "./survey.ts";
export { PointsPage } from "./view/PointsPage.tsx";
export { SurveyPage } from "./view/SurveyPage.tsx";
export { sheetHead } from "./view/sheetHead.ts";
