import js from "@eslint/js";
import globals from "globals";
import tseslint from "typescript-eslint";

const pureFolders = [
  "kernel",
  "stats",
  "air",
  "profile",
  "sniff",
  "features",
  "nose",
  "transfer",
  "teaching",
  "finding",
  "diet",
  "meals",
  "virtual",
  "flows",
  "text",
  "views",
];

const noClockNoChance = {
  "no-restricted-properties": [
    "error",
    { object: "Math", property: "random", message: "Chance arrives as an argument." },
    { object: "Date", property: "now", message: "Time arrives as an argument." },
    { object: "performance", property: "now", message: "Time arrives as an argument." },
  ],
  "no-restricted-syntax": [
    "error",
    {
      selector: "NewExpression[callee.name='Date'][arguments.length=0]",
      message: "Time arrives as an argument.",
    },
  ],
  "no-console": "error",
};

export default tseslint.config(
  { ignores: ["dist/", "node_modules/", "models/", "test/output/", "test/fixtures/"] },
  js.configs.recommended,
  ...tseslint.configs.strict,
  {
    languageOptions: { globals: { ...globals.browser, ...globals.node } },
    rules: {
      eqeqeq: "error",
      "max-lines": ["error", { max: 400, skipBlankLines: true, skipComments: true }],
      "max-lines-per-function": ["error", { max: 80, skipBlankLines: true, skipComments: true }],
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
    },
  },
  { files: pureFolders.map((folder) => `src/${folder}/**`), rules: noClockNoChance },
  {
    // Typed-array reads in numeric code: bounds were just checked.
    files: [
      "src/stats/**",
      "src/features/**",
      "src/nose/**",
      "src/transfer/**",
      "src/teaching/**",
      "src/virtual/**",
    ],
    rules: { "@typescript-eslint/no-non-null-assertion": "off" },
  },
  {
    files: ["test/**", "**/*.config.*"],
    rules: {
      "max-lines-per-function": "off",
      "@typescript-eslint/no-non-null-assertion": "off",
    },
  },
  { files: ["**/*.cjs"], languageOptions: { sourceType: "commonjs", globals: globals.node } },
);
