// Who may import whom under src/. A folder that is not named here may be imported by nobody and may import nothing.
const table = {
  files: ["vehicle"],
  vehicle: [],
  kinematics: [],
  measures: ["kinematics", "vehicle"],
  solve: ["measures", "kinematics", "vehicle"],
  output: ["measures", "vehicle"],
  library: ["vehicle", "kinematics", "measures"],
  cli: ["files", "vehicle", "kinematics", "measures", "solve", "output"],
  terminal: [],
  screen: ["files", "vehicle", "kinematics", "measures", "solve", "output", "terminal"],
};

const fromTable = Object.entries(table).map(([folder, others]) => ({
  name: `${folder}-imports`,
  comment: `src/${folder} may import ${others.length > 0 ? others.join(", ") : "no other folder"}.`,
  severity: "error",
  from: { path: `^src/${folder}/` },
  to: {
    path: "^src/",
    pathNot: [`^src/(${[folder, ...others].join("|")})/`, ...(folder === "output" ? ["^src/solve/"] : [])],
  },
}));

/** @type {import("dependency-cruiser").IConfiguration} */
module.exports = {
  forbidden: [
    ...fromTable,
    {
      name: "output-takes-only-types-of-solve",
      comment: "src/output prints what solve found; it never starts a search.",
      severity: "error",
      from: { path: "^src/output/" },
      to: { path: "^src/solve/", dependencyTypesNot: ["type-only"] },
    },
    {
      name: "known-folders",
      comment: "A new folder under src needs a line in the table.",
      severity: "error",
      from: { path: "^src/[^/]+/", pathNot: `^src/(${Object.keys(table).join("|")})/` },
      to: {},
    },
    {
      name: "nobody-imports-the-entry",
      comment: "src/main.ts puts the parts together; the parts do not know it.",
      severity: "error",
      from: { path: "^src/" },
      to: { path: "^src/[^/]+$" },
    },
    {
      name: "kinematics-stands-alone",
      comment: "The kernel is plain arithmetic: no npm package and nothing of Node.",
      severity: "error",
      from: { path: "^src/kinematics/" },
      to: { pathNot: "^src/" },
    },
    {
      name: "pure-folders-touch-no-machine",
      comment:
        "Reading a car, measuring it and searching are functions of their arguments; files, clocks and processes are not.",
      severity: "error",
      from: { path: "^src/(vehicle|measures|solve|library)/" },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "no-cycles",
      comment: "Two files that need each other are one idea, or hide a third.",
      severity: "error",
      from: { path: "^src/" },
      to: { circular: true },
    },
    {
      name: "resolves",
      comment: "An import that leads nowhere.",
      severity: "error",
      from: { path: "^src/" },
      to: { couldNotResolve: true },
    },
    {
      name: "source-knows-no-tests",
      comment: "The program runs without its tests.",
      severity: "error",
      from: { path: "^src/" },
      to: { path: "^(tests|bin)/" },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    doNotFollow: { path: "node_modules" },
    enhancedResolveOptions: { exportsFields: ["exports"], conditionNames: ["import", "node", "default", "types"] },
  },
};
