/** The one-way line of src/: each folder may import itself and what is listed, nothing else. */
const mayImport = {
  kernel: [],
  stats: ["kernel"],
  air: ["kernel"],
  profile: ["kernel"],
  sniff: ["kernel", "stats", "air", "profile"],
  features: ["kernel", "stats", "air", "sniff"],
  nose: ["kernel", "stats", "features", "sniff"],
  transfer: ["kernel", "stats", "features", "sniff", "nose", "finding"],
  teaching: ["kernel", "stats", "features", "sniff", "nose", "finding"],
  finding: ["kernel", "stats", "features", "sniff", "nose"],
  diet: ["kernel"],
  meals: ["kernel", "stats"],
  virtual: ["kernel", "air", "profile"],
  flows: ["kernel", "stats", "air", "sniff", "nose", "finding", "diet", "meals", "profile"],
  text: ["kernel"],
  views: ["kernel", "stats", "profile", "sniff", "nose", "finding", "diet", "meals", "flows", "text"],
  radio: ["kernel"],
  store: ["kernel", "sniff", "nose", "finding", "meals", "diet"],
  worker: ["kernel", "stats", "features", "sniff", "nose", "teaching", "finding", "transfer"],
  screens: ["views"],
  peripheral: ["kernel", "stats", "profile", "sniff", "virtual"],
};
const pure =
  "^src/(kernel|stats|air|profile|sniff|features|nose|finding|diet|meals|virtual|flows|text|views|teaching|transfer)/";

const lineRules = Object.entries(mayImport).map(([folder, allowed]) => ({
  name: `${folder}-keeps-to-the-line`,
  severity: "error",
  from: { path: `^src/${folder}/` },
  to: { path: "^src/", pathNot: `^src/(${[folder, ...allowed].join("|")})/` },
}));

module.exports = {
  forbidden: [
    ...lineRules,
    { name: "no-cycles", severity: "error", from: {}, to: { circular: true } },
    {
      name: "main-imports-app-only",
      severity: "error",
      from: { path: "^src/main.tsx$" },
      to: { path: "^src/", pathNot: "^src/app/" },
    },
    {
      name: "nobody-imports-app-or-cli",
      severity: "error",
      from: { path: "^src/", pathNot: "^src/(app|main|cli|peripheral)" },
      to: { path: "^src/(app|cli|peripheral|main)" },
    },
    {
      name: "tensorflow-only-in-teaching",
      severity: "error",
      from: { path: "^src/", pathNot: "^src/teaching/" },
      to: { path: "tensorflow" },
    },
    {
      name: "teaching-only-from-worker-and-cli",
      severity: "error",
      from: { path: "^src/", pathNot: "^src/(teaching|worker|cli)/" },
      to: { path: "^src/teaching/" },
    },
    {
      name: "dexie-only-in-store",
      severity: "error",
      from: { path: "^src/", pathNot: "^src/store/" },
      to: { path: "node_modules/dexie" },
    },
    {
      name: "dbus-only-in-peripheral",
      severity: "error",
      from: { path: "^src/", pathNot: "^src/peripheral/" },
      to: { path: "node_modules/dbus-native" },
    },
    {
      name: "pure-has-no-node",
      severity: "error",
      from: { path: pure },
      to: { dependencyTypes: ["core"] },
    },
    { name: "models-are-read-never-imported", severity: "error", from: {}, to: { path: "^models/" } },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.base.json" },
    doNotFollow: { path: "node_modules" },
    exclude: { path: "^dist/" },
  },
};
