import { Text } from "ink";
import { blameWords } from "../../measures/blame.ts";
import type { Study } from "../../measures/study.ts";
import { type Length, travelPlace } from "../../output/words.ts";
import { here, inputHere, inputName } from "../here.ts";
import type { Place } from "../model.ts";
import { gauge, line, needle } from "./gauge.ts";
import { tones } from "./tone.ts";
import { wrapped } from "./wrap.ts";

const nameColumns = 7;
/** The longest place in words, "2 15/16 in droop". */
const placeColumns = 16;
const longestGauge = 41;

/** Where the rack and the wheels stand, as gauges with their ends marked, and the angles that the wheels have there. */
export function PlacePanel({
  study,
  place,
  length,
  columns,
  rows,
}: {
  readonly study: Study;
  readonly place: Place;
  readonly length: Length;
  readonly columns: number;
  readonly rows: number;
}) {
  const gaugeColumns = Math.min(longestGauge, columns - nameColumns - placeColumns - 1);
  const { bump, droop } = study.wheelTravel;
  const input = gauge(gaugeColumns, -study.inputTravel.left, study.inputTravel.right, [
    { at: 0, glyph: line },
    study.zero === null ? null : { at: -study.zero, glyph: "○" },
    { at: -place.input, glyph: needle },
  ]);
  const travel = (at: number) =>
    gauge(gaugeColumns, -droop, bump, [
      { at: 0, glyph: line },
      { at, glyph: needle },
    ]);
  const wheels = [
    ["Left", travel(place.left), travelPlace(place.left, length)],
    ["Right", travel(place.right), travelPlace(place.right, length)],
  ] as const;
  const gauges = [
    [inputName(study), input, inputHere(study, place.input, length)],
    ...(study.suspended ? wheels : []),
  ] as const;
  const shown = gauges.slice(0, rows).map(([name, drawn, where]) => `${name.padEnd(nameColumns)}${drawn} ${where}`);
  return (
    <>
      <Text wrap="truncate">{shown.join("\n")}</Text>
      <Angles study={study} place={place} length={length} columns={columns} rows={rows - gauges.length} />
    </>
  );
}

const angleNameColumns = 8;

/** The angles at this place, as many as there are rows for; or what keeps the wheels from getting here. */
function Angles({
  study,
  place,
  length,
  columns,
  rows,
}: {
  readonly study: Study;
  readonly place: Place;
  readonly length: Length;
  readonly columns: number;
  readonly rows: number;
}) {
  const readings = here(study, place);
  if ("wheel" in readings) {
    const lines = wrapped(`DOES NOT REACH here: the ${blameWords(readings, length)}.`, columns);
    return lines.slice(0, rows).map((text) => (
      <Text key={text} {...tones.bad} wrap="truncate">
        {text}
      </Text>
    ));
  }
  const each = Math.ceil((columns - angleNameColumns) / 2);
  const shown = readings
    .slice(0, Math.max(0, rows))
    .map(({ brief, left, right }) => `${brief.padEnd(angleNameColumns)}${`L ${left}`.padEnd(each)}R ${right}`);
  return shown.length === 0 ? null : <Text wrap="truncate">{shown.join("\n")}</Text>;
}
