// A phone's clock and where it is: daylight saving, travel, and a clock that is set back. Changes of the clocks: IANA
// time zone database, Europe/Berlin 2026 (29 March 01:00 UTC forward, 25 October 01:00 UTC back); the rest by hand.
import { signal } from "@preact/signals";
import fc from "fast-check";
import { afterEach, describe, expect, it } from "vitest";
import { createDrafts } from "../../src/app/drafts.js";
import { draftOf, mealWith } from "../../src/app/meals/mealDraft.js";
import { queryOf } from "../../src/app/meals/period.js";
import { createJarControl } from "../../src/app/nose/jarControl.js";
import type { SnifferState } from "../../src/flows/snifferState.js";
import { newMeal } from "../../src/meals/meal.js";
import { groupByDay } from "../../src/meals/mealDays.js";
import type { Sniff } from "../../src/sniff/sniff.js";
import { createMemoryStore } from "../../src/store/memoryStore.js";
import { en } from "../../src/text/en.js";
import { agoText } from "../../src/text/formats.js";
import { mealDaysView } from "../../src/views/mealDaysView.js";
import { SNIFF } from "../fuzz/fileTargets.js";
import { memoryPorts, NOW } from "./mealsPorts.js";

const HOUR_MS = 3_600_000;
const zone = process.env["TZ"];
afterEach(() => {
  if (zone === undefined) delete process.env["TZ"];
  else process.env["TZ"] = zone;
});

describe("meals around the change of the clocks in Berlin", () => {
  it("stay on their day: 25 October 2026 has 25 hours, 29 March 23", () => {
    const october = Array.from({ length: 27 }, (_, hour) => Date.UTC(2026, 9, 24, 21) + hour * HOUR_MS);
    const days = groupByDay(
      october.map((ms) => ({ at: new Date(ms).toISOString() })),
      "Europe/Berlin",
    );
    // 23:00 on the 24th in summer time, then the whole 25th, then midnight of the 26th in winter time.
    expect(days.map(({ day, meals }) => [day, meals.length])).toEqual([
      ["2026-10-24", 1],
      ["2026-10-25", 25],
      ["2026-10-26", 1],
    ]);
    const march = Array.from({ length: 25 }, (_, hour) => Date.UTC(2026, 2, 28, 22) + hour * HOUR_MS);
    const springDays = groupByDay(
      march.map((ms) => ({ at: new Date(ms).toISOString() })),
      "Europe/Berlin",
    );
    expect(springDays.map(({ day, meals }) => [day, meals.length])).toEqual([
      ["2026-03-28", 1],
      ["2026-03-29", 23],
      ["2026-03-30", 1],
    ]);
  });

  it.each([
    ["2026-10-25", 25],
    ["2026-03-29", 23],
    ["2026-11-25", 24],
  ])("are all in the review of that one day: %s has %i hours", (day, hours) => {
    process.env["TZ"] = "Europe/Berlin";
    const { fromAt, beforeAt } = queryOf({ from: day, upto: day });
    expect((Date.parse(beforeAt ?? "") - Date.parse(fromAt ?? "")) / HOUR_MS).toBe(hours);
  });

  it("keep their instant in the hour that comes twice, when another field is edited", () => {
    process.env["TZ"] = "Europe/Berlin";
    for (const at of ["2026-10-25T00:30:15.500Z", "2026-10-25T01:30:15.500Z"]) {
      const meal = newMeal("m", at);
      const draft = draftOf(meal);
      expect(draft.when).toBe("2026-10-25T02:30"); // both, on the wall
      expect(mealWith(meal, { ...draft, note: "hot" }, at)?.at).toBe(at);
    }
  });

  it("are neither lost nor doubled nor reordered when the phone travels", () => {
    const zones = [
      "Europe/Berlin",
      "Pacific/Kiritimati",
      "America/St_Johns",
      "Asia/Kathmandu",
      "Pacific/Niue",
    ];
    const instants = fc.array(fc.integer({ min: Date.UTC(2020, 0), max: Date.UTC(2030, 0) }), {
      maxLength: 40,
    });
    fc.assert(
      fc.property(instants, fc.constantFrom(...zones), (times, timeZone) => {
        const newestFirst = [...times]
          .sort((a, b) => b - a)
          .map((ms) => ({ at: new Date(ms).toISOString() }));
        const days = groupByDay(newestFirst, timeZone);
        expect(days.flatMap(({ meals }) => meals)).toEqual(newestFirst);
        expect(new Set(days.map(({ day }) => day)).size).toBe(days.length);
      }),
    );
  });
});

