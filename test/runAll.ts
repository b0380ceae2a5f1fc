/** Everything that must hold, in one command: types, lint, format, import rules, tests, the browser run. */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { relative } from "node:path";

interface Outcome {
  readonly passed: number;
  readonly failures: readonly string[];
}

/** What vitest's JSON report says, as far as it is read here. */
interface Report {
  readonly numPassedTests: number;
  readonly testResults: readonly {
    readonly name: string;
    readonly assertionResults: readonly { readonly status: string; readonly fullName: string }[];
  }[];
}

const RESULTS = "test/output/results";

/** A tool that says only yes or no counts as one check. */
function check(name: string, ...command: string[]): Outcome {
  console.log(`\n${name}: ${command.join(" ")}`);
  const held = run(command) === 0;
  return { passed: held ? 1 : 0, failures: held ? [] : [name] };
}

/** Runs one test project and counts its tests; a run that dies without counting is one failure. */
function tests(project: string): Outcome {
  const file = `${RESULTS}/${project}.json`;
  rmSync(file, { force: true });
  console.log(`\ntests: ${project}`);
  const code = run([
    "vitest",
    "run",
    "--project",
    project,
    "--reporter=default",
    "--silent=passed-only",
    "--reporter=json",
    `--outputFile.json=${file}`,
  ]);
  const { numPassedTests, testResults } = readReport(file);
  const failures = testResults.flatMap(({ name, assertionResults }) =>
    assertionResults
      .filter(({ status }) => status === "failed")
      .map(({ fullName }) => `${relative(".", name)}: ${fullName}`),
  );
  const silentFailure = failures.length === 0 && (code !== 0 || numPassedTests === 0);
  return { passed: numPassedTests, failures: silentFailure ? [`tests: ${project}`] : failures };
}

function readReport(file: string): Report {
  try {
    return JSON.parse(readFileSync(file, "utf8")) as Report;
  } catch {
    return { numPassedTests: 0, testResults: [] };
  }
}

function run([tool = "", ...args]: string[]): number {
  return spawnSync("npx", ["--no-install", tool, ...args], { stdio: "inherit" }).status ?? 1;
}

mkdirSync(RESULTS, { recursive: true });
const outcomes = [
  check("types of the pure folders", "tsc", "-p", "tsconfig.pure.json"),
  check("types of teaching", "tsc", "-p", "tsconfig.teaching.json"),
  check("types of the app", "tsc", "-p", "tsconfig.ui.json"),
  check("types of command line and tests", "tsc", "-p", "tsconfig.node.json"),
  check("lint", "eslint", ".", "--max-warnings", "0"),
  check("format", "prettier", "--check", "--log-level", "warn", "."),
  check("one-way imports", "depcruise", "src", "--config", ".dependency-cruiser.cjs"),
  tests("unit"),
  tests("browser"),
  // The browser run has just built the app there.
  check("size of the build", "tsx", "test/sizeCheck.ts", "test/output/site"),
];
const passed = outcomes.reduce((sum, outcome) => sum + outcome.passed, 0);
const failures = outcomes.flatMap((outcome) => outcome.failures);
console.log(`\n${passed} passed, ${failures.length} failed`);
// Once more at the end: what failed may stand thousands of lines above.
for (const failure of failures) console.log(`failed: ${failure}`);
process.exit(failures.length === 0 && passed > 0 ? 0 : 1);
