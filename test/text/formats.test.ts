import fc from "fast-check";
import { expect, it } from "vitest";
import {
  agoText,
  dayKey,
  listText,
  numberText,
  percentText,
  sizeText,
  timeText,
} from "../../src/text/formats.js";

const BRITISH = { locale: "en-GB", timeZone: "Europe/Berlin" };
const GERMAN = { locale: "de-DE", timeZone: "Europe/Berlin" };
const NOW_MS = Date.parse("2026-11-25T18:40:00Z");

it.each([
  [0, "0%"],
  [0.004, "<1%"],
  [0.005, "1%"],
  [0.5, "50%"],
  [0.994, "99%"],
  [0.996, ">99%"],
  [1, "100%"],
])("writes the fraction %s as %s: only what is 0 or 1 reads 0 or 100", (fraction, text) => {
  expect(percentText(fraction, BRITISH)).toBe(text);
});

it("never claims certainty that is not there, at any number of decimals", () => {
  const open = fc.double({ min: 0, max: 1, minExcluded: true, maxExcluded: true, noNaN: true });
  fc.assert(
    fc.property(open, fc.integer({ min: 0, max: 2 }), (fraction, decimals) => {
      const text = percentText(fraction, BRITISH, decimals);
      return text !== "0%" && text !== "100%";
    }),
  );
});

it("follows the locale", () => {
  // CLDR: German writes a comma for the decimals and a space before the per cent sign.
  expect(numberText(1234.5, GERMAN, 1)).toBe("1.234,5");
  expect(percentText(0.125, GERMAN, 1)).toMatch(/^12,5\s%$/);
  expect(listText(["meat", "fish", "egg"], BRITISH)).toBe("meat, fish and egg");
});

it("takes the day where the person is, over midnight and over the change of the clocks", () => {
  // Berlin is UTC+1 in winter; on 25 October 2026 its clocks went back at 01:00 UTC.
  expect(dayKey("2026-11-25T23:30:00Z", BRITISH)).toBe("2026-11-26");
  expect(dayKey("2026-11-25T23:30:00Z", { ...BRITISH, timeZone: "America/New_York" })).toBe("2026-11-25");
  expect(timeText("2026-10-25T00:30:00Z", BRITISH)).toBe("2:30");
  expect(timeText("2026-10-25T01:30:00Z", BRITISH)).toBe("2:30");
});

it.each([
  ["2026-11-22T18:40:00Z", "3 days ago"],
  ["2026-11-25T17:39:00Z", "1 hour ago"],
  ["2026-11-25T18:39:30Z", "now"],
  ["2026-11-25T19:00:00Z", "now"], // the clock went back: never "in 20 minutes"
])("tells the age of %s as %s", (instant, text) => {
  expect(agoText(instant, NOW_MS, BRITISH)).toBe(text);
});

it("tells sizes in the units that phones use", () => {
  expect(sizeText(48_200_000, BRITISH)).toBe("48.2 MB");
  expect(sizeText(900, BRITISH)).toBe("1 kB");
});
