/** What the temperature and humidity of a sniff say about the sniffer: is it wet, or its air sensor stuck? */
import { absoluteHumidityGm3, dewPointC } from "../air/humidity.js";
import type { AirReading } from "../kernel/air.js";

/** Relative humidity at which water condenses on a cool part of the sniffer, per cent. Common practice. */
export const WET_HUMIDITY_PCT = 95;
/**
 * A change of temperature that must show in the humidity, kelvin: the saturation pressure changes by 12 % at room
 * temperature (Alduchov and Eskridge 1996), six steps of a sensor that tells whole per cents at half saturation.
 */
export const TELLING_CHANGE_C = 2;
/** Below this a temperature sensor's own noise and lag might be what moved, kelvin. Common practice. */
const LEAST_CHANGE_C = 0.25;
/** Steps of the humidity sensor that must show; fewer might be its hysteresis. As for `TELLING_CHANGE_C`. */
const TELLING_STEPS = 6;
/** Readings from which a smaller change tells: two may agree by chance, so many do not. Common practice. */
export const TELLING_READINGS = 20;
/** The newest ones may tell a temperature whose humidity is still on its way: one of each quantity. */
const ON_THE_WAY = 3;
/** What humidity sensors count in, per cent; the finest is that of the radio (PROFILE.md). */
const STEPS_PCT = [1, 0.5, 0.1, 0.05];
const FINEST_STEP_PCT = 0.01;
/** Colder than any kitchen; the vapour formula holds far below it. */
const COLDEST_C = -90;

/**
 * Does humidity stand still although it cannot, or at an end of its range, in all these readings? The same water in
 * warmer air is a lower relative humidity: the finer the sensor counts, the smaller a change of temperature tells.
 * In air of one temperature nothing is told, though gas channels move: converters of 8 to 12 bits and averaging sensors
 * say one value for minutes there, a cold dish adds no water, and no reading tells which kind of sensor it came from.
 *
 * @param readings - of one stretch of time, oldest first
 */
export function isHumidityStuck(readings: readonly AirReading[]): boolean {
  const told = readings.flatMap(({ humidityPct }) => (humidityPct === undefined ? [] : [humidityPct]));
  const [first] = told;
  if (first === undefined || told.some((one) => one !== first)) return false;
  if (first === 0 || first === 100) return true;
  const temperatures = readings.flatMap(({ temperatureC, humidityPct }) =>
    temperatureC === undefined || humidityPct === undefined ? [] : [temperatureC],
  );
  if (Math.max(...temperatures) - Math.min(...temperatures) >= TELLING_CHANGE_C) return true;
  return temperatures.length >= TELLING_READINGS && mustShow(first, temperatures.slice(0, -ON_THE_WAY));
}

/** Would the change of temperature alone have moved the humidity by several of its steps? */
function mustShow(humidityPct: number, temperaturesC: readonly number[]): boolean {
  const [coolest, warmest] = [Math.min(...temperaturesC), Math.max(...temperaturesC)];
  if (warmest - coolest < LEAST_CHANGE_C) return false;
  const saturatedGm3 = (temperatureC: number) => absoluteHumidityGm3(temperatureC, 100);
  const movedPct = humidityPct * (1 - saturatedGm3(coolest) / saturatedGm3(warmest));
  return movedPct >= TELLING_STEPS * stepOf(humidityPct);
}

/** The coarsest step that the reading is a whole number of: never finer than the sensor's own. */
const stepOf = (humidityPct: number): number =>
  STEPS_PCT.find((step) => Math.abs(humidityPct / step - Math.round(humidityPct / step)) < 1e-6) ??
  FINEST_STEP_PCT;

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
