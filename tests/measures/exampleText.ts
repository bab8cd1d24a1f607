/** The example car of the car file's description, as a builder writes it. */
export const exampleText = `title: Rail two-seater, front widened, offset rack
units: in
wheelbase: 68
tire: { radius: 10.75, width: 7 }        # loaded radius
rim: { diameter: 10, width: 5 }
wheel-travel: { bump: 3, droop: 3 }      # of the wheel centre, from ride height
front:
  linkage: double-arm
  both:                                   # left and right alike; left: and right: override any part
    lower-arm:
      front: { ahead: 4,    out: 6,    up: 7.5 }
      rear:  { ahead: -4.5, out: 6,    up: 7.5 }
      joint: { ahead: 0.2,  out: 21.5, up: 7 }
    upper-arm:
      front: { ahead: 2.5,  out: 8.5,  up: 13.25 }
      rear:  { ahead: -4.5, out: 8.5,  up: 13 }
      joint: { ahead: -0.7, out: 20.3, up: 14 }
    tie-rod:
      outer: { ahead: -4.5, out: 19.75, up: 8.5 }
    wheel: { center: { ahead: 0, out: 24.5, up: 10.75 }, camber: -0.5, toe: 0.1 }
steering:
  mechanism: rack
  rack: { ahead: -5.5, up: "8 5/8", eye-to-eye: 13, offset: -2.5, travel: 2, per-turn: 1.75, wheel-left-moves: right }
`;
