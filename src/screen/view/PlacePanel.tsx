import { Text } from "ink";
import { Pose } from "../../kinematics/slots.ts";
import { blameOf, blameWords } from "../../measures/blame.ts";
import { wheelFigures } from "../../measures/figures.ts";
import type { Study } from "../../measures/study.ts";
import { degrees, type Length, rodAngleGrade, toeWay } from "../../output/words.ts";
import type { Place } from "../model.ts";
import { gauge, line, needle } from "./gauge.ts";
import { atEnd } from "./readout.ts";
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
  const rack = gauge(gaugeColumns, -study.rackTravel.left, study.rackTravel.right, [
    { at: 0, glyph: line },
    study.zero === null ? null : { at: -study.zero, glyph: "○" },
    { at: -place.rack, glyph: needle },
  ]);
  const travel = (at: number) =>
    gauge(gaugeColumns, -droop, bump, [
      { at: 0, glyph: line },
      { at, glyph: needle },
    ]);
  const gauges = [
    ["Rack", rack, sideways(study, place.rack, length)],
    ["Left", travel(place.left), upDown(place.left, length)],
    ["Right", travel(place.right), upDown(place.right, length)],
  ] as const;
  return (
    <>
      {gauges.slice(0, rows).map(([name, drawn, where]) => (
        <Text key={name} wrap="truncate">
          {`${name.padEnd(nameColumns)}${drawn} ${where}`}
        </Text>
      ))}
      <Angles study={study} place={place} length={length} columns={columns} rows={rows - gauges.length} />
    </>
  );
}

function sideways(study: Study, rack: number, length: Length): string {
  const end = atEnd(study, rack);
  if (end !== null) return `at its ${end} end`;
  const size = length(Math.abs(rack));
  return size === length(0) ? "on its middle" : `${size} ${rack > 0 ? "left" : "right"}`;
}

function upDown(travel: number, length: Length): string {
  const size = length(Math.abs(travel));
  return size === length(0) ? "ride height" : `${size} ${travel > 0 ? "bump" : "droop"}`;
}

/** An angle of one wheel, by its figure's id, with a short name and a builder's way to say it. */
const live: readonly { readonly id: string; readonly name: string; readonly say: (angle: number) => string }[] = [
  { id: "steer", name: "Steer", say: (angle) => `${degrees(Math.abs(angle))} ${angle >= 0 ? "left" : "right"}` },
  { id: "toe", name: "Toe", say: (angle) => `${degrees(Math.abs(angle), 2)} ${toeWay(angle)}` },
  { id: "transmissionAngle", name: "Rod to arm", say: (angle) => `${degrees(angle)}${gradeMark(angle)}` },
  { id: "camber", name: "Camber", say: (angle) => `${degrees(Math.abs(angle), 2)} ${angle > 0 ? "out" : "in"}` },
  { id: "caster", name: "Caster", say: (angle) => degrees(angle, 2) },
];

function gradeMark(angle: number): string {
  const grade = rodAngleGrade(angle);
  return grade === "good" ? "" : grade === "doubtful" ? " (!)" : " (!!)";
}

const angleNameColumns = 11;

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
  const pose = study.pose(place.rack, place.left, place.right);
  const blame = blameOf(pose, 0);
  if (blame !== null) {
    const lines = wrapped(`DOES NOT REACH here: the ${blameWords(blame, length)}.`, columns);
    return lines.slice(0, rows).map((text) => (
      <Text key={text} {...tones.bad} wrap="truncate">
        {text}
      </Text>
    ));
  }
  const each = Math.floor((columns - angleNameColumns) / 2);
  return (
    <>
      <Text bold wrap="truncate">
        {`${" ".repeat(angleNameColumns)}${"LEFT".padEnd(each)}RIGHT`}
      </Text>
      {live.slice(0, Math.max(0, rows - 1)).map(({ id, name, say }) => {
        const figure = wheelFigures.find((one) => one.id === id);
        const said = [Pose.Left, Pose.Right].map((at) => {
          const value = figure?.read(pose, at, study) ?? null;
          return value === null ? "-" : say(value);
        });
        return (
          <Text key={id} wrap="truncate">
            {`${name.padEnd(angleNameColumns)}${said[0]?.padEnd(each)}${said[1]}`}
          </Text>
        );
      })}
    </>
  );
}
