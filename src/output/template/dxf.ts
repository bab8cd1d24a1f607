import { DxfWriter, point3d, Units } from "@tarikjabiri/dxf";
import { printable, toAscii } from "../printable.ts";
import type { At, Drawing } from "./flat.ts";
import { lettered } from "./lettering.ts";

/** Colours of the layers, by DXF's own numbers: black on white, blue, green. */
const layers = { cut: 7, mark: 5, text: 3 } as const;

/** A text's height is that of a capital, which is so much of a font's size (usual for plain fonts; no source). */
const capital = 0.7;

const degrees = (angle: number): number => ((((angle * 180) / Math.PI) % 360) + 360) % 360;

/** A drawing as DXF in millimetres, on layers called cut, mark and text. Its words are plain ASCII, which every reader knows. */
export function drawingDxf(drawing: Drawing): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  for (const [name, color] of Object.entries(layers)) dxf.addLayer(name, color, "CONTINUOUS");
  const place = ([x, y]: At) => point3d(x, y, 0);
  for (const shape of lettered(drawing)) {
    dxf.setCurrentLayerName(shape.is === "words" ? "text" : shape.layer);
    if (shape.is === "line") dxf.addLine(place(shape.from), place(shape.to));
    else if (shape.is === "circle") dxf.addCircle(place(shape.at), shape.radius);
    else if (shape.is === "arc") dxf.addArc(place(shape.at), shape.radius, degrees(shape.from), degrees(shape.to));
    else {
      const turn = shape.turn === undefined ? {} : { rotation: degrees(shape.turn) };
      dxf.addText(place(shape.at), capital * shape.high, toAscii(printable(shape.text)), turn);
    }
  }
  return dxf.stringify();
}
