/**
 * The legal lists of src/diet/data against ../shared/allergens.json (made 2026-11-25), which names a source, a mark
 * and where it was read for every row. Skipped where the file is absent; the product never reads it.
 */
import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import { CLAIM_LIMITS } from "../../src/diet/data/claimLimits.js";
import { DIET_RULES } from "../../src/diet/data/dietRules.js";
import { ALLERGEN_LISTS } from "../../src/diet/data/jurisdictions.js";
import { ADDITIVES } from "../../src/diet/data/knowledge/additives.js";
import { KNOWLEDGE } from "../../src/diet/data/knowledge.js";
import type { SubstanceId } from "../../src/diet/data/substances.js";
import { foldWord } from "../../src/diet/foldWord.js";
import { JURISDICTIONS, type JurisdictionId } from "../../src/diet/jurisdiction.js";
import { shownName } from "../../src/diet/lexicon.js";
import { legalStanding } from "../../src/diet/legalStanding.js";
import { emptyProfile } from "../../src/diet/profile.js";

const FILE = new URL("../../../shared/allergens.json", import.meta.url);
const there = existsSync(FILE);

interface SourcedRow {
  readonly source: string;
  readonly mark: string;
  readonly where: string;
}
interface ListedItem extends SourcedRow {
  readonly n: number;
  readonly key: string;
  readonly text: string;
  readonly exceptions?: readonly string[];
}
interface ListedJurisdiction {
  readonly id: string;
  readonly name: string;
  readonly instrument: string;
  readonly items: readonly ListedItem[];
  readonly recommended?: SourcedRow & { readonly items: readonly string[]; readonly count: number };
  readonly national_or_regional?: readonly (SourcedRow & { readonly keys: readonly string[] })[];
}
interface Lists {
  readonly made: string;
  readonly jurisdictions: readonly ListedJurisdiction[];
  readonly matrix_mandatory: Readonly<Record<string, Readonly<Record<string, number | string>>>>;
  readonly gluten_free: readonly {
    readonly id: string;
    readonly limit?: number | string;
    readonly mark: string;
  }[];
  readonly lactose: readonly { readonly id: string; readonly limit?: number; readonly mark: string }[];
  readonly additives: readonly {
    readonly e: string;
    readonly origin: string;
    readonly note: string;
    readonly mark: string;
  }[];
  readonly pdo_cheese_rennet: readonly {
    readonly cheese: string;
    readonly effect: string;
    readonly mark: string;
  }[];
  readonly diets: Readonly<Record<string, { readonly source?: string; readonly mark?: string }>>;
}

const lists = there ? (JSON.parse(readFileSync(FILE, "utf8")) as Lists) : undefined;
const jurisdictions = (lists?.jurisdictions ?? []).filter(({ id }) =>
  JURISDICTIONS.some((known) => known === id),
);

/** What a key of the comparison table means, as the kinds that all must be covered. */
const KINDS: Readonly<Record<string, readonly SubstanceId[]>> = {
  cereals_gluten: ["wheat", "rye", "barley"],
  crustaceans: ["crustacean", "shrimp", "crab"],
  eggs: ["egg"],
  fish: ["fish", "salmon", "anchovy"],
  peanuts: ["peanut"],
  soybeans: ["soya"],
  milk: ["milk", "agedCheese", "lactose"],
  tree_nuts: ["almond", "hazelnut", "walnut", "cashew", "pecan", "brazilNut", "pistachio", "macadamia"],
  celery: ["celery"],
  mustard: ["mustard"],
  sesame: ["sesame"],
  sulphites: ["sulphites"],
  lupin: ["lupin"],
  molluscs: ["mollusc", "squid", "snail"],
  buckwheat: ["buckwheat"],
};

