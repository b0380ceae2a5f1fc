// What a menu claims, and what it says of traces: neither takes a caution away.
import { describe, expect, it } from "vitest";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import { allergy, base, diet, levelOf } from "./askCautions.js";

describe("may contain", () => {
  it.each([
    "May contain traces of nuts.",
    "may contain nuts, milk and soya",
    "Kann Spuren von Nüssen enthalten",
    "Kann Nüsse und Sesam enthalten.",
    "Produced in a facility that handles nuts",
    "In unserem Betrieb werden Nüsse verarbeitet",
  ])("%s", (text) => {
    expect(levelOf(text, allergy("treeNut"))).toBe("mayContain");
  });

  it("ends with its sentence", () => {
    expect(levelOf("May contain milk. Walnuts", allergy("treeNut"))).toBe("contains");
    expect(levelOf("Kann Spuren von Milch enthalten, Walnüsse", allergy("treeNut"))).toBe("contains");
    expect(levelOf("Walnüsse. Kann Spuren von Nüssen enthalten", allergy("treeNut"))).toBe("contains");
  });

  it("a plain can or kann opens nothing", () => {
    expect(levelOf("Suppe kann mit Walnüssen bestellt werden", allergy("treeNut"))).toBe("contains");
    expect(levelOf("you can add walnuts", allergy("treeNut"))).toBe("contains");
  });
});

describe("without, -free and claims", () => {
  it.each([
    ["Carbonara without egg", "without"],
    ["Carbonara, ohne Ei", "without"],
    ["egg-free carbonara", "without"],
    ["Carbonara (eifrei)", "without"],
    ["Carbonara, no egg", "without"],
    ["Carbonara, contains no eggs", "without"],
    ["Carbonara, frei von Ei", "without"],
    ["vegan carbonara", "vegan"],
    ["Carbonara (vegan)", "vegan"],
    ["vegane Carbonara", "vegan"],
  ])("%s: the egg stays for an allergy, and the claim stands beside it", (text, claim) => {
    const carbonara = cautionsFor({ text, profile: allergy("egg") }).find(
      ({ row }) => row?.id === "carbonara",
    );
    expect(carbonara?.level).toBe("contains");
    expect(carbonara?.claims.map(({ id }) => id)).toContain(claim);
  });

  it.each([
    "Carbonara (vegan)",
    "vegane Carbonara",
    "Carbonara ohne Speck",
    "plant-based carbonara",
    "Carbonara [V]",
  ])("%s: for a diet the pork becomes may contain, and is not dropped", (text) => {
    const all = cautionsFor({ text, profile: diet("ovoLactoVegetarian") });
    const pork = all.find(({ row, substance }) => row?.id === "carbonara" && substance === "pork");
    expect(pork?.level).toBe("mayContain");
    expect(pork?.claims).not.toEqual([]);
  });

  it("coeliac disease is held as strictly as an allergy", () => {
    const bread = cautionsFor({ text: "glutenfreies Brot", profile: { ...base, coeliac: true } }).find(
      ({ row }) => row?.id === "bread",
    );
    expect(bread).toMatchObject({ level: "contains", claims: [{ id: "without", word: "glutenfreies" }] });
  });

  it("a claim given apart from the text speaks of the whole dish", () => {
    expect(levelOf("Bolognese", diet("vegan"))).toBe("contains");
    expect(levelOf("Bolognese", diet("vegan"), ["vegan"])).toBe("mayContain");
    expect(levelOf("Bolognese", allergy("beef"), ["vegan"])).toBe(levelOf("Bolognese", allergy("beef")));
    const [caution] = cautionsFor({ text: "Bolognese", profile: diet("vegan"), claims: ["vegan"] });
    expect(caution?.claims).toEqual([{ id: "vegan", word: "vegan", start: null, end: null }]);
  });

  it("a claim before a noun speaks of that noun only", () => {
    const plain = cautionsFor({ text: "vegan sausage in a brioche bun", profile: diet("vegan") });
    expect(plain.filter(({ level }) => level === "contains").map(({ row }) => row?.id)).toEqual(["brioche"]);
  });

  it("a claim for one dish says nothing of the other", () => {
    expect(levelOf("vegan burger or beef burger", diet("eatsFishNoMeat"))).toBe("contains");
    expect(levelOf("vegane Wurst oder Rindswurst", diet("eatsFishNoMeat"))).toBe("contains");
    expect(levelOf("Vegane Lasagne\nRindsroulade", diet("eatsFishNoMeat"))).toBe("contains");
  });

  it.each([
    "vegane Bolognese auf Wunsch",
    "vegan bolognese available",
    "Bolognese, vegan on request",
    "Bolognese (auch vegan)",
    "Bolognese, vegane Option möglich",
    "Bolognese, nicht vegan",
  ])("%s weakens nothing", (text) => {
    expect(levelOf(text, diet("ovoLactoVegetarian"))).toBe("contains");
  });

  it("lactose-free says something to lactose intolerance and nothing to milk allergy", () => {
    // Source: Food Safety Authority of Ireland, Lactose-free claims: a lactose-free food may contain milk protein.
    const intolerant = { ...base, intolerances: ["lactose"] };
    expect(levelOf("Lactose-free cream", intolerant)).toBe("mayContain");
    const cream = cautionsFor({ text: "Lactose-free cream", profile: allergy("milk") }).find(
      ({ row }) => row?.id === "cream",
    );
    expect(cream).toMatchObject({ level: "contains", claims: [] });
    expect(levelOf("laktosefrei", allergy("milk"))).not.toBe("none");
  });

  it("a religious claim speaks to its own diet only", () => {
    expect(levelOf("halal sausage", diet("halal"))).toBe("mayContain");
    expect(levelOf("halal sausage", diet("ovoLactoVegetarian"))).toBe("contains");
  });

  it.each([
    ["free-range eggs", "contains"],
    ["Freilandeier", "contains"],
    ["not without egg", "contains"],
    ["nicht ohne Ei", "contains"],
    ["Salat ohne Ei", "mayContain"],
    ["Salat ohne Speck, Ei", "contains"],
    ["Salat ohne Speck mit Ei", "contains"],
    ["Salat ohne Speck und Ei", "mayContain"],
  ])("%s: egg %s", (text, level) => {
    expect(levelOf(text, allergy("egg"))).toBe(level);
  });
});
