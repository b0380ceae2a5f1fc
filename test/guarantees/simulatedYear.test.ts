/** The short form of `npm run year`: the check jar speaks before a poisoned sniffer costs more than was accepted. */
import { expect, it } from "vitest";
import { chartOver, claimsOf, liveYear } from "../bench/simulatedYear.js";
import { yearPicture } from "../bench/yearPicture.js";
import { DEMO_NOSE } from "../transfer/twoSniffers.js";

const SEEDS = [1, 2, 3, 4];
const ACCEPTED = 0.1;
const YEARS = SEEDS.map((seed) => liveYear({ seed, platesAMonth: 8 }));
const alarmMonth = (year: (typeof YEARS)[number]) =>
  year.findIndex((month) => chartOver(month).inControl === false);
const wrongMonth = (year: (typeof YEARS)[number]) =>
  year.findIndex(({ first }, place) => {
    const { claims, wrong } = claimsOf(DEMO_NOSE, first);
    return place >= 4 && wrong > ACCEPTED * claims;
  });

it.each(SEEDS)(
  "year %s: the alarm comes no later than the first month with too many wrong findings",
  (seed) => {
    const year = YEARS[SEEDS.indexOf(seed)]!;
    const alarm = alarmMonth(year);
    expect(alarm).toBeGreaterThanOrEqual(0);
    const wrong = wrongMonth(year);
    if (wrong >= 0) expect(alarm).toBeLessThanOrEqual(wrong);
  },
);

it("without the chart too many would have been wrong in most of these years", () => {
  expect(YEARS.filter((year) => wrongMonth(year) >= 0).length).toBeGreaterThan(SEEDS.length / 2);
});

it("with the chart nothing is claimed from the alarm on", () => {
  for (const year of YEARS) {
    const out = year.find((month) => chartOver(month).inControl === false)!;
    expect(claimsOf(DEMO_NOSE, out.first, false)).toMatchObject({ claims: 0, wrong: 0 });
    expect(claimsOf(DEMO_NOSE, out.first).claims).toBeGreaterThan(0);
  }
});

it("draws one line a course, and the alarm", () => {
  const month = { claims: 4, wrong: 1, answers: 10 };
  const week = (jar: number) => ({ week: 1, jar, inControl: null });
  const picture = yearPicture([week(-0.6), week(-0.4)], [{ name: "so", claims: [month, null] }], 1);
  // The jar, and the course in two panels. Counted by hand.
  expect(picture.match(/<polyline/g)).toHaveLength(3);
  expect(picture).toContain('opacity="0.4"');
  expect(picture).toContain(">so</text>");
});
