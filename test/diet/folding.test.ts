import { describe, expect, it } from "vitest";
import { foldWord } from "../../src/diet/foldWord.js";
import { negatedWords, mayContainWords } from "../../src/diet/lineScopes.js";
import { parseName, shownName } from "../../src/diet/lexicon.js";
import { stemsOf } from "../../src/diet/stemsOf.js";
import { wordsOf } from "../../src/diet/wordsOf.js";

describe("one spelling for all", () => {
  it.each([
    [["Käse", "Kaese", "kase", "KÄSE", "Ka\u0308se"], "kase"],
    [["Brühe", "Bruehe", "bruhe"], "bruhe"],
    [["Soße", "Sosse", "SOSSE"], "sosse"],
    [["Crème", "Creme"], "creme"],
    [["Bœuf", "Boeuf", "Böuf"], "bouf"],
    [["shepherd's", "shepherd’s", "shepherds"], "shepherds"],
    [["Rinder\u00adbrühe"], "rinderbruhe"],
    [["jalapeño"], "jalapeno"],
  ])("%s", (spellings, folded) => {
    expect(new Set(spellings.map(foldWord))).toEqual(new Set([folded]));
  });

  it("folding twice changes nothing", () => {
    for (const word of ["Maßkrüge", "aeoeue", "Éclair", "Ćevapčići"])
      expect(foldWord(foldWord(word))).toBe(foldWord(word));
  });
});

describe("regular endings", () => {
  it.each([
    ["eggs", "egg"],
    ["anchovies", "anchovy"],
    ["nusse", "nuss"],
    ["huhner", "huhn"],
    ["wursten", "wurst"],
    ["veganes", "vegan"],
    ["kirschen", "kirsche"],
  ])("%s may be %s", (word, stem) => {
    expect(stemsOf(word)).toContain(stem);
  });

  it("leave short words alone: ein is no egg, Eier and Eis are listed apart", () => {
    expect(stemsOf("ein")).toEqual(["ein"]);
    expect(stemsOf("eier")).toEqual(["eier"]);
  });

  it("try the longer stem first", () => {
    const stems = stemsOf("kirschen");
    expect(stems.indexOf("kirsche")).toBeLessThan(stems.indexOf("kirsch"));
  });
});

describe("words and names", () => {
  it("gives offsets of the text and what stands between", () => {
    expect(wordsOf("Käse, Ei")).toEqual([
      { raw: "Käse", folded: "kase", start: 0, end: 4, gap: "" },
      { raw: "Ei", folded: "ei", start: 6, end: 8, gap: ", " },
    ]); // counted by hand
    expect(wordsOf("")).toEqual([]);
  });

  it("reads the signs of a name and hides them from people", () => {
    expect(parseName("=Hering")).toEqual({ words: ["hering"], wholeOnly: true, opens: false, ends: false });
    expect(parseName("Hack-")).toMatchObject({ words: ["hack"], opens: true, ends: false });
    expect(parseName("-eis")).toMatchObject({ words: ["eis"], ends: true });
    expect(parseName("Surf & Turf").words).toEqual(["surf", "turf"]);
    expect(["=Hering", "Hack-", "-eis", "Gado-Gado"].map(shownName)).toEqual([
      "Hering",
      "Hack",
      "eis",
      "Gado-Gado",
    ]);
  });
});

describe("scopes of a line", () => {
  const under = (text: string, scope: typeof negatedWords): string[] => {
    const words = wordsOf(text);
    return words.filter((_, i) => scope(words).has(i)).map(({ raw }) => raw);
  };

  it.each([
    ["ohne Milch und Ei, Nuss", ["Milch", "Ei"]],
    ["without nuts with cream", ["nuts"]],
    ["nut-free cake", ["nut"]],
    ["free from milk", ["milk"]],
    ["free range eggs", []],
    ["laktose frei", ["laktose"]],
    ["nicht ohne Ei", []],
    ["does not contain egg", ["egg"]],
    ["ohne eins zwei drei vier fünf", ["eins", "zwei", "drei", "vier"]],
    ["Preis frei", ["Preis"]],
    ["nuts, free water", []],
  ])("%s", (text, negated) => {
    expect(under(text, negatedWords)).toEqual(negated);
  });

  it.each([
    ["may contain nuts, milk. Egg", ["contain", "nuts", "milk"]],
    ["kann Spuren von Ei enthalten, Milch", ["von", "Ei"]],
    ["kann man essen", []],
  ])("%s", (text, traces) => {
    expect(under(text, mayContainWords)).toEqual(traces);
  });
});
