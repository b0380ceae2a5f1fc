/** What the temperature and humidity of a sniff say about the sniffer: is it wet, or its air sensor stuck? */
import { dewPointC } from "../air/humidity.js";
import type { AirReading } from "../kernel/air.js";

/** Relative humidity at which water condenses on a cool part of the sniffer, per cent. Common practice. */
export const WET_HUMIDITY_PCT = 95;
/**
 * A change of temperature that must show in the humidity, kelvin: the saturation pressure changes by 12 % at room
 * temperature (Alduchov and Eskridge 1996), six steps of a sensor that tells whole per cents at half saturation.
 */
export const TELLING_CHANGE_C = 2;
/** Colder than any kitchen; the vapour formula holds far below it. */
const COLDEST_C = -90;

/** Does humidity stand still although it cannot, or at an end of its range, in all these readings? */
export function isHumidityStuck(readings: readonly AirReading[]): boolean {
  const told = readings.flatMap(({ humidityPct }) => (humidityPct === undefined ? [] : [humidityPct]));
  const [first] = told;
  if (first === undefined || told.some((one) => one !== first)) return false;
  if (first === 0 || first === 100) return true;
  const temperatures = readings.flatMap(({ temperatureC, humidityPct }) =>
    temperatureC === undefined || humidityPct === undefined ? [] : [temperatureC],
  );
  return Math.max(...temperatures) - Math.min(...temperatures) >= TELLING_CHANGE_C;
}

/**
 * How far the coolest part of the sniffer is above the dew point of the air at it.
 *
 * @param surfaceC - that part's temperature; the air's own where it is not known
 * @returns kelvin, below 0 where water condenses; infinite in dry air; null where the air is not known
 */
export function dewMarginC({ temperatureC, humidityPct }: AirReading, surfaceC?: number): number | null {
  if (temperatureC === undefined || humidityPct === undefined || temperatureC < COLDEST_C) return null;
  const dew = dewPointC(temperatureC, humidityPct);
  return dew === null ? Number.POSITIVE_INFINITY : Math.min(surfaceC ?? temperatureC, temperatureC) - dew;
}

/**
 * The case has the temperature of the clean air when it comes over the plate: the dew point of the headspace is held
 * against that.
 */
export function airFault(
  cleanAir: AirReading = {},
  headspace: AirReading = {},
): "airStuck" | "wetSensor" | null {
  if (headspace.humidityPct === undefined) return null;
  if (isHumidityStuck([cleanAir, headspace])) return "airStuck";
  const margin = dewMarginC(headspace, cleanAir.temperatureC);
  return headspace.humidityPct >= WET_HUMIDITY_PCT || (margin !== null && margin <= 0) ? "wetSensor" : null;
}
