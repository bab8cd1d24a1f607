/** The paths of all numbers in plain data that are not finite. */
export function notFinite(value: unknown, path = ""): readonly string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [path];
  if (Array.isArray(value)) return value.flatMap((each, i) => notFinite(each, `${path}[${i}]`));
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => notFinite(each, `${path}.${key}`));
}
