import { describe, expect, it } from "vitest";
import type { Column } from "../../src/output/column.ts";
import { csv, field } from "../../src/output/csv.ts";

interface Row {
  readonly name: string | null;
  readonly length: number | null;
  readonly angle: number;
}

const columns: readonly Column<Row>[] = [
  { path: ["name"], kind: "word", sign: "", read: (row) => row.name },
  { path: ["left", "length"], kind: "length", sign: "", read: (row) => row.length },
  { path: ["angle"], kind: "angle", sign: "", read: (row) => row.angle },
];

describe("CSV, after RFC 4180", () => {
  it("has a heading with units and ends every line with CR LF", () => {
    expect(csv(columns, [{ name: "left", length: 25.4, angle: Math.PI }], "in")).toBe(
      "name,left.length (in),angle (deg)\r\nleft,1,180\r\n",
    );
  });

  it("leaves a field empty where there is no value, and keeps zero and minus", () => {
    expect(csv(columns, [{ name: null, length: null, angle: 0 }], "mm").split("\r\n")[1]).toBe(",,0");
    expect(csv(columns, [{ name: null, length: -2.5, angle: 0 }], "mm").split("\r\n")[1]).toBe(",-2.5,0");
  });

  it("does not round", () => {
    const [, line] = csv(columns, [{ name: "a", length: 1 / 3, angle: 0 }], "mm").split("\r\n");
    expect(Number(line.split(",")[1])).toBe(1 / 3);
  });

  it("quotes a field that holds a comma, a quote or a line break, and doubles its quotes", () => {
    expect(field('say "no", twice')).toBe('"say ""no"", twice"');
    expect(field("two\r\nlines")).toBe('"two\r\nlines"');
    expect(field("plain words")).toBe("plain words");
  });

  it.each(["=1+1", "+cmd", "-2+3", "@SUM(A1)", "\t=1"])("keeps the text %j from being run as a formula", (text) => {
    expect(field(text).replace(/^"/, "").startsWith("'")).toBe(true);
  });

  it("leaves negative numbers numbers", () => {
    expect(field("-1.25e-7")).toBe("-1.25e-7");
  });
});
