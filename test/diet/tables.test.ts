import { describe, expect, it } from "vitest";
import { analyzeWord } from "../../src/diet/analyzeWord.js";
import { ALLERGEN_NAMES } from "../../src/diet/data/card/allergenNames.js";
import { CLAIM_LIMITS } from "../../src/diet/data/claimLimits.js";
import { CLAIMS } from "../../src/diet/data/claims.js";
import { DIET_RULES, INTOLERANCE_RULES } from "../../src/diet/data/dietRules.js";
import { ALLERGEN_LISTS } from "../../src/diet/data/jurisdictions.js";
import { ADDITIVES } from "../../src/diet/data/knowledge/additives.js";
import { KNOWLEDGE } from "../../src/diet/data/knowledge.js";
import { QUESTIONS } from "../../src/diet/data/questions.js";
import { SUBSTANCES } from "../../src/diet/data/substances.js";
import type { KnowledgeRow } from "../../src/diet/knowledgeRow.js";
import { LEXICON, parseName, type Lexicon } from "../../src/diet/lexicon.js";
import type { Provenance } from "../../src/diet/provenance.js";
import { isKindOf, lineageOf, questionOf } from "../../src/diet/substanceTree.js";
import { RULE_ROWS } from "./ruleRows.js";

const FOODS = KNOWLEDGE.filter(({ kind }) => kind !== "namesake" && kind !== "word");
const namesOf = (row: KnowledgeRow): string[] => [...row.en, ...row.de].filter((name) => !/^E\d/.test(name));
const factsOf = (row: KnowledgeRow) => [...row.contains, ...row.often, ...row.may, ...row.unclear];
const twice = (list: readonly string[]): string[] => list.filter((value, i) => list.indexOf(value) !== i);

/** Every row of every table, with something to find it by. */
const SOURCED: readonly (readonly [string, Provenance])[] = [
  ...KNOWLEDGE.map((row) => [`knowledge ${row.id}`, row] as const),
  ...SUBSTANCES.map((row) => [`substance ${row.id}`, row] as const),
  ...QUESTIONS.map((row) => [`question ${row.id}`, row] as const),
  ...CLAIMS.map((row) => [`claim ${row.id}`, row] as const),
  ...CLAIM_LIMITS.map((row) => [`limit ${row.id}`, row] as const),
  ...RULE_ROWS,
  ...Object.entries(ALLERGEN_NAMES),
  ...Object.values(ALLERGEN_LISTS).flatMap((list) => [
    [`${list.id} emergency`, list.emergency] as const,
    ...[...list.items, ...list.rules, ...list.traps].map((row) => [`${list.id} ${row.text}`, row] as const),
    ...list.items.flatMap((item) =>
      (item.exceptions ?? []).map((row) => [`${list.id} ${row.text}`, row] as const),
    ),
  ]),
];

