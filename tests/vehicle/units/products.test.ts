import { expect, test, vi } from "vitest";

test("sums are read at once, products only once they are prepared", async () => {
  vi.resetModules();
  const { readLength } = await import("../../../src/vehicle/units/length.ts");
  const { mayHoldProducts, prepareProducts } = await import("../../../src/vehicle/units/products.ts");
  expect(readLength("12 1/2 + 3/8", "in")).toMatchObject({ mm: 327.025 });
  expect(readLength("2 * 3", "in")).toMatchObject({ complaint: expect.stringContaining("try again") });
  await prepareProducts();
  expect(readLength("2 * 3", "in")).toMatchObject({ mm: 152.4 });
  for (const text of ["2*3", "2 * 3", "(2)", "2\u00d73", "6\u00f72", "3 in / 2", "6/3/2", '3"/2'])
    expect(mayHoldProducts(text), text).toBe(true);
  for (const text of ["14 3/8", "14-3/8 in", "12 1/2 + 3/8", "365 mm - 1/2 in", "1' 2 1/2\""])
    expect(mayHoldProducts(text), text).toBe(false);
});
