import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { commandLine } from "../../src/cli/commandLine.js";
import { judgedSniff } from "../../src/finding/judgedSniff.js";
import { parseNose } from "../../src/nose/noseFile.js";
import type { Sniff } from "../../src/sniff/sniff.js";
import { readSniffFile, writeSniffFile } from "../../src/sniff/sniffFile.js";
import { SECOND_ID, servedToTwo } from "../transfer/twoSniffers.js";

describe("the words after nidor", () => {
  it("assess has its usual choices", () => {
    expect(commandLine(["assess", "a.jsonl"])).toMatchObject({
      kind: "assess",
      file: "a.jsonl",
      split: "plate",
      folds: 5,
      seed: 1,
      acceptedMissRate: 0.1,
      groups: undefined,
    });
  });

  it("assess takes all its options", () => {
    const words =
      "assess a.jsonl --split occasion --folds 3 --seed 7 --group meat --group fish --accepted-miss-rate 0.05 --json out";
    expect(commandLine(words.split(" "))).toMatchObject({
      split: "occasion",
      folds: 3,
      seed: 7,
      groups: ["meat", "fish"],
      acceptedMissRate: 0.05,
      jsonOut: "out",
    });
  });

  it("assess takes folds that were dealt elsewhere", () => {
    expect(commandLine(["assess", "a.jsonl", "--given-folds", "folds.json"])).toMatchObject({
      kind: "assess",
      givenFolds: "folds.json",
    });
  });

  it("refresh takes a nose, fresh samples, and what it was taught on if that is still there", () => {
    expect(commandLine("refresh nose fresh --old old --out new --seed 3 --name n".split(" "))).toEqual({
      kind: "refresh",
      nose: "nose",
      fresh: "fresh",
      old: "old",
      out: "new",
      name: "n",
      seed: 3,
    });
  });

  it.each([[["--help"]], [["-h"]], [["assess", "--help"]], [["check", "nose", "-h"]]])(
    "takes %j for a request for help",
    (words) => expect(commandLine(words)).toEqual({ kind: "help" }),
  );

  it.each([
    [[]],
    [["sniff"]],
    [["assess"]],
    [["assess", "a", "b"]],
    [["assess", "a", "--folds", "1"]],
    [["assess", "a", "--folds", ""]],
    [["assess", "a", "--split", "sweep"]],
    [["assess", "a", "--accepted-miss-rate", "1"]],
    [["assess", "a", "--colour", "red"]],
    [["teach", "a"]],
    [["check", "nose"]],
    [["refresh", "nose"]],
    [["transfer", "nose", "first"]],
  ])("does not understand %j", (words) => {
    expect(commandLine(words).kind).toBe("wrong");
  });
});

const folder = mkdtempSync(join(tmpdir(), "nidor-"));
const nidor = (...words: string[]) =>
  spawnSync(process.execPath, ["--import", "tsx", "src/cli/nidor.ts", ...words], { encoding: "utf8" });

describe("help", () => {
  // Common practice: help that was asked for is an answer, help after a slip is not.
  it("asked for, goes to the output and ends with 0; unasked, to the errors and ends with 2", () => {
    const asked = nidor("--help");
    expect([asked.status, asked.stderr]).toEqual([0, ""]);
    for (const command of ["assess", "teach", "refresh", "transfer", "check"])
      expect(asked.stdout).toContain(`  nidor ${command} `);
    const slipped = nidor("sniff");
    expect([slipped.status, slipped.stdout]).toEqual([2, ""]);
    expect(slipped.stderr).toContain(asked.stdout);
  });
});

