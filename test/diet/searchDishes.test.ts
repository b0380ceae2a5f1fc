import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { KNOWLEDGE } from "../../src/diet/data/knowledge.js";
import { editDistance } from "../../src/diet/editDistance.js";
import { shownName } from "../../src/diet/lexicon.js";
import { searchDishes } from "../../src/diet/searchDishes.js";

const SEARCHED = KNOWLEDGE.filter(({ kind }) => kind !== "word");
const first = (query: string): string | undefined => searchDishes(query, 5)[0]?.rowId;

describe("searching dishes", () => {
  it.each([
    ["Carbonara", "carbonara"],
    ["carbonarra", "carbonara"],
    ["carbnara", "carbonara"],
    ["cabronara", "carbonara"],
    ["carbo", "carbonara"],
    ["Kaesespaetzle", "kaesespaetzle"],
    ["käsespätzle", "kaesespaetzle"],
    ["kasespatzle", "kaesespaetzle"],
    ["KÄSESP", "kaesespaetzle"],
    ["worstershire", "worcester"],
    ["tiramsu", "tiramisu"],
    ["refied beans", "refriedBeans"],
    ["pho", "pho"],
    ["E471", "e470"],
    ["e1105", "e1105"],
    ["crème brulee", "cremeBrulee"],
    ["shepherds pie", "shepherdsPie"],
  ])("%s finds %s first", (query, rowId) => {
    expect(first(query)).toBe(rowId);
  });

  it("offers nothing that is only spelled like a name written in full: hake is no cake and no hare", () => {
    expect(searchDishes("hake", 6).map(({ name }) => name)).toEqual(["hake", "milkshake"]);
  });

  it("takes a number for what it is: E441 is no typo of E471", () => {
    expect(searchDishes("E441", 5).map(({ rowId }) => rowId)).toEqual(["e441"]);
  });

  it("gives nothing for nothing and for noise, and never more than asked for", () => {
    expect(searchDishes("", 5)).toEqual([]);
    expect(searchDishes("  - ", 5)).toEqual([]);
    expect(searchDishes("xqzvwk", 5)).toEqual([]);
    expect(searchDishes("su", 3)).toHaveLength(3);
    expect(searchDishes("suppe", 0)).toEqual([]);
  });

  it("puts the right spelling before a near one, and each row once", () => {
    const hits = searchDishes("ramen", 10);
    expect(hits[0]?.name).toBe("Ramen");
    expect(new Set(hits.map(({ rowId }) => rowId)).size).toBe(hits.length);
  });

  it("finds every row by each of its names, and by the name with one letter lost", () => {
    const names = SEARCHED.flatMap((row) =>
      [...row.en, ...row.de].map((name) => ({ row, name: shownName(name) })),
    );
    const written = new Set(names.map(({ name }) => name.toLowerCase()));
    for (const { row, name } of names) {
      expect(searchDishes(name, 1)[0]?.rowId, name).toBe(row.id);
    }
    fc.assert(
      fc.property(
        fc.constantFrom(...names.filter(({ name }) => name.length > 6 && !/\d/.test(name))),
        fc.nat(),
        ({ row, name }, at) => {
          const gap = 1 + (at % (name.length - 1));
          const typo = name.slice(0, gap) + name.slice(gap + 1);
          fc.pre(!/[aou]e/i.test(typo)); // a lost letter can leave what reads as an umlaut
          fc.pre(!written.has(typo.toLowerCase())); // or another dish: Makrone, Marone
          expect(
            searchDishes(typo, 12).map(({ rowId }) => rowId),
            typo,
          ).toContain(row.id);
        },
      ),
      { numRuns: 200 },
    );
  });

  it("answers in under 5 ms of computing time, offline and from memory", () => {
    const queries = [
      "carbonarra",
      "rinderbrue",
      "kaesespaezle",
      "worstershire sauce",
      "pfannkuchen",
      "gem",
      "E471",
    ];
    for (let round = 0; round < 30; round += 1) for (const query of queries) searchDishes(query, 8); // warm up
    const times = Array.from({ length: 105 }, (_, i) => {
      const before = process.cpuUsage();
      searchDishes(queries[i % queries.length] ?? "", 8);
      const { user, system } = process.cpuUsage(before);
      return (user + system) / 1000;
    }).sort((a, b) => a - b);
    console.info(`searchDishes: median ${String(times[52])} ms over ${String(SEARCHED.length)} rows`);
    expect(times[52]).toBeLessThan(5);
  });
});

describe("edit distance, by hand", () => {
  it.each([
    // Counted by hand.
    ["kitten", "sitting", 2, 3],
    ["ab", "ba", 1, 1],
    ["abcd", "abcd", 0, 0],
    ["", "abc", 0, 3],
    ["carb", "carbonara", 0, 5],
    ["cabr", "carbonara", 1, 5],
    ["abc", "", 3, 3],
  ])("%s to %s: %i to a beginning, %i to the whole", (query, name, prefix, whole) => {
    expect(editDistance(query, name, 9)).toEqual({ prefix, whole });
  });

  it("stops at its limit", () => {
    expect(editDistance("carbonara", "bolognese", 2)).toEqual({ prefix: 3, whole: 3 });
    expect(editDistance("abc", "abcdefgh", 2)).toEqual({ prefix: 0, whole: 3 });
  });

  it("is symmetric for the whole, zero for the same, and never above the longer length", () => {
    const word = fc.stringMatching(/^[abc]{0,7}$/);
    fc.assert(
      fc.property(word, word, (left, right) => {
        const there = editDistance(left, right, 9).whole;
        expect(editDistance(right, left, 9).whole).toBe(there);
        expect(there === 0).toBe(left === right);
        expect(there).toBeLessThanOrEqual(Math.max(left.length, right.length));
      }),
    );
  });
});
