import { FAMILIES, FAMILY_TRAITS, type FamilyPpm } from "./families.js";
import { powerLaw } from "./powerLaw.js";
import type { UnitTraits } from "./unit.js";

/** A sensing film. Invented for the model, taken from no data sheet. */
interface Film {
  /** Clean-air resistance at 300 degrees Celsius and the reference humidity. */
  readonly cleanOhm: number;
  /** Activation energy of the conduction, in electronvolt. */
  readonly activationEv: number;
  readonly betaAt300C: number;
  /** Change of beta per 100 degrees Celsius. */
  readonly betaPer100C: number;
  /** Exponent of the absolute humidity at 200 degrees Celsius; water leaves a hotter film. */
  readonly humidityExponent: number;
}

/** Film 0 likes carbonyls and alcohols, film 1 sulfides and amines (see `peakPerPpm`). */
const FILMS: readonly [Film, Film] = [
  { cleanOhm: 62_000, activationEv: 0.31, betaAt300C: 0.42, betaPer100C: -0.03, humidityExponent: 0.38 },
  { cleanOhm: 240_000, activationEv: 0.24, betaAt300C: 0.36, betaPer100C: 0.02, humidityExponent: 0.22 },
];

/** Boltzmann constant in electronvolt per kelvin (SI 2019: 8.617333262e-5). */
const BOLTZMANN_EV = 8.617333262e-5;
const REFERENCE_K = 573.15;
/** Absolute humidity at which the clean resistances are given: 20 degrees Celsius and 50 % (check HU-E7). */
const REFERENCE_HUMIDITY_GM3 = 8.62;
/** Below this the power law of humidity is held: no film is ever fully dry. */
const DRIEST_GM3 = 0.5;
/** Water takes sites from odour as well: K falls with this power of humidity (MX-06, direction only). */
const CROWDING_EXPONENT = 0.18;
/** Ambient warmth lowers resistance a little: fraction per degree Celsius (MX-06, direction only). */
const AMBIENT_PER_C = 0.004;

/** What the sensing surface meets at one moment. */
export interface Surface {
  /** Concentrations at the film, ppm; shape [FAMILIES.length]. */
  readonly ppm: FamilyPpm;
  readonly absoluteHumidityGm3: number;
  readonly ambientC: number;
}

/** The state of a unit's films beside its build: both 0 and 1 on the first day. */
export interface FilmAge {
  /** Drift of the logarithm of the clean resistance, one a film. */
  readonly logOhmDrift: readonly [number, number];
  /** What is left of the sensitivity, a fraction; poisoning lowers it. */
  readonly sensitivityLeft: number;
}

/** The film behind a sensor number: more sensors than films repeat the films. */
export const filmOf = (sensor: number): 0 | 1 => (sensor % 2 === 0 ? 0 : 1);

/**
 * Sensitivity constant K of a film at a heater temperature, for each family:
 * `K = K_peak * exp(-(T - T_opt)^2 / (2 w^2))`. Too cold, the reaction is slow; too hot, the compound leaves
 * or burns before it reaches the film: hence a bell.
 *
 * @returns per ppm, at the reference humidity; shape [FAMILIES.length]
 */
export function sensitivities(film: 0 | 1, heaterC: number): number[] {
  return FAMILIES.map((family) => {
    const { optimumC, widthC, peakPerPpm } = FAMILY_TRAITS[family];
    const off = (heaterC - optimumC[film]) / widthC;
    return peakPerPpm[film] * Math.exp(-0.5 * off * off);
  });
}

/** Clean-air resistance in ohm of a film: Arrhenius in the heater, a power law in the humidity. */
export function cleanResistance(film: 0 | 1, heaterC: number, surface: Surface): number {
  const { cleanOhm, activationEv, humidityExponent } = FILMS[film];
  const hot = Math.exp((activationEv / BOLTZMANN_EV) * (1 / (heaterC + 273.15) - 1 / REFERENCE_K));
  const exponent = humidityExponent * Math.exp(-(heaterC - 200) / 250);
  const ambient = Math.exp(-AMBIENT_PER_C * (surface.ambientC - 20));
  return cleanOhm * hot * humidityRatio(surface) ** -exponent * ambient;
}

/**
 * Resistance of one channel, without noise.
 *
 * @param sensor - which sensor, counted from 0
 * @param heaterC - the step as reported; the unit's own heater error is added here
 * @returns ohm
 */
export function channelResistance(
  sensor: number,
  heaterC: number,
  surface: Surface,
  unit: UnitTraits,
  age: FilmAge,
): number {
  const film = filmOf(sensor);
  const trueC = heaterC + unit.heaterErrorC[film];
  const crowding = humidityRatio(surface) ** -CROWDING_EXPONENT;
  const stimulus = sensitivities(film, trueC).reduce(
    (sum, perPpm, i) => sum + perPpm * unit.sensitivityFactor[film][i]! * surface.ppm[i]!,
    0,
  );
  const { betaAt300C, betaPer100C } = FILMS[film];
  const beta = betaAt300C + (betaPer100C * (trueC - 300)) / 100 + unit.betaShift[film];
  const clean = cleanResistance(film, trueC, surface) * unit.cleanOhmFactor[film];
  return powerLaw(clean * Math.exp(age.logOhmDrift[film]), stimulus * crowding * age.sensitivityLeft, beta);
}

function humidityRatio(surface: Surface): number {
  return Math.max(surface.absoluteHumidityGm3, DRIEST_GM3) / REFERENCE_HUMIDITY_GM3;
}