describe("transfer", () => {
  it("prints the gain and writes a nose that the check command reads; says how many pairs are missing", () => {
    const folder = mkdtempSync(join(tmpdir(), "nidor-"));
    const served = servedToTwo({ onFirst: 16, onSecond: 20, seed: 5 });
    const file = (name: string, sniffs: readonly Sniff[]) => {
      const path = join(folder, name);
      writeFileSync(path, writeSniffFile(sniffs));
      return path;
    };
    const first = file(
      "first",
      served.filter(({ sniffer }) => sniffer.id !== SECOND_ID),
    );
    const onSecond = served.filter(({ sniffer }) => sniffer.id === SECOND_ID);
    const out = join(folder, "moved.json");
    const run = nidor("transfer", "models/demo.nose.json", first, file("second", onSecond), "--out", out);
    expect(run.stderr).toBe("");
    expect(run.status).toBe(0);
    expect(run.stdout).toContain("16 pairs; chosen by leaving each out");
    const checked = nidor("check", out, file("one", onSecond.slice(-1)));
    expect(checked.status).toBe(0);
    expect(checked.stdout).not.toContain("otherSniffer");
    const few = nidor("transfer", "models/demo.nose.json", first, file("few", onSecond.slice(0, 2)));
    expect([few.status, few.stderr]).toEqual([1, expect.stringContaining("3 more are needed")]);
  });
});

describe("assess on given folds", () => {
  const folds = (written: unknown) => {
    const path = join(folder, "folds.json");
    writeFileSync(path, typeof written === "string" ? written : JSON.stringify(written));
    return ["assess", "models/demo.sniffs.jsonl", "--given-folds", path];
  };

  it.each<[what: string, written: unknown, words: RegExp, ...options: string[]]>([
    ["no JSON", "folds: 1, 2", /folds\.json: .*JSON/],
    ["a fold that is no whole number", { fish: { a: 0.5 } }, /folds\.json: fish\.a: .*integer/],
    [
      "a sniff that the samples do not hold",
      { fish: { nobody: 0 } },
      /name a sniff that is not here: nobody/,
    ],
    [
      "a group that the groups asked for leave out",
      { fish: {} },
      /there are folds of fish, which the groups asked for leave out/,
      "--group",
      "dairy",
    ],
  ])("refuses %s, and says where", (_, written, words, ...options) => {
    const run = nidor(...folds(written), ...options);
    expect([run.status, run.stdout]).toEqual([1, ""]);
    expect(run.stderr).toMatch(words);
  });
});

describe("refresh", () => {
  it("names the file with too few plates that are fresh, and changes nothing", () => {
    const run = nidor("refresh", "models/demo.nose.json", "models/demo.sniffs.jsonl");
    expect(run.status).toBe(1);
    expect(run.stderr).toContain("holds 0 plates that models/demo.nose.json was not taught");
  });
});

describe("check", () => {
  const demo = readFileSync("models/demo.sniffs.jsonl", "utf8").split("\n");

  it("gives the same findings as the app's own function, line by line, and refuses a bad line by number", () => {
    const bad = demo[1]!.replace('"plate":"', '"plate":"","was":"');
    const file = join(folder, "some.jsonl");
    writeFileSync(file, [demo[0], bad, demo[2]].join("\n"));
    const run = nidor("check", "models/demo.nose.json", file);
    expect(run.status).toBe(1);
    expect(run.stderr).toMatch(/line 2: plate: must not be empty/);
    const nose = parseNose(readFileSync("models/demo.nose.json", "utf8"));
    if (!nose.ok) throw new Error("the demo nose cannot be read");
    const groups = nose.value.groups.map(({ name }) => name);
    const lines = run.stdout
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line) as unknown);
    const { sniffs } = readSniffFile([demo[0], demo[2]].join("\n"));
    expect(lines).toEqual(sniffs.map((sniff) => judgedSniff(nose.value, sniff, groups, 0.1)));
  });

  it("exit code 0 for a good file, 1 for a nose that is none, 2 for an unknown command", () => {
    const file = join(folder, "good.jsonl");
    writeFileSync(file, `${demo[0]}\n`);
    expect(nidor("check", "models/demo.nose.json", file).status).toBe(0);
    const noNose = nidor("check", file, file);
    expect(noNose.status).toBe(1);
    expect(noNose.stderr).toContain('this version reads "nidor-nose/1" and "nidor-nose/2"');
    expect(nidor("smell", file).status).toBe(2);
  });
});
