/**
 * The corpus menuLines.json was written before the tables it judges. Recall of `contains` must be 1, precision at
 * least 0.9, counted by profile item and line.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import type { JurisdictionId } from "../../src/diet/jurisdiction.js";
import { emptyProfile, type DietId, type DietProfile } from "../../src/diet/profile.js";

interface CorpusProfile {
  readonly diets?: readonly DietId[];
  readonly allergies?: readonly string[];
  readonly intolerances?: readonly string[];
  readonly ownWords?: readonly string[];
  readonly coeliac?: boolean;
  readonly jurisdiction?: JurisdictionId;
}
interface CorpusLine {
  readonly line: string;
  readonly profile: string;
  readonly contains: readonly string[];
  readonly cautions: readonly string[];
}
const corpus = JSON.parse(readFileSync(new URL("menuLines.json", import.meta.url), "utf8")) as {
  readonly profiles: Readonly<Record<string, CorpusProfile>>;
  readonly lines: readonly CorpusLine[];
};

function profileOf(name: string): DietProfile {
  const { allergies = [], jurisdiction = "EU", ...rest } = corpus.profiles[name] ?? {};
  return {
    ...emptyProfile(jurisdiction),
    ...rest,
    allergies: allergies.map((allergen) => ({ allergen, severity: "unknown", note: "" })),
  };
}

const judged = corpus.lines.map((line) => {
  const cautions = cautionsFor({ text: line.line, profile: profileOf(line.profile) });
  const keysAt = (wanted: (level: string) => boolean) => [
    ...new Set(cautions.filter(({ level }) => wanted(level)).map(({ item }) => item.key)),
  ];
  const expected = [...line.contains, ...line.cautions];
  return { ...line, found: keysAt((level) => level === "contains"), foundAny: keysAt(() => true), expected };
});

const count = (pick: (line: (typeof judged)[number]) => readonly string[]): number =>
  judged.reduce((sum, line) => sum + pick(line).length, 0);

describe("menu lines in English and German", () => {
  it("are at least 120, with every profile, and some lines about which nothing is to be said", () => {
    expect(corpus.lines.length).toBeGreaterThanOrEqual(120);
    expect(new Set(corpus.lines.map(({ profile }) => profile))).toEqual(
      new Set(Object.keys(corpus.profiles)),
    );
    expect(judged.filter(({ expected }) => expected.length === 0).length).toBeGreaterThan(20);
  });

  it("recall 1 and precision of 0.9 on `contains`", () => {
    const missed = judged.flatMap(({ line, contains, found }) =>
      contains.filter((key) => !found.includes(key)).map((key) => `${line}: ${key}`),
    );
    const recall = 1 - missed.length / count(({ contains }) => contains);
    const right = count(({ contains, found }) => found.filter((key) => contains.includes(key)));
    const precision = right / count(({ found }) => found);
    console.info(
      `contains: recall ${recall.toFixed(3)}, precision ${precision.toFixed(3)} over ${String(judged.length)} lines`,
    );
    expect(missed).toEqual([]);
    expect(precision).toBeGreaterThanOrEqual(0.9);
  });

  it("no expected caution of any level is missed, and nine in ten cautions were expected", () => {
    const missed = judged.flatMap(({ line, expected, foundAny }) =>
      expected.filter((key) => !foundAny.includes(key)).map((key) => `${line}: ${key}`),
    );
    const right = count(({ expected, foundAny }) => foundAny.filter((key) => expected.includes(key)));
    const precision = right / count(({ foundAny }) => foundAny);
    console.info(
      `all levels: recall ${(1 - missed.length / count(({ expected }) => expected)).toFixed(3)}, precision ${precision.toFixed(3)}`,
    );
    expect(missed).toEqual([]);
    expect(precision).toBeGreaterThanOrEqual(0.9);
  });
});
