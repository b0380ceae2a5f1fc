import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FOOD_GROUPS } from "../../src/kernel/groups.js";
import { seededRandom } from "../../src/kernel/random.js";
import { median, standardDeviation } from "../../src/stats/summary.js";
import { BALANCED_GROUPS } from "../../src/virtual/demoPlan.js";
import { NIGHT_MARKET, plateOf, truthsOf, type Dish } from "../../src/virtual/dishes.js";
import { FAMILIES } from "../../src/virtual/families.js";
import { INGREDIENTS, type IngredientName } from "../../src/virtual/ingredients.js";

const named = (id: string): Dish => NIGHT_MARKET.find((dish) => dish.id === id)!;

describe("the night market", () => {
  it("has every combination of the balanced groups twice", () => {
    const combinations = NIGHT_MARKET.map((dish) =>
      BALANCED_GROUPS.map((group) => Number(dish.groups.includes(group))).join(""),
    );
    const counts = new Map<string, number>();
    for (const it of combinations) counts.set(it, (counts.get(it) ?? 0) + 1);
    expect(counts.size).toBe(16); // 2 to the power of 4 groups
    expect([...counts.values()].every((count) => count === 2)).toBe(true);
  });

  it("serves every balanced group in half of the cool dishes, so that steam foretells none", () => {
    const cool = NIGHT_MARKET.filter((dish) => !dish.hot);
    expect(cool).toHaveLength(6);
    for (const group of BALANCED_GROUPS) {
      expect(cool.filter((dish) => dish.groups.includes(group))).toHaveLength(3);
    }
  });

  it("has an id and a name of its own for each dish", () => {
    expect(new Set(NIGHT_MARKET.map((dish) => dish.id)).size).toBe(NIGHT_MARKET.length);
    expect(new Set(NIGHT_MARKET.map((dish) => dish.name)).size).toBe(NIGHT_MARKET.length);
  });

  it("takes its groups from the ingredients, however small the amount", () => {
    expect(named("house-dumplings").groups).toEqual(["meat", "shellfish", "egg", "soya"]);
    expect(named("festival-noodles").groups).toEqual(["meat", "fish", "shellfish", "egg", "alcohol"]);
    expect(named("custard-bun").groups).toEqual(["dairy", "egg"]);
    expect(named("mushroom-broth").groups).toEqual(["soya"]);
  });

  it("says of every group whether it is there", () => {
    for (const dish of NIGHT_MARKET) {
      expect(Object.keys(truthsOf(dish))).toEqual([...FOOD_GROUPS]);
      for (const group of FOOD_GROUPS) {
        expect(truthsOf(dish)[group]).toBe(dish.groups.includes(group) ? "present" : "absent");
      }
    }
  });
});

describe("the chemistry of the ingredients", () => {
  const of = (name: IngredientName): Partial<Record<string, number>> => INGREDIENTS[name].ppm;

  it("shares sulfur between meat, egg, Allium, cabbage and shellfish (check OD-08)", () => {
    const sulfur = ["hydrogenSulfide", "dimethylSulfide", "alliumSulfides"];
    for (const name of ["beef", "egg", "garlic", "cabbage", "clam"] as const) {
      expect(sulfur.some((family) => (of(name)[family] ?? 0) > 0)).toBe(true);
    }
  });

  it("shares fat aldehydes between meat, fish and frying oil (checks OD-01, OD-02)", () => {
    for (const name of ["beef", "pork", "chicken", "duck", "lamb", "seaFish", "fryingOil"] as const) {
      expect(of(name)["fatAldehydes"]).toBeGreaterThan(0.5);
    }
  });

  it("gives river fish far less amine than sea fish (check OD-05)", () => {
    expect(of("riverFish")["amines"]).toBeLessThan(of("seaFish")["amines"]! / 3);
  });
});

describe("a plate", () => {
  it("is never the same twice, and repeats for the same chance", () => {
    const dish = named("beef-broth");
    expect(plateOf(dish, seededRandom(1))).toEqual(plateOf(dish, seededRandom(1)));
    expect(plateOf(dish, seededRandom(1)).ppm).not.toEqual(plateOf(dish, seededRandom(2)).ppm);
  });

  it("holds what its ingredients give off and nothing else", () => {
    fc.assert(
      fc.property(fc.nat(), fc.nat(NIGHT_MARKET.length - 1), (seed, place) => {
        const dish = NIGHT_MARKET[place]!;
        const plate = plateOf(dish, seededRandom(seed));
        FAMILIES.forEach((family, i) => {
          const gives = Object.keys(dish.recipe).some(
            (name) => (INGREDIENTS[name as IngredientName].ppm as Record<string, number>)[family],
          );
          if (gives) expect(plate.ppm[i]).toBeGreaterThan(0);
          else expect(plate.ppm[i]).toBe(0);
        });
        expect(plate.mixing).toBeGreaterThan(0);
        expect(plate.coolingMs).toBeGreaterThan(0);
      }),
    );
  });

  it("varies log-normally about the recipe", () => {
    const beef = Array.from({ length: 1500 }, (_, seed) =>
      Math.log(plateOf(named("beef-broth"), seededRandom(seed)).ppm[FAMILIES.indexOf("terpenes")]!),
    );
    // Ginger 0.6 x 1.4 and herbs 0.4 x 1.1 ppm, counted by hand; the sum of two log-normals is a little higher.
    expect(Math.exp(median(beef))).toBeGreaterThan(1.25);
    expect(Math.exp(median(beef))).toBeLessThan(1.4);
    expect(standardDeviation(beef)).toBeGreaterThan(0.25);
  });

  it("varies its amines on their own, for fish of another age (check OD-04)", () => {
    // In grilled mackerel amines and alcohols come from the fish alone: only its freshness parts them.
    const parted = Array.from({ length: 800 }, (_, seed) => {
      const { ppm } = plateOf(named("mackerel-grill"), seededRandom(seed));
      return Math.log(ppm[FAMILIES.indexOf("amines")]! / ppm[FAMILIES.indexOf("alcohols")]!);
    });
    expect(standardDeviation(parted)).toBeGreaterThan(0.25);
    expect(Math.exp(median(parted))).toBeCloseTo(1.4 / 0.3, 0); // the recipe's own ratio
  });

  it("steams if the dish is hot, and stays near the air's warmth if not", () => {
    const servedC = (id: string) =>
      median(Array.from({ length: 200 }, (_, seed) => plateOf(named(id), seededRandom(seed)).servedC));
    expect(servedC("beef-broth")).toBeGreaterThan(55);
    expect(servedC("mango-rice")).toBeLessThan(30);
  });
});
