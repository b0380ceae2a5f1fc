import { describe, expect, it } from "vitest";
import { absoluteHumidityGm3 } from "../../src/air/humidity.js";
import { seededRandom } from "../../src/kernel/random.js";
import { caseHumidityPct, restingAir, stepAir, type AirState } from "../../src/virtual/airState.js";
import type { Plate } from "../../src/virtual/dishes.js";
import { FAMILIES, familyPpm } from "../../src/virtual/families.js";
import { inletAir, plateTemperatureC } from "../../src/virtual/inletAir.js";
import { eveningAir, ORDINARY_ROOM } from "../../src/virtual/roomAir.js";

const PLATE: Plate = {
  dish: "plain",
  groups: {},
  ppm: familyPpm({ alcohols: 2 }),
  servedC: 55,
  coolingMs: 600_000,
  mixing: 0.035,
};
const CALM = { servedForMs: 0, plume: 1, roomFactor: 1, steamFactor: 1 };
const ALCOHOLS = FAMILIES.indexOf("alcohols");

describe("the air at the inlet", () => {
  it("is the room's own where no plate stands", () => {
    const air = inletAir(ORDINARY_ROOM, null, CALM);
    expect(air.ppm).toEqual(ORDINARY_ROOM.backgroundPpm);
    expect(air.absoluteHumidityGm3).toBe(ORDINARY_ROOM.absoluteHumidityGm3);
    expect(air.temperatureC).toBe(21);
  });

  it("holds the recipe's amounts over a plate at 55 degrees, on top of the room's", () => {
    const air = inletAir(ORDINARY_ROOM, PLATE, CALM);
    expect(air.ppm[ALCOHOLS]).toBeCloseTo(2 + ORDINARY_ROOM.backgroundPpm[ALCOHOLS]!, 12);
  });

  it("doubles with the portion's vapour and with a plume of 2, the room's part aside", () => {
    const own = (plate: Plate, plume: number) =>
      inletAir(ORDINARY_ROOM, plate, { ...CALM, plume }).ppm[ALCOHOLS]! -
      ORDINARY_ROOM.backgroundPpm[ALCOHOLS]!;
    expect(own({ ...PLATE, ppm: familyPpm({ alcohols: 4 }) }, 1)).toBeCloseTo(4, 12);
    expect(own(PLATE, 2)).toBeCloseTo(4, 12);
  });

  it("weakens as the plate cools", () => {
    const later = inletAir(ORDINARY_ROOM, PLATE, { ...CALM, servedForMs: 600_000 });
    expect(later.ppm[ALCOHOLS]).toBeLessThan(inletAir(ORDINARY_ROOM, PLATE, CALM).ppm[ALCOHOLS]!);
    // Newton's law of cooling after one time constant, by hand: 21 + 34 / e = 33.508.
    expect(plateTemperatureC(PLATE, 21, 600_000)).toBeCloseTo(33.508, 3);
  });

  it("mixes in the plate's saturated air by share", () => {
    const room = ORDINARY_ROOM.absoluteHumidityGm3;
    const saturated = absoluteHumidityGm3(55, 100);
    const air = inletAir(ORDINARY_ROOM, PLATE, CALM);
    expect(air.absoluteHumidityGm3).toBeCloseTo(0.965 * room + 0.035 * saturated, 10);
    expect(air.temperatureC).toBeGreaterThan(21);
  });

  it("never holds more than the plate's own air, however strong the plume", () => {
    const air = inletAir(ORDINARY_ROOM, PLATE, { ...CALM, plume: 1000, steamFactor: 1000 });
    expect(air.absoluteHumidityGm3).toBeCloseTo(absoluteHumidityGm3(55, 100), 10);
    expect(air.temperatureC).toBeCloseTo(55, 10);
  });
});

describe("the air inside the sniffer", () => {
  const over = (steamFactor: number, servedC: number): AirState => {
    const random = seededRandom(3);
    let air = restingAir(ORDINARY_ROOM, random);
    const input = { room: ORDINARY_ROOM, plate: { ...PLATE, servedC }, steamFactor, releaseFactor: 1 };
    for (let i = 0; i < 240; i += 1) {
      air = stepAir(air, { ...input, servedForMs: i * 250 }, 250, random);
    }
    return air;
  };

  it("is near the room's humidity when it has lain there, a little drier for its own warmth", () => {
    const humidity = caseHumidityPct(restingAir(ORDINARY_ROOM, seededRandom(1)));
    expect(humidity).toBeLessThan(48);
    expect(humidity).toBeGreaterThan(42);
  });

  it("grows humid over a hot plate and hardly over a cool one", () => {
    expect(caseHumidityPct(over(1, 60))).toBeGreaterThan(caseHumidityPct(over(1, 27)) + 5);
  });

  it("stands at 100 % when steam meets a case colder than its dew point", () => {
    const air = over(12, 60);
    expect(caseHumidityPct(air)).toBe(100);
    // The steam's dew point lies above the case: the vapour would saturate warmer air than that.
    expect(air.absoluteHumidityGm3).toBeGreaterThan(absoluteHumidityGm3(air.caseC, 100));
  });

  it("follows a step of odour with the family's own half time", () => {
    // Without gusts the analytic half time is uptake * ln 2; gusts only blur the goal, so hold it by averaging.
    const halves = Array.from({ length: 60 }, (_, seed) => {
      const random = seededRandom(seed);
      let air = restingAir({ ...ORDINARY_ROOM, backgroundPpm: familyPpm({}) }, random);
      const input = {
        room: { ...ORDINARY_ROOM, backgroundPpm: familyPpm({}) },
        plate: { ...PLATE, coolingMs: 1e12 },
        steamFactor: 1,
        servedForMs: 0,
        releaseFactor: 1,
      };
      for (let ms = 0; ms < 2079; ms += 99) air = stepAir(air, input, 99, random);
      return air.ppm[ALCOHOLS]!;
    });
    // 2079 ms = 3000 ms * ln 2: half of 2 ppm.
    expect(halves.reduce((sum, value) => sum + value, 0) / halves.length).toBeCloseTo(1, 1);
  });
});

it("draws each market evening its own air, within what a market has", () => {
  const evenings = Array.from({ length: 200 }, (_, seed) => eveningAir(seededRandom(seed)));
  expect(new Set(evenings.map((air) => air.temperatureC)).size).toBe(200);
  for (const air of evenings) {
    expect(air.temperatureC).toBeGreaterThan(8);
    expect(air.temperatureC).toBeLessThan(34);
    expect(air.absoluteHumidityGm3).toBeLessThanOrEqual(absoluteHumidityGm3(air.temperatureC, 75));
    expect(Math.min(...air.backgroundPpm)).toBeGreaterThan(0);
  }
});
