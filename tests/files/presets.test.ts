import { expect, test } from "vitest";
import { listPresets, loadPreset, presetNames } from "../../src/files/presets.ts";
import { readCar } from "../../src/vehicle/read.ts";

test("every example car has a title, and says in its first paragraph what is odd about it", () => {
  const presets = listPresets();
  expect(presets.length).toBeGreaterThanOrEqual(4);
  for (const { name, title, about } of presets) {
    expect(name).toMatch(/^[a-z-]+$/);
    expect(title.length).toBeGreaterThan(10);
    expect(about).toMatch(/^[A-Z].{40,400}[.:]$/);
  }
});

test("an example car is read by its name", () => {
  for (const name of presetNames()) {
    const loaded = loadPreset(name);
    if ("complaints" in loaded) throw new Error(loaded.complaints[0]?.message);
    expect(readCar(loaded.text)).not.toHaveProperty("complaints");
  }
});

test("a name that is none gets the nearest one, or where they are listed; and is no way out of the folder", () => {
  expect(loadPreset("rack-ahaed")).toMatchObject({
    complaints: [{ message: expect.stringContaining("did you mean rack-ahead") }],
  });
  for (const name of ["", "../package", "/etc/passwd", "zzz\u001b[2J"])
    expect(loadPreset(name)).toMatchObject({
      complaints: [{ message: expect.stringContaining('the command "rackwright presets" lists them') }],
    });
});
