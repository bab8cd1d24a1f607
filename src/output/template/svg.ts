import { htmlWords } from "../paper/escape.ts";
import { fixed } from "../words.ts";
import { type At, boxOf, type Drawing, type Shape } from "./flat.ts";
import { lettered } from "./lettering.ts";

/** White around a drawing, mm. */
const margin = 10;

/** A drawing as SVG 1.1 at full size: one unit is a millimetre, in groups called cut, mark and text. */
export function drawingSvg(drawing: Drawing): string {
  const shapes = lettered(drawing);
  const { left, right, low, high } = boxOf(shapes);
  const [wide, tall] = [right - left + 2 * margin, high - low + 2 * margin];
  const n = (value: number) => fixed(value, 3);
  const x = (value: number) => n(value - left + margin);
  const y = (value: number) => n(high - value + margin);
  const spot = (radius: number, [ax, ay]: At, angle: number) =>
    `${x(ax + radius * Math.cos(angle))} ${y(ay + radius * Math.sin(angle))}`;
  const say = (shape: Shape): string => {
    switch (shape.is) {
      case "line":
        return `<line x1="${x(shape.from[0])}" y1="${y(shape.from[1])}" x2="${x(shape.to[0])}" y2="${y(shape.to[1])}"${shape.thin ? ' stroke-dasharray="none"' : ""}/>`;
      case "circle":
        return `<circle cx="${x(shape.at[0])}" cy="${y(shape.at[1])}" r="${n(shape.radius)}"/>`;
      case "arc": {
        const large = shape.to - shape.from > Math.PI ? 1 : 0;
        const { at, radius, from, to } = shape;
        return `<path d="M${spot(radius, at, from)}A${n(radius)} ${n(radius)} 0 ${large} 0 ${spot(radius, at, to)}"/>`;
      }
      case "words": {
        const [left, low] = [x(shape.at[0]), y(shape.at[1])];
        // SVG turns clockwise; moved first, since simple readers turn about nothing else than the corner.
        const place =
          shape.turn === undefined
            ? `x="${left}" y="${low}"`
            : `transform="translate(${left} ${low}) rotate(${n((-shape.turn * 180) / Math.PI)})"`;
        return `<text ${place} font-size="${n(shape.high)}">${htmlWords(shape.text)}</text>`;
      }
    }
  };
  const layer = (shape: Shape) => (shape.is === "words" ? "text" : shape.layer);
  const group = (name: string, look: string) =>
    `<g id="${name}" ${look}>\n${shapes
      .filter((shape) => layer(shape) === name)
      .map(say)
      .join("\n")}\n</g>`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(wide)}mm" height="${n(tall)}mm" viewBox="0 0 ${n(wide)} ${n(tall)}">`,
    `<title>${htmlWords(drawing.title)}</title>`,
    group("cut", 'fill="none" stroke="#000" stroke-width="0.35"'),
    group("mark", 'fill="none" stroke="#000" stroke-width="0.18" stroke-dasharray="4 1.5"'),
    group("text", 'fill="#000" stroke="none" font-family="sans-serif"'),
    "</svg>\n",
  ].join("\n");
}
