/** Cautions are only ever added: more words, ingredients or possible dishes never shorten the list. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Caution } from "../../src/diet/caution.js";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import { CLAIMS } from "../../src/diet/data/claims.js";
import { KNOWLEDGE } from "../../src/diet/data/knowledge.js";
import { SUBSTANCES } from "../../src/diet/data/substances.js";
import { levelRank } from "../../src/diet/level.js";
import { shownName } from "../../src/diet/lexicon.js";
import { DIETS, INTOLERANCES, type DietProfile } from "../../src/diet/profile.js";
import { FOOD_GROUPS } from "../../src/kernel/groups.js";
import { JURISDICTIONS } from "../../src/diet/jurisdiction.js";

const NAMES = KNOWLEDGE.flatMap((row) => [...row.en, ...row.de].map(shownName));
const CLAIM_NAMES = CLAIMS.flatMap((row) => [...row.en, ...row.de]);
const SMALL = [
  "ohne",
  "without",
  "no",
  "-free",
  "frei",
  "free",
  "free from",
  "frei von",
  "may contain",
  "Spuren von",
  "kann",
  "enthalten",
  "oder",
  "or",
  "mit",
  "und",
  "nicht",
  "vegan option",
  "(v)",
  "E471",
  "not",
];

const someName = fc.constantFrom(...NAMES);
const someWord = fc.oneof(
  { weight: 6, arbitrary: someName },
  { weight: 2, arbitrary: fc.constantFrom(...SMALL) },
  { weight: 1, arbitrary: fc.constantFrom(...CLAIM_NAMES) },
  { weight: 1, arbitrary: fc.stringMatching(/^[a-zäöüß]{1,9}$/) },
);
const ALLERGENS = SUBSTANCES.filter((row) => "allergen" in row).map(({ id }) => id);
const someProfile: fc.Arbitrary<DietProfile> = fc.record({
  diets: fc.uniqueArray(fc.constantFrom(...DIETS), { maxLength: 3 }),
  avoidedGroups: fc.uniqueArray(fc.constantFrom(...FOOD_GROUPS), { maxLength: 2 }),
  allergies: fc
    .uniqueArray(fc.constantFrom(...ALLERGENS), { maxLength: 4 })
    .map((list) => list.map((allergen) => ({ allergen, severity: "unknown" as const, note: "" }))),
  intolerances: fc.uniqueArray(fc.constantFrom<string>(...INTOLERANCES), { maxLength: 2 }),
  coeliac: fc.boolean(),
  ownWords: fc.uniqueArray(someName, { maxLength: 2 }),
  jurisdiction: fc.constantFrom(...JURISDICTIONS),
});
const someWords = (maxLength: number) => fc.array(someWord, { minLength: 1, maxLength });
const someGlue = fc.constantFrom(" ", ", ", "\n", " – ", "; ", " oder ");
const someText = fc.tuple(someWords(5), someGlue).map(([words, glue]) => words.join(glue));

const idsOf = (cautions: readonly Caution[]): string[] => cautions.map(({ id }) => id);
const RUNS = { numRuns: 300 };

describe("one way only", () => {
  it("a word put in anywhere takes no caution away but of a name that it parts", () => {
    fc.assert(
      fc.property(
        someWords(5),
        someWord,
        fc.nat(5),
        someGlue,
        someProfile,
        (words, extra, at, glue, profile) => {
          // "apple butter, chicken" names no butter chicken any more once a word stands between the two.
          const place = words.slice(0, at).join(glue).length;
          const isParted = ({ triggers }: Caution) =>
            triggers.every(({ start, end }) => start < place && place < end);
          const before = idsOf(
            cautionsFor({ text: words.join(glue), profile }).filter((caution) => !isParted(caution)),
          );
          const longer = [...words.slice(0, at), extra, ...words.slice(at)];
          const after = new Set(idsOf(cautionsFor({ text: longer.join(glue), profile })));
          expect(before.filter((id) => !after.has(id))).toEqual([]);
        },
      ),
      RUNS,
    );
  });

  it("a further line, dish or list takes none away and lowers no level", () => {
    fc.assert(
      fc.property(someText, someText, fc.boolean(), someProfile, (text, more, first, profile) => {
        const before = cautionsFor({ text, profile });
        const joined = first ? `${more}\n${text}` : `${text}\n${more}`;
        const after = new Map(cautionsFor({ text: joined, profile }).map((caution) => [caution.id, caution]));
        for (const caution of before) {
          const now = after.get(caution.id);
          expect(now, caution.id).toBeDefined();
          expect(levelRank(now?.level ?? "originUnclear"), caution.id).toBeLessThanOrEqual(
            levelRank(caution.level),
          );
        }
      }),
      RUNS,
    );
  });

  it("a claim given apart takes none away, and leaves allergy and coeliac cautions at their level", () => {
    fc.assert(
      fc.property(someText, fc.array(someWord, { maxLength: 3 }), someProfile, (text, claims, profile) => {
        const before = cautionsFor({ text, profile });
        const after = new Map(cautionsFor({ text, claims, profile }).map((caution) => [caution.id, caution]));
        for (const { id, item, level } of before) {
          const strict = item.kind === "allergy" || item.kind === "coeliac";
          expect(after.get(id), id).toBeDefined();
          if (strict) expect(after.get(id)?.level, id).toBe(level);
        }
        expect(after.size).toBe(before.length);
      }),
      RUNS,
    );
  });

  it("one more thing in the profile takes none away", () => {
    fc.assert(
      fc.property(someText, someProfile, someProfile, (text, profile, more) => {
        const both: DietProfile = {
          ...profile,
          diets: [...profile.diets, ...more.diets],
          avoidedGroups: [...profile.avoidedGroups, ...more.avoidedGroups],
          allergies: [...profile.allergies, ...more.allergies],
          intolerances: [...profile.intolerances, ...more.intolerances],
          coeliac: profile.coeliac || more.coeliac,
          ownWords: [...profile.ownWords, ...more.ownWords],
        };
        const after = new Set(idsOf(cautionsFor({ text, profile: both })));
        expect(idsOf(cautionsFor({ text, profile })).filter((id) => !after.has(id))).toEqual([]);
      }),
      RUNS,
    );
  });

  it("every caution has a word of the text behind it, at the place it says, and an id of its own", () => {
    fc.assert(
      fc.property(someText, someProfile, (text, profile) => {
        const cautions = cautionsFor({ text, profile });
        expect(new Set(idsOf(cautions)).size).toBe(cautions.length);
        for (const { triggers, row, item, basis } of cautions) {
          expect(triggers.length).toBeGreaterThan(0);
          for (const { start, end, word } of triggers) {
            expect(text.slice(start, end).startsWith(word.split(" ")[0] ?? "?")).toBe(true);
          }
          expect(
            row !== null || item.kind === "own" || item.kind === "allergy" || item.kind === "intolerance",
          ).toBe(true);
          expect(basis.source).not.toBe("");
        }
      }),
      RUNS,
    );
  });

  it("umlauts in any spelling give the same cautions", () => {
    fc.assert(
      fc.property(someName, someProfile, (name, profile) => {
        const spelled = name
          .replace(/ä/g, "ae")
          .replace(/ö/g, "oe")
          .replace(/ü/g, "ue")
          .replace(/ß/g, "ss")
          .replace(/Ä/g, "Ae")
          .replace(/Ü/g, "Ue");
        expect(idsOf(cautionsFor({ text: spelled, profile }))).toEqual(
          idsOf(cautionsFor({ text: name, profile })),
        );
        expect(idsOf(cautionsFor({ text: name.normalize("NFD"), profile }))).toEqual(
          idsOf(cautionsFor({ text: name, profile })),
        );
      }),
      RUNS,
    );
  });
});