describe("the tables", () => {
  it("hold at least 250 dishes and ingredients", () => {
    expect(FOODS.length).toBeGreaterThanOrEqual(250);
  });

  it("name a source and a mark on every row", () => {
    const bare = SOURCED.filter(
      ([, { source, mark }]) => source.trim() === "" || !["SEEN", "MEMORY", "common practice"].includes(mark),
    );
    expect(bare).toEqual([]);
    expect(SOURCED.length).toBeGreaterThan(KNOWLEDGE.length);
  });

  it("say MEMORY where the source says so, and nowhere else claim to have seen it", () => {
    const wrong = SOURCED.filter(([, { source, mark }]) => /from memory/.test(source) && mark !== "MEMORY");
    expect(wrong).toEqual([]);
  });

  it("use every id once", () => {
    expect(twice(KNOWLEDGE.map(({ id }) => id))).toEqual([]);
    expect(twice(SUBSTANCES.map(({ id }) => id))).toEqual([]);
    expect(twice(QUESTIONS.map(({ id }) => id))).toEqual([]);
    expect(twice(CLAIMS.map(({ id }) => id))).toEqual([]);
  });

  it("give a name to one row only, in whatever spelling", () => {
    const names = KNOWLEDGE.flatMap((row) => [
      ...new Set(namesOf(row).map((name) => parseName(name).words.join(" "))),
    ]);
    expect(twice(names)).toEqual([]);
    const claims = CLAIMS.flatMap((row) => [
      ...new Set([...row.en, ...row.de].map((name) => parseName(name).words.join(" "))),
    ]);
    expect(twice(claims)).toEqual([]);
  });

  it("give an additive number to one row only", () => {
    const numbers = ADDITIVES.flatMap((row) =>
      row.numbers.flatMap(([first, last]) =>
        Array.from({ length: last - first + 1 }, (_, i) => String(first + i)),
      ),
    );
    expect(twice(numbers)).toEqual([]);
  });

  it("point only to substances and questions that exist, and at each substance at most once a row", () => {
    const substances = new Set<string>(SUBSTANCES.map(({ id }) => id));
    const questions = new Set<string>(QUESTIONS.map(({ id }) => id));
    for (const row of KNOWLEDGE) {
      expect(
        factsOf(row).filter((id) => !substances.has(id)),
        row.id,
      ).toEqual([]);
      expect(twice(factsOf(row)), row.id).toEqual([]);
      expect(row.ask === null || questions.has(row.ask), row.id).toBe(true);
    }
    for (const { id, parent } of SUBSTANCES) {
      expect(parent === null || substances.has(parent), id).toBe(true);
      expect(questions.has(questionOf(id)), id).toBe(true);
    }
    for (const rule of [...Object.values(DIET_RULES), ...Object.values(INTOLERANCE_RULES)].flat()) {
      expect(substances.has(rule.substance)).toBe(true);
    }
  });

  it("have a tree of substances without circles", () => {
    for (const { id } of SUBSTANCES) expect(lineageOf(id).length, id).toBeLessThanOrEqual(SUBSTANCES.length);
    expect(lineageOf("shrimp")).toEqual(["shrimp", "crustacean"]); // counted by hand
    expect(isKindOf("beefFat", "meat")).toBe(true);
    expect(isKindOf("meat", "beefFat")).toBe(false);
  });

  it("let every food say something, unless its point is that its name misleads", () => {
    const silent = FOODS.filter((row) => factsOf(row).length === 0 && row.masks.length === 0);
    expect(silent.map(({ id }) => id)).toEqual([]);
  });

  it("mask only words that occur in the row's own names", () => {
    const stray = KNOWLEDGE.flatMap((row) => {
      const words = namesOf(row).flatMap((name) => parseName(name).words);
      return row.masks
        .filter((mask) => !words.some((word) => word.includes(mask)))
        .map((mask) => `${row.id}: ${mask}`);
    });
    expect(stray).toEqual([]);
  });
});

/** The lexicon as if the name had never been listed, so that it is taken apart. Only `get` is ever called. */
const without = (row: KnowledgeRow, word: string): Lexicon => {
  const get = <V>(map: ReadonlyMap<string, V>, drop: (value: V) => boolean) =>
    ({
      get: (name: string) => {
        const value = map.get(name);
        return name === word || value === undefined || drop(value) ? undefined : value;
      },
    }) as unknown as ReadonlyMap<string, V>;
  return {
    ...LEXICON,
    singles: get(LEXICON.singles, () => false),
    parts: get(LEXICON.parts, (part) => part.rowIds.every((id) => id === row.id)),
  };
};

it("a listed compound says all that its parts say, or masks the part", () => {
  // "Käsespätzle" must hold what "Käse" and "Spätzle" hold; "Leberkäse" masks "käse".
  const gaps = FOODS.flatMap((row) =>
    namesOf(row).flatMap((name) => {
      const [word, ...more] = parseName(name).words;
      if (word === undefined || more.length > 0 || row.masks.some((mask) => word.includes(mask))) return [];
      const parts = analyzeWord(word, without(row, word)).map((id) => LEXICON.rows.get(id));
      const said = parts.flatMap((part) => part?.contains ?? []);
      const missing = said.filter((substance) => !factsOf(row).some((fact) => isKindOf(fact, substance)));
      return missing.length === 0 ? [] : [`${name}: ${missing.join(" ")}`];
    }),
  );
  expect(gaps).toEqual([]);
});
