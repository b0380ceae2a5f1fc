import { absoluteHumidityGm3 } from "../air/humidity.js";
import { standardNormal, type RandomSource } from "../kernel/random.js";
import { spreadFactor } from "./chance.js";
import { FAMILIES, familyPpm, type FamilyPpm } from "./families.js";

/** The air of a place, as it is where no plate stands. */
export interface RoomAir {
  readonly temperatureC: number;
  readonly absoluteHumidityGm3: number;
  readonly pressurePa: number;
  /** What the neighbouring stalls leave in the air, in ppm; shape [FAMILIES.length]. */
  readonly backgroundPpm: FamilyPpm;
}

/** Smoke, frying and spices in the air of a market, in ppm. Invented for the model: a tenth of a plate or less. */
const MARKET_PPM = familyPpm({
  fatAldehydes: 0.06,
  streckerAldehydes: 0.04,
  hydrogenSulfide: 0.004,
  dimethylSulfide: 0.015,
  alliumSulfides: 0.04,
  pyrazines: 0.03,
  amines: 0.012,
  alcohols: 0.15,
  esters: 0.03,
  ketones: 0.05,
  acids: 0.05,
  terpenes: 0.04,
});
const BACKGROUND_SPREAD = 0.4;

/** An ordinary room: 21 degrees Celsius, 48 %, sea level, the median background. */
export const ORDINARY_ROOM: RoomAir = {
  temperatureC: 21,
  absoluteHumidityGm3: absoluteHumidityGm3(21, 48),
  pressurePa: 101_325,
  backgroundPpm: MARKET_PPM,
};

/** The air of one market evening: weather, crowd and neighbours, drawn anew. */
export function eveningAir(random: RandomSource): RoomAir {
  const temperatureC = 21 + 2.5 * standardNormal(random);
  const humidityPct = Math.min(75, Math.max(30, 50 + 9 * standardNormal(random)));
  return {
    temperatureC,
    absoluteHumidityGm3: absoluteHumidityGm3(temperatureC, humidityPct),
    pressurePa: 101_325 + 700 * standardNormal(random),
    backgroundPpm: FAMILIES.map((_, i) => MARKET_PPM[i]! * spreadFactor(random, BACKGROUND_SPREAD)),
  };
}
