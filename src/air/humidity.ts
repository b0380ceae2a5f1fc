/** Water vapour in air: saturation pressure, dew point, absolute humidity. */

/** Coefficients of a Magnus formula: pressurePa = base * exp(slope * t / (offset + t)), t in degrees Celsius. */
interface MagnusForm {
  readonly basePa: number;
  readonly slope: number;
  readonly offsetC: number;
}

/** Over water, -40..50 C. Source: Alduchov and Eskridge, J. Applied Meteorology 35 (1996), 601-609. */
const ALDUCHOV_ESKRIDGE: MagnusForm = { basePa: 610.94, slope: 17.625, offsetC: 243.04 };
/** Over water, pure phase, -45..60 C. Source: WMO-No. 8, Guide to Instruments, Annex 4.B. */
const WMO_8: MagnusForm = { basePa: 611.2, slope: 17.62, offsetC: 243.12 };
/** 1e6 / R_v with R_v = 461.5 J/(kg K), rounded as is usual: grams and pascals. Source: ideal gas law. */
const GRAM_KELVIN_PER_PASCAL = 2.1668;
const ZERO_CELSIUS_K = 273.15;

/**
 * Saturation vapour pressure over water, Alduchov and Eskridge form; the one the product computes with.
 *
 * @param temperatureC - degrees Celsius, above -243
 * @returns pascal; within 0.4 per cent of IAPWS from 0 to 60 degrees
 * @throws {RangeError} if the temperature is out of range
 */
export function saturationPressurePa(temperatureC: number): number {
  return magnusPa(ALDUCHOV_ESKRIDGE, temperatureC);
}

/** Saturation vapour pressure over water in pascal, WMO-No. 8 Annex 4.B form, without enhancement factor. */
export function saturationPressureWmoPa(temperatureC: number): number {
  return magnusPa(WMO_8, temperatureC);
}

/**
 * Enhancement factor for moist air: saturation pressure in air over that of the pure phase.
 *
 * @param pressurePa - air pressure, positive
 * @throws {RangeError} if the pressure is not positive
 * @see WMO-No. 8, Guide to Instruments, Annex 4.B: 1.0016 + 3.15e-6 p - 0.074 / p, p in hPa
 */
export function moistAirFactor(pressurePa: number): number {
  if (!(pressurePa > 0)) throw new RangeError(`pressure must be positive, got ${pressurePa}`);
  const hectopascal = pressurePa / 100;
  return 1.0016 + 3.15e-6 * hectopascal - 0.074 / hectopascal;
}

/**
 * Dew point over water.
 *
 * @param temperatureC - degrees Celsius, above -243
 * @param humidityPct - relative humidity, per cent, 0..100
 * @returns degrees Celsius, at most `temperatureC`; null in perfectly dry air, which has none
 * @throws {RangeError} if an argument is out of range
 * @see Alduchov and Eskridge, J. Applied Meteorology 35 (1996), 601-609 (their formula turned round)
 */
export function dewPointC(temperatureC: number, humidityPct: number): number | null {
  checkHumidity(humidityPct);
  checkTemperature(temperatureC, ALDUCHOV_ESKRIDGE);
  if (humidityPct === 0) return null;
  if (humidityPct === 100) return temperatureC;
  const { slope, offsetC } = ALDUCHOV_ESKRIDGE;
  const exponent = Math.log(humidityPct / 100) + (slope * temperatureC) / (offsetC + temperatureC);
  // Rounding alone can lift it above the air's temperature, close to saturation.
  return Math.min(temperatureC, (offsetC * exponent) / (slope - exponent));
}

/**
 * Absolute humidity: the mass of water in a volume of air.
 *
 * @param temperatureC - degrees Celsius, above -243
 * @param humidityPct - relative humidity, per cent, 0..100
 * @returns gram per cubic metre
 * @throws {RangeError} if an argument is out of range
 * @see ideal gas law, 216.68 e / T with e in hPa and T in kelvin, on {@link saturationPressurePa}
 */
export function absoluteHumidityGm3(temperatureC: number, humidityPct: number): number {
  checkHumidity(humidityPct);
  const vapourPa = (saturationPressurePa(temperatureC) * humidityPct) / 100;
  return (GRAM_KELVIN_PER_PASCAL * vapourPa) / (ZERO_CELSIUS_K + temperatureC);
}

function magnusPa(form: MagnusForm, temperatureC: number): number {
  checkTemperature(temperatureC, form);
  return form.basePa * Math.exp((form.slope * temperatureC) / (form.offsetC + temperatureC));
}

function checkTemperature(temperatureC: number, form: MagnusForm): void {
  if (!(temperatureC > -form.offsetC && temperatureC < Infinity))
    throw new RangeError(`temperature must lie above ${-form.offsetC} C, got ${temperatureC}`);
}

function checkHumidity(humidityPct: number): void {
  if (!(humidityPct >= 0 && humidityPct <= 100))
    throw new RangeError(`relative humidity lies between 0 and 100 per cent, got ${humidityPct}`);
}
