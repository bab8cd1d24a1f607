/**
 * A double arm in space with invented dimensions, mm, whose numbers below were derived by three independent solutions
 * that agree to 3e-13 (one of them a general rigid-body engine).
 */
export const spatialDoubleArm = `title: Spatial double arm
units: mm
wheelbase: 2400
tire: { radius: 330, width: 180 }
rim: { diameter: 380, width: 150 }
wheel-travel: { bump: 100, droop: 100 }
front:
  linkage: double-arm
  both:
    lower-arm:
      front: { ahead: 150, out: 250, up: 280 }
      rear: { ahead: -150, out: 250, up: 280 }
      joint: { ahead: 10, out: 640, up: 250 }
    upper-arm:
      front: { ahead: 100, out: 290, up: 450 }
      rear: { ahead: -180, out: 290, up: 440 }
      joint: { ahead: -25, out: 610, up: 480 }
    tie-rod:
      outer: { ahead: -120, out: 620, up: 320 }
    wheel: { center: { ahead: 0, out: 720, up: 330 }, camber: 0, toe: 0 }
steering:
  mechanism: rack
  rack: { ahead: -110, up: 330, eye-to-eye: 540, travel: 60, per-turn: 45, wheel-left-moves: right }
`;

/** Rack in its middle, by travel: toe-in, camber, caster, king-pin inclination, contact out, scrub radius, trail. */
export const byTravel: readonly (readonly [number, ...number[]])[] = [
  [-100, -0.28635, 3.93738, 7.78054, 3.51811, -36.5651, 47.1646, 43.7652],
  [-50, -0.13151, 2.04859, 8.21126, 5.39409, -15.5404, 47.2437, 45.9564],
  [0, 0, 0, 8.65254, 7.43141, 0, 47.3913, 48.0435],
  [50, 0.12567, -2.26906, 9.1091, 9.68855, 10.645, 47.6321, 49.9972],
  [100, 0.25974, -4.83828, 9.58865, 12.24309, 16.7961, 48.0063, 51.7659],
];

/** Ride height, by rack to the left, of the left wheel: steer, camber, caster, king-pin inclination, scrub, trail. */
export const byRack: readonly (readonly [number, ...number[]])[] = [
  [-60, 30.89947, 5.27295, 8.73169, 7.81116, 46.6537, 65.9432],
  [-20, 9.67454, 1.47441, 8.67451, 7.53633, 47.1108, 55.1693],
  [20, -9.63514, -1.2616, 8.63392, 7.34271, 47.6767, 39.8514],
  [60, -29.95587, -3.13107, 8.6069, 7.21448, 48.1733, 19.894],
];
