import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { newMeal, type Meal } from "../../src/meals/meal.js";
import { csvCell, writeMealCsv } from "../../src/meals/mealCsv.js";
import { anyMeal } from "./arbitraries.js";
import { found } from "./findings.js";

const say = (word: string) => word.split(".").slice(1).join(".");

/** A reader of its own, after the grammar of RFC 4180, section 2: it knows nothing of the writer. */
function readCsv(text: string): string[][] {
  const lines: string[][] = [[]];
  let at = 0;
  while (at < text.length) {
    let cell = "";
    if (text[at] === '"') {
      at += 1;
      while (text[at] !== '"' || text[at + 1] === '"') {
        if (at >= text.length) throw new Error("open quote");
        cell += text[at];
        at += text[at] === '"' ? 2 : 1;
      }
      at += 1;
    } else {
      while (at < text.length && text[at] !== "," && !text.startsWith("\r\n", at)) {
        if (text[at] === '"') throw new Error("a quote within an unquoted cell");
        cell += text[at];
        at += 1;
      }
    }
    lines.at(-1)!.push(cell);
    if (text[at] === ",") {
      at += 1;
      if (at === text.length) lines.at(-1)!.push("");
    } else if (text.startsWith("\r\n", at)) {
      at += 2;
      lines.push([]);
    } else if (at < text.length) throw new Error(`strange sign after a cell: ${text[at]}`);
  }
  return lines.slice(0, -1);
}

describe("one cell", () => {
  it.each([
    // Source: RFC 4180, section 2, rules 5 to 7: its own examples of quotes, line breaks and doubled quotes.
    ["aaa", "aaa"],
    ["b\r\nbb", '"b\r\nbb"'],
    ['b"bb', '"b""bb"'],
    ["a,b", '"a,b"'],
    ["", ""],
  ])("%j is written as %j", (text, cell) => {
    expect(csvCell(text)).toBe(cell);
  });

  it.each([
    // Source: OWASP ASVS 5.0, requirement 1.2.10: =, +, -, @, tab and null at the start; and line breaks.
    ["=1+1", "'=1+1"],
    ["+49", "'+49"],
    ["-1", "'-1"],
    ["@SUM(A1)", "'@SUM(A1)"],
    ["\tx", "'\tx"],
    ["\0x", "'\0x"],
    ["\rx", '"\'\rx"'],
    ["\n=x", '"\'\n=x"'],
    ['=HYPERLINK("x","y")', '"\'=HYPERLINK(""x"",""y"")"'],
    ["a=b", "a=b"],
    ["2-3", "2-3"],
  ])("%j cannot become a formula: %j", (text, cell) => {
    expect(csvCell(text)).toBe(cell);
  });
});

describe("meals for a spreadsheet", () => {
  const meal: Meal = {
    ...newMeal("m1", "2026-11-25T18:30:00Z"),
    dish: "leek dumplings, fried",
    place: "stall 4",
    claims: ["menu says vegetarian", 'cook: "no stock"'],
    finding: found("meat", "not smelled", 0.07),
    cautions: [{ id: "c", text: "shared fryer: ask" }],
    outcome: "partlyEaten",
    truth: {
      groups: { meat: "present", egg: "absent" },
      source: "kitchen",
      knownAt: "2026-11-25T19:00:00Z",
      note: "",
    },
    reaction: { onsetMs: 5_430_000, symptoms: ["nausea", "hives"], severity: 2, note: "better next day" },
  };

  it("has a line a meal, three columns a group, and the caution beside the finding", () => {
    const [header, line, ...more] = readCsv(writeMealCsv([meal], say));
    expect(more).toEqual([]);
    const cells = Object.fromEntries(header!.map((name, i) => [name, line![i]]));
    expect(cells).toEqual({
      at: "2026-11-25T18:30:00Z",
      dish: "leek dumplings, fried",
      place: "stall 4",
      claims: 'menu says vegetarian; cook: "no stock"',
      cautions: "shared fryer: ask",
      outcome: "partlyEaten",
      "egg: finding": "",
      "egg: probability": "",
      "egg: truth": "absent",
      "meat: finding": "not smelled",
      "meat: probability": "0.07",
      "meat: truth": "present",
      truthSource: "kitchen",
      truthNote: "",
      onsetMinutes: "91", // 5430 s = 90.5 min, rounded
      symptoms: "nausea; hives",
      severity: "2",
      howIFelt: "better next day",
      note: "",
    });
  });

  it("can be read again by the standard's grammar, and no cell begins a formula", () => {
    fc.assert(
      fc.property(fc.array(anyMeal, { maxLength: 5 }), (meals) => {
        const text = writeMealCsv(meals, say);
        const [header, ...lines] = readCsv(text);
        expect(lines).toHaveLength(meals.length);
        for (const [i, line] of lines.entries()) {
          expect(line).toHaveLength(header!.length);
          expect(line.every((cell) => !/^[=+\-@\t\r\n]/.test(cell))).toBe(true);
          const dish = meals[i]!.dish;
          expect([dish, `'${dish}`]).toContain(line[1]);
        }
        expect(text.endsWith("\r\n")).toBe(true);
      }),
    );
  });

  it("is a header alone, without meals", () => {
    expect(readCsv(writeMealCsv([], say))).toHaveLength(1);
  });
});