describe.skipIf(!there)("the legal allergen lists, against the checked lists of 2026-11-25", () => {
  it("knows every jurisdiction of the file but the Codex text before 2024", () => {
    const known = lists?.jurisdictions.map(({ id }) => id).filter((id) => id !== "CODEX_1999");
    expect([...(known ?? [])].sort()).toEqual([...JURISDICTIONS].sort());
  });

  it.each(jurisdictions.map((list) => [list.id, list] as const))(
    "%s: name, law, items in order, wording, source, mark",
    (id, list) => {
      const ours = ALLERGEN_LISTS[id as JurisdictionId];
      expect(ours.name).toBe(list.name);
      expect(ours.instrument).toBe(list.instrument);
      expect(ours.checkedOn).toBe(lists?.made);
      expect(ours.date).not.toBe("");
      const numbered = ours.items.filter((item) => item.n !== null);
      expect(
        numbered.map(({ n, key, text, source, mark, where }) => ({ n, key, text, source, mark, where })),
      ).toEqual(
        list.items.map(({ n, key, text, source, mark, where }) => ({ n, key, text, source, mark, where })),
      );
      for (const item of list.items.filter(({ exceptions }) => exceptions !== undefined)) {
        const exceptions = numbered.find(({ n }) => n === item.n)?.exceptions ?? [];
        expect(exceptions.map(({ text }) => text)).toEqual(item.exceptions);
      }
    },
  );

  it("Japan recommends 20 more, the Codex leaves nine to the nations", () => {
    const named = (id: JurisdictionId, force: string) =>
      ALLERGEN_LISTS[id].items.filter((item) => item.force === force).map(({ text }) => text);
    const japan = jurisdictions.find(({ id }) => id === "JP")?.recommended;
    const codex = jurisdictions.find(({ id }) => id === "CODEX_2024")?.national_or_regional?.[0];
    expect(named("JP", "recommended")).toEqual(japan?.items);
    expect(named("JP", "recommended")).toHaveLength(japan?.count ?? -1);
    expect(named("CODEX_2024", "national")).toEqual(codex?.keys);
  });

  it.each(Object.entries(lists?.matrix_mandatory ?? {}))("%s: mandatory or not, key by key", (id, row) => {
    for (const [key, value] of Object.entries(row)) {
      const standings = (KINDS[key] ?? []).map((kind) => legalStanding(id as JurisdictionId, kind));
      const binding = standings.filter(
        ({ listed, item }) => listed === "listed" && item?.force === "mandatory",
      );
      expect(standings.length, key).toBeGreaterThan(0);
      if (value === 1) expect(binding.length, key).toBe(standings.length);
      if (value === 0) expect(binding.length, key).toBe(0);
      if (typeof value === "string")
        expect(binding.length < standings.length || /nine named/.test(value), key).toBe(true);
    }
  });
});

