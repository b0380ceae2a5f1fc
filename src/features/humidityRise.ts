import { absoluteHumidityGm3 } from "../air/humidity.js";
import type { AirReading } from "../kernel/air.js";
import type { Sniff } from "../sniff/sniff.js";

/** Absolute humidity below this is taken as this: the logarithm of dry air says nothing. Common practice. */
const LEAST_HUMIDITY_GM3 = 0.1;

/**
 * How much wetter the headspace was than clean air: the log of the ratio of the absolute humidities.
 *
 * @returns natural log units, or null where a reading is missing; only for correcting log ratios, never a feature
 * @see Huerta and others, Chemometrics and Intelligent Laboratory Systems 157 (2016), 169-176 (humidity as covariate)
 */
export function humidityRise(sniff: Sniff): number | null {
  const before = logHumidity(sniff.air?.cleanAir);
  const over = logHumidity(sniff.air?.headspace);
  return before === null || over === null ? null : over - before;
}

function logHumidity(air: AirReading | undefined): number | null {
  if (air?.temperatureC === undefined || air.humidityPct === undefined) return null;
  if (air.temperatureC <= -100) return null;
  return Math.log(Math.max(LEAST_HUMIDITY_GM3, absoluteHumidityGm3(air.temperatureC, air.humidityPct)));
}
