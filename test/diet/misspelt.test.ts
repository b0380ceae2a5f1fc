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

  it("a joining word at the end is no part of a name: what follows the “or” cannot take the name away", () => {
    const nuts: DietProfile = { ...milk, allergies: [{ allergen: "almond", severity: "unknown", note: "" }] };
    const readAs = (text: string) => cautionsFor({ text, profile: nuts }).map((caution) => caution.readAs);
    // With the joining word in it, "marzipa or" would be two letters off; without it the word stands alone.
    expect(readAs("Marzipa or")).toEqual(readAs("Marzipa"));
    expect(readAs("Marzipa or rice")).toEqual(readAs("Marzipa"));
    expect(readAs("Marzipa")).toEqual(["marzipan"]);
    // And "frei chicken" is no fried chicken: a "meat frei" before it is a claim.
    expect(cautionsFor({ text: "frei chicken", profile: { ...milk, allergies: [], coeliac: true } })).toEqual(
      [],
    );
  });

  it("one stuffed leaf may hold what several hold", () => {
    const ids = (text: string) => cautionsFor({ text, profile: milk }).map(({ id }) => id);
    expect(ids("Weinblatt")).toEqual(ids("Weinblätter"));
    expect(ids("Weinblatt")).toHaveLength(1);
  });

  it("a known word is taken at its word", () => {
    expect(of("Mozzarella").every(({ readAs }) => readAs === null)).toBe(true);
  });
});
