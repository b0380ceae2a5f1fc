import { seededRandom, standardNormal, type RandomSource } from "../kernel/random.js";
import { spreadFactor } from "./chance.js";
import { FAMILIES } from "./families.js";

/** What makes one built unit unlike the next of its kind. Every list has one entry a film. */
export interface UnitTraits {
  /** Factor on the clean-air resistance. */
  readonly cleanOhmFactor: readonly [number, number];
  /** Factor on the sensitivity to each family; shape [2][FAMILIES.length]. */
  readonly sensitivityFactor: readonly [readonly number[], readonly number[]];
  /** How far the true heater temperature lies off the one that is reported, in degrees Celsius. */
  readonly heaterErrorC: readonly [number, number];
  /** Added to beta. */
  readonly betaShift: readonly [number, number];
}

/** Spread from unit to unit, invented for the model; that models do not move between units is check MX-09. */
const CLEAN_OHM_SPREAD = 0.3;
const SENSITIVITY_SPREAD = 0.25;
const HEATER_ERROR_SD_C = 9;
const BETA_SD = 0.02;

/** The unit that the demo samples were taken with: every trait as designed. */
export const DEMO_UNIT: UnitTraits = {
  cleanOhmFactor: [1, 1],
  sensitivityFactor: [FAMILIES.map(() => 1), FAMILIES.map(() => 1)],
  heaterErrorC: [0, 0],
  betaShift: [0, 0],
};

/** Another unit of the same kind, off the same line. */
export function builtUnit(random: RandomSource): UnitTraits {
  const each = <T>(make: () => T): readonly [T, T] => [make(), make()];
  return {
    cleanOhmFactor: each(() => spreadFactor(random, CLEAN_OHM_SPREAD)),
    sensitivityFactor: each(() => FAMILIES.map(() => spreadFactor(random, SENSITIVITY_SPREAD))),
    heaterErrorC: each(() => HEATER_ERROR_SD_C * standardNormal(random)),
    betaShift: each(() => BETA_SD * standardNormal(random)),
  };
}

/** The unit of a number off the line, always the same one; 1 is the demo unit. */
export const unitNumbered = (number: number): UnitTraits =>
  number === 1 ? DEMO_UNIT : builtUnit(seededRandom(number));