describe.skipIf(!there)("claims, additives, cheeses and diets, against the same file", () => {
  it.each((lists?.gluten_free ?? []).filter(({ limit }) => limit !== undefined))(
    "gluten-free: $id",
    ({ id, limit, mark }) => {
      const ours = CLAIM_LIMITS.find((row) => row.id === id);
      expect(ours?.limit.en).toContain(String(limit));
      expect(ours?.mark).toBe(mark);
    },
  );

  it.each((lists?.lactose ?? []).filter(({ limit }) => limit !== undefined))(
    "lactose-free: $id",
    ({ id, limit, mark }) => {
      const ours = CLAIM_LIMITS.find((row) => row.id === id);
      expect(ours?.limit.en).toContain(`${String(limit)} g`);
      expect(ours?.mark).toBe(mark);
    },
  );

  const numbersOf = (text: string): number[] =>
    text.split(",").flatMap((part) => {
      const [first = 0, last = first] = [...part.matchAll(/E(\d+)/g)].map((match) => Number(match[1]));
      return Array.from({ length: last - first + 1 }, (_, i) => first + i);
    });

  it.each(lists?.additives ?? [])(
    "$e: known, with the same mark, unknown where its origin is unknown",
    ({ e, origin, note, mark }) => {
      for (const number of numbersOf(e)) {
        const row = ADDITIVES.find(({ numbers }) =>
          numbers.some(([first, last]) => number >= first && number <= last),
        );
        expect(row, String(number)).toBeDefined();
        expect(row?.mark, String(number)).toBe(mark);
        if (/^(unknown|possible)/.test(note)) expect(row?.unclear, String(number)).not.toEqual([]);
        if (/always animal|animal \(/.test(origin)) expect(row?.contains, String(number)).not.toEqual([]);
      }
    },
  );

  const rowsNamed = (name: string) =>
    KNOWLEDGE.filter((row) =>
      [...row.en, ...row.de].some((form) => foldWord(shownName(form)) === foldWord(name)),
    );

  it.each(lists?.pdo_cheese_rennet ?? [])(
    "$cheese: rennet as its product rules say",
    ({ cheese, effect, mark }) => {
      for (const name of cheese.split(/,\s*/)) {
        const [row] = rowsNamed(name);
        expect(row?.mark, name).toBe(mark);
        const animal = [...(row?.contains ?? []), ...(row?.often ?? [])].includes("animalRennet");
        expect(animal, name).toBe(/not vegetarian/.test(effect));
        if (effect === "unknown") expect(row?.unclear).toContain("animalRennet");
        if (/EGG/.test(effect)) expect(row?.may).toContain("egg");
      }
    },
  );

  it.each([
    ["ovo_lacto_vegetarian", "ovoLactoVegetarian"],
    ["ovo_vegetarian", "ovoVegetarian"],
    ["lacto_vegetarian", "lactoVegetarian"],
    ["vegan", "vegan"],
    ["halal", "halal"],
    ["kosher", "kosher"],
    ["pescetarian", "eatsFishNoMeat"],
  ] as const)("the diet text of %s is a source of %s", (key, diet) => {
    const text = lists?.diets[key];
    const sources = DIET_RULES[diet]
      .filter((rule) => rule.source.includes(text?.source ?? "?"))
      .map(({ mark }) => mark);
    expect(sources).toContain(text?.mark);
  });
});

const allergic = (allergen: string, jurisdiction: JurisdictionId) => ({
  ...emptyProfile(jurisdiction),
  allergies: [{ allergen, severity: "unknown" as const, note: "" }],
});
const cautionOf = (text: string, allergen: string, jurisdiction: JurisdictionId) =>
  cautionsFor({ text, profile: allergic(allergen, jurisdiction) }).at(0);

describe("traps of the lists", () => {
  it("lactitol is exempt in the EU, lactose is not", () => {
    // Source: Reg. (EU) 1169/2011 Annex II item 7 with exception (b), secondary quotation.
    expect(cautionOf("lactose", "milk", "EU")).toMatchObject({
      level: "contains",
      basis: { legal: { exception: null } },
    });
    const lactitol = cautionOf("E966", "milk", "EU");
    expect(lactitol).toMatchObject({ level: "mayContain", basis: { legal: { exception: "lactitol" } } });
    // No list outside the EU and the UK is known to free it.
    expect(cautionOf("E966", "milk", "US")?.level).toBe("contains");
  });

  it("buckwheat binds in Japan only, and the caution says so elsewhere", () => {
    const standings = JURISDICTIONS.map((id) => [id, legalStanding(id, "buckwheat").item?.force ?? "none"]);
    expect(Object.fromEntries(standings)).toEqual({
      EU: "none",
      UK: "none",
      US: "none",
      CA: "none",
      AU_NZ: "none",
      JP: "mandatory",
      CODEX_2024: "national",
    });
    expect(cautionOf("Soba", "buckwheat", "EU")).toMatchObject({
      level: "contains",
      basis: { legal: { listed: "notListed" } },
    });
  });

  it("pine nuts are on no European list, but in Canada, Australia and New Zealand", () => {
    // Source: Annex II item 8 read as closed (value from memory); CFIA; Food Standards Code Schedule 9.
    expect(legalStanding("EU", "pineNut").listed).toBe("notListed");
    expect(legalStanding("UK", "pineNut").listed).toBe("notListed");
    expect(legalStanding("CA", "pineNut").listed).toBe("listed");
    expect(legalStanding("AU_NZ", "pineNut").listed).toBe("listed");
    expect(cautionOf("Pinienkerne", "treeNut", "EU")).toMatchObject({
      level: "contains",
      basis: { legal: { listed: "notListed" } },
    });
  });

  it("the US list has wheat only, and no molluscs, celery, mustard or lupin", () => {
    for (const substance of ["rye", "barley", "oats", "mollusc", "celery", "mustard", "lupin"] as const) {
      expect(legalStanding("US", substance).listed, substance).toBe("notListed");
    }
    expect(legalStanding("US", "wheat").listed).toBe("listed");
  });

  it("highly refined soya oil is exempt in the EU and the US, refined peanut oil in the US only", () => {
    // Source: Annex II item 6(a); FD&C Act s.201(qq)(2), value from memory.
    const exempt = (id: JurisdictionId, oil: SubstanceId) => legalStanding(id, oil).exception !== undefined;
    expect([
      exempt("EU", "refinedSoyaOil"),
      exempt("US", "refinedSoyaOil"),
      exempt("CA", "refinedSoyaOil"),
    ]).toEqual([true, true, false]);
    expect([exempt("EU", "refinedPeanutOil"), exempt("US", "refinedPeanutOil")]).toEqual([false, true]);
  });

  it("isinglass in beer need not be named in the EU, and is a caution all the same", () => {
    const beer = cautionsFor({ text: "Weißbier", profile: allergic("fish", "EU") });
    expect(beer).toMatchObject([{ substance: "isinglass", level: "mayContain" }]);
    expect(beer[0]?.basis.legal?.exception).toMatch(/isinglass/);
  });

  it("E441 is gelatine, and said to be no EU number", () => {
    const profile = { ...emptyProfile("EU"), diets: ["vegan" as const] };
    const [caution] = cautionsFor({ text: "Emulgator E 441", profile });
    expect(caution).toMatchObject({ substance: "gelatine", level: "contains" });
    expect(caution?.row?.note?.en).toMatch(/no EU additive number/);
  });

  it("a Japanese list names prawns and crab, but no other crustacean", () => {
    expect(legalStanding("JP", "shrimp").listed).toBe("listed");
    expect(legalStanding("JP", "crustacean").listed).toBe("partly");
  });
});
