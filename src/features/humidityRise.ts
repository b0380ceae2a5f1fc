import { absoluteHumidityGm3 } from "../air/humidity.js";
import type { AirReading } from "../kernel/air.js";
import type { Sniff } from "../sniff/sniff.js";
import type { Reference } from "./recipe.js";

/** Absolute humidity below this is taken as this: the logarithm of dry air says nothing. Common practice. */
const LEAST_HUMIDITY_GM3 = 0.1;

/**
 * Covariate for the humidity correction: how much wetter the headspace was than clean air, as the log of the ratio of
 * the absolute humidities; for features that are not set against clean air, the log of the headspace's own.
 *
 * @returns natural log units, or null where a reading is missing; only for correcting log resistances, never a feature
 * @see Huerta and others, Chemometrics and Intelligent Laboratory Systems 157 (2016), 169-176 (humidity as covariate)
 */
export function humidityRise(sniff: Sniff, reference: Reference): number | null {
  const over = logHumidity(sniff.air?.headspace);
  if (reference !== "cleanAir") return over;
  const before = logHumidity(sniff.air?.cleanAir);
  return before === null || over === null ? null : over - before;
}

function logHumidity(air: AirReading | undefined): number | null {
  if (air?.temperatureC === undefined || air.humidityPct === undefined) return null;
  if (air.temperatureC <= -100) return null;
  return Math.log(Math.max(LEAST_HUMIDITY_GM3, absoluteHumidityGm3(air.temperatureC, air.humidityPct)));
}
