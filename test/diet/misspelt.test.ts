/** Words with a slip of the finger. Common practice: the ways menus and people misspell. */
import { describe, expect, it } from "vitest";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import { misspelt } from "../../src/diet/misspelt.js";
import { emptyProfile, type DietProfile } from "../../src/diet/profile.js";

const names = (folded: string) => [...new Set(misspelt(folded).map(({ name }) => name))];

it.each([
  ["carbonarra", "carbonara"],
  ["spagetti", "spaghetti"],
  ["mozarella", "mozzarella"],
  ["lasange", "lasagne"],
  ["schnitzl", "schnitzel"],
  ["panna cota", "panna cotta"],
  ["shepards pie", "shepherds pie"],
])("takes %s for %s", (typed, meant) => {
  expect(names(typed)).toContain(meant);
});

it.each(["terrasse", "wunsch", "reservierung", "wochenkarte", "kellner", "e4711", "garten", "butler"])(
  "takes %s for nothing",
  (typed) => {
    expect(names(typed)).toEqual([]);
  },
);

describe("in a dish", () => {
  const milk: DietProfile = {
    ...emptyProfile("EU"),
    allergies: [{ allergen: "milk", severity: "unknown", note: "" }],
  };
  const of = (text: string) => cautionsFor({ text, profile: milk });

  it("a guess never says more than that it may be in it, and tells what it was read as", () => {
    const guessed = of("Mozarella");
    expect(guessed.map(({ level, readAs }) => ({ level, readAs }))).toEqual([
      { level: "mayContain", readAs: "mozzarella" },
    ]);
  });

  it("a name spelt right elsewhere in the text is no guess", () => {
    const [caution] = of("Mozarella, Mozzarella");
    expect(caution).toMatchObject({ level: "contains", readAs: null });
  });

  it("a known word is taken at its word", () => {
    expect(of("Mozzarella").every(({ readAs }) => readAs === null)).toBe(true);
  });
});
