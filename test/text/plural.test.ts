import { expect, it } from "vitest";
import { de } from "../../src/text/de.js";
import { en } from "../../src/text/en.js";

// Source: Unicode CLDR 45, Language Plural Rules: in English and German "one" is i = 1 and v = 0, "other" the rest.
it.each([
  ["0", "0 meals", "0 Mahlzeiten"],
  ["1", "1 meal", "1 Mahlzeit"],
  ["2", "2 meals", "2 Mahlzeiten"],
  ["11", "11 meals", "11 Mahlzeiten"],
  ["1,001", "1,001 meals", "1,001 Mahlzeiten"],
])("counts %s", (count, english, german) => {
  expect(en.meals.count(count, count)).toBe(english);
  expect(de.meals.count(count, count)).toBe(german);
  expect(en.meals.count("0", count)).toBe(count === "0" ? english : `0 of ${english}`);
});

it("lets the verb follow the count", () => {
  expect(en.data.setAside("1")).toMatch(/^1 damaged record was set aside\. It is/);
  expect(en.data.setAside("3")).toMatch(/^3 damaged records were set aside\. They are/);
  expect(en.review.surprising("1", "4")).toBe("1 of 4 confirmed meals was something else than was said");
  expect(de.review.surprising("1", "1")).toBe("1 von 1 bestätigten Mahlzeit war anders, als gesagt wurde");
});