describe("“yesterday” in the list of meals", () => {
  const words = { text: en, formats: { locale: "en-GB", timeZone: "Europe/Berlin" } };
  const headings = (at: string, nowMs: number) =>
    mealDaysView({ matching: [newMeal("m", at)], shown: 1, practice: new Set(), nowMs }, words).days.map(
      ({ heading }) => heading,
    );

  it("is the day before, also late on the day of 25 hours and early after the day of 23", () => {
    // 23:30 on 25 October 2026 in Berlin: 24 hours before it was 00:30 of the same day.
    const late = Date.UTC(2026, 9, 25, 22, 30);
    expect(headings("2026-10-25T10:00:00Z", late)).toEqual(["Today"]);
    expect(headings("2026-10-24T10:00:00Z", late)).toEqual(["Yesterday"]);
    // 00:30 on 30 March 2026 in Berlin: 24 hours before it was 23:30 of the 28th.
    const early = Date.UTC(2026, 2, 29, 22, 30);
    expect(headings("2026-03-29T10:00:00Z", early)).toEqual(["Yesterday"]);
    expect(headings("2026-03-28T10:00:00Z", early)).toEqual(["Saturday, 28 March 2026"]);
  });
});

const READY = {
  kind: "ready",
  sniffer: { layout: { snifferId: SNIFF.sniffer.id } },
} as unknown as SnifferState;
const jarSniff = (id: string): Sniff => ({ ...SNIFF, id });

describe("a clock that was set back", () => {
  it("leaves the check jar's readings in the order in which they were taken", async () => {
    const store = createMemoryStore();
    let nowMs = NOW;
    const jar = createJarControl({ ...memoryPorts(store), nowMs: () => nowMs }, signal(READY), signal(null));
    const clock = [0, HOUR_MS, -30 * 24 * HOUR_MS, -30 * 24 * HOUR_MS, 2 * HOUR_MS];
    for (const [i, sinceNow] of clock.entries()) {
      nowMs = NOW + sinceNow;
      expect(await jar.take(jarSniff(`jar-${i}`))).toEqual({ ok: true, value: true });
    }
    expect(jar.readings.value.map(({ sniffId }) => sniffId)).toEqual(clock.map((_, i) => `jar-${i}`));
    const times = jar.readings.value.map(({ at }) => Date.parse(at));
    expect(times).toEqual([...new Set(times)].sort((a, b) => a - b));
  });

  it("never makes an age negative, nor clean air or a nose younger than now", () => {
    const formats = { locale: "en-GB", timeZone: "Europe/Berlin" };
    const tomorrow = new Date(NOW + 24 * HOUR_MS).toISOString();
    expect(agoText(tomorrow, NOW, formats)).toBe("now");
  });

  it("still finds a sniff that was cut short, and lets it go", async () => {
    const store = createMemoryStore();
    const ports = memoryPorts(store);
    await createDrafts({ ...ports, nowMs: () => NOW - 365 * 24 * HOUR_MS }).keep(jarSniff("cut-short"));
    const drafts = createDrafts(ports);
    await drafts.load();
    expect(drafts.sniff.value?.id).toBe("cut-short");
    await drafts.drop();
    const again = createDrafts(ports);
    await again.load();
    expect(again.sniff.value).toBeNull();
  });
});
