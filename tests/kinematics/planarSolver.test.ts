import { GcsWrapper, init_planegcs_module } from "@salusoft89/planegcs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Corner, Drawn, Mechanism, Point } from "../../src/kinematics/drawn.ts";
import { expectClose } from "../close.ts";
import { frontOf, placesAt } from "../oracles/kernel.ts";
import { distance, point } from "../oracles/vectors.ts";

/**
 * Steering that lies in one plane, king pins and pivots upright, against a general planar constraint solver: it is told points and the
 * distances between them and nothing of steering. Invented cars, mm; the plan view's axes are x ahead and y to the driver's left.
 */

type Spots = Readonly<Record<string, Point>>;

let solver: GcsWrapper;
beforeAll(async () => {
  const wasm = await init_planegcs_module();
  solver = new GcsWrapper(new wasm.GcsSystem());
});
afterAll(() => solver.destroy_gcs_module());

/** Where the free points go when the held ones are where they are now, each bar as long as it was drawn. */
function placed(start: Spots, held: Spots, bars: readonly (readonly [string, string])[], drawn: Spots): Spots {
  solver.clear_data();
  for (const [id, { x, y }] of Object.entries({ ...start, ...held }))
    solver.push_primitive({ id, type: "point", x, y, fixed: id in held });
  for (const [from, to] of bars) {
    const long = distance(drawn[from], drawn[to]);
    solver.push_primitive({ id: `${from}-${to}`, type: "p2p_distance", p1_id: from, p2_id: to, distance: long });
  }
  solver.solve();
  solver.apply_solution();
  const found = solver.sketch_index.get_primitives().flatMap((each) => (each.type === "point" ? [each] : []));
  const spots = Object.fromEntries(found.map(({ id, x, y }) => [id, point(x, y, level)]));
  for (const [from, to] of bars)
    expect(Math.abs(distance(spots[from], spots[to]) - distance(drawn[from], drawn[to]))).toBeLessThan(1e-7);
  return spots;
}

const level = 300;
const flat = (x: number, y: number): Point => point(x, y, level);
const kingPin = 600;
const tab = flat(-120, 585);
const mirrored = ({ x, y, z }: Point) => point(x, -y, z);

function onKingPins(mechanism: Mechanism): Drawn {
  const pin = { lowerJoint: point(0, kingPin, 200), upperJoint: point(0, kingPin, 400) };
  const corner: Corner = {
    tieRodOuter: tab,
    tieRodLength: null,
    wheelCenter: point(0, kingPin + 100, level),
    camber: 0,
    toe: 0,
  };
  return {
    linkage: { kind: "fixed-kingpin", left: pin, right: pin },
    mechanism,
    left: corner,
    right: corner,
    range: { inputLow: -60, inputHigh: 60, travelLow: 0, travelHigh: 0 },
  };
}

const pins: Spots = { leftPin: flat(0, kingPin), rightPin: flat(0, -kingPin) };
const wheelBars = [
  ["leftPin", "leftTab"],
  ["leftTab", "leftEye"],
  ["rightPin", "rightTab"],
  ["rightTab", "rightEye"],
] as const;

/** Both tabs as the kernel places them, in the car's own plan view. */
function tabsOf(drawn: Drawn, input: number): Spots {
  const { left, right } = placesAt(frontOf(drawn), input, 0);
  return { leftTab: left.tieRodOuter, rightTab: mirrored(right.tieRodOuter) };
}

function expectSameTabs(found: Spots, kernel: Spots, at: string): void {
  // The solver ends within 1e-7 mm of every length, as is checked; places are asked ten times as coarsely, since bars meet at an angle.
  for (const id of ["leftTab", "rightTab"])
    expectClose(distance(found[id], kernel[id]), 0, { abs: 1e-6 }, `${id}, ${at}`);
}

describe("a planar constraint solver places the tabs where the kernel does", () => {
  test("of a rack off the car's middle, over its whole travel", () => {
    const [leftEye, rightEye] = [flat(-150, 240), flat(-150, -200)];
    const drawn = onKingPins({
      kind: "rack",
      ahead: -150,
      up: level,
      eyeToEye: leftEye.y - rightEye.y,
      offset: (leftEye.y + rightEye.y) / 2,
      tilt: 0,
      straightAhead: 0,
    });
    const asDrawn = { ...pins, leftEye, rightEye, leftTab: tab, rightTab: mirrored(tab) };
    for (const way of [-1, 1]) {
      let spots: Spots = asDrawn;
      for (let rack = 0; rack <= 60; rack += 5) {
        const moved = { leftEye: flat(-150, leftEye.y + way * rack), rightEye: flat(-150, rightEye.y + way * rack) };
        spots = placed(spots, { ...pins, ...moved }, wheelBars, asDrawn);
        expectSameTabs(spots, tabsOf(drawn, way * rack), `rack ${way * rack}`);
      }
    }
  });

  test("of a relay whose arms are not alike, over its whole turn", () => {
    const pitmanPivot = flat(-60, 260);
    const pitman = flat(-210, 235);
    const drawnSpots = {
      ...pins,
      pitman,
      idlerPivot: flat(-70, -250),
      idler: flat(-225, -240),
      leftEye: flat(-215, 170),
      rightEye: flat(-220, -190),
      leftTab: tab,
      rightTab: mirrored(tab),
    };
    const up = point(0, 0, 1);
    const turn = 1 / 12;
    const drawn = onKingPins({
      kind: "relay",
      pitmanPivot,
      pitmanAxis: up,
      pitmanJoint: pitman,
      idlerPivot: drawnSpots.idlerPivot,
      idlerAxis: up,
      idlerJoint: drawnSpots.idler,
      leftEye: drawnSpots.leftEye,
      rightEye: drawnSpots.rightEye,
      turn,
      straightAhead: 0,
    });
    const bars = [
      ...wheelBars,
      ["idlerPivot", "idler"],
      ["pitman", "idler"],
      ["pitman", "leftEye"],
      ["idler", "leftEye"],
      ["pitman", "rightEye"],
      ["idler", "rightEye"],
    ] as const;
    for (const way of [-1, 1]) {
      let spots: Spots = drawnSpots;
      for (let degrees = 0; degrees <= 24; degrees += 2) {
        const angle = (way * degrees * Math.PI) / 180;
        const [x, y] = [pitman.x - pitmanPivot.x, pitman.y - pitmanPivot.y];
        const turned = flat(
          pitmanPivot.x + x * Math.cos(angle) - y * Math.sin(angle),
          pitmanPivot.y + x * Math.sin(angle) + y * Math.cos(angle),
        );
        spots = placed(spots, { ...pins, idlerPivot: drawnSpots.idlerPivot, pitman: turned }, bars, drawnSpots);
        expectSameTabs(spots, tabsOf(drawn, angle / turn), `pitman ${way * degrees}°`);
      }
    }
  });
});
