import { type Cells, cellsOf, unknownCells } from "../../src/terminal/cells.ts";
import { diff, freshPen } from "../../src/terminal/diff.ts";
import { type Carried, leastBytes } from "./leastBytes.ts";
import { quantile, report } from "./pace.ts";
import { scenes } from "./scenes.ts";
import { watch } from "./watch.ts";

/**
 * Bytes a key at 80 by 24 as a ratio to the least there can be (leastBytes.ts), the worst step of each scene and the
 * whole of it. Both hold the marks of a synchronised update, 16 bytes, which an update must have. The last line of a
 * scene says what is paid for looking up the place again after characters of doubtful width.
 */
const size = { columns: 80, rows: 24 };
const marks = 16;
const look = { color: "16", unicode: true } as const;

for (const { name, frames } of scenes) {
  const screens: Cells[] = frames.map((frame) => cellsOf(frame, size, look));
  let { pen } = diff(unknownCells(size), screens[0], freshPen);
  let carried: Carried = {
    cell: pen.place?.x === undefined ? undefined : pen.place.y * size.columns + pen.place.x,
    style: pen.style,
  };
  let careless = carried;
  const ratios: number[] = [];
  const total = { sent: 0, least: 0, careless: 0 };
  screens.slice(1).forEach((next, step) => {
    const shown = screens[step];
    const update = diff(shown, next, pen);
    const least = leastBytes(shown, next, carried, true);
    const least2 = leastBytes(shown, next, careless, false);
    pen = update.pen;
    carried = least.carried;
    careless = least2.carried;
    if (least.bytes === 0) return;
    const sent = Buffer.byteLength(update.bytes);
    ratios.push(sent / (least.bytes + marks));
    total.sent += sent;
    total.least += least.bytes + marks;
    total.careless += least2.bytes + marks;
  });
  const worst = quantile(ratios, 1);
  const mean = Math.round(total.sent / ratios.length);
  report(`bytes/${name}/worst-step-of-${ratios.length}`, worst, 1.2);
  report(`bytes/${name}/in-all-(${mean}-a-step)`, total.sent / total.least, 1.2);
  report(`bytes/${name}/in-all-were-widths-certain`, total.sent / total.careless);
}

// The program itself, as it comes out of the pseudo-terminal: choosing, changing, turning the wheel, help, a value typed.
const arrows = { up: "\x1b[A", down: "\x1b[B", right: "\x1b[C", left: "\x1b[D" };
const pressed = [
  ...Array(6).fill(arrows.down),
  ...Array(6).fill(arrows.right),
  ...Array(3).fill(arrows.left),
  ...Array(2).fill(arrows.up),
  ..."lljjiikk??",
  "\x1b",
  "\r",
  ..."12 1/2",
  "\r",
];
const steps = await watch(["bin/rackwright.js"], pressed);
const own: number[] = [];
let sent = 0;
let most = 0;
steps.slice(1).forEach(({ bytes, screen }, step) => {
  const least = leastBytes(steps[step].screen, screen, { cell: undefined, style: 0 }, true).bytes;
  if (least === 0) return;
  own.push(bytes / (least + marks));
  sent += bytes;
  most += least + marks;
});
report(`bytes/program/worst-key-of-${own.length}`, quantile(own, 1), 1.2);
report(`bytes/program/in-all-(${Math.round(sent / own.length)}-a-key)`, sent / most, 1.2);
