/**
 * Compound families of food odour, and how the two sensing films meet them.
 * The families follow the food-odour literature; the numbers are invented for the model (see PHYSICS.md).
 */

export const FAMILIES = [
  "fatAldehydes", // hexanal to nonanal, from oxidised fat: meat, fish, fryer oil
  "streckerAldehydes", // 2- and 3-methylbutanal, from amino acids: roast meat, soy sauce, crust
  "hydrogenSulfide", // and methanethiol: cooked egg, boiled meat
  "dimethylSulfide", // shellfish, cabbage, seaweed
  "alliumSulfides", // allyl and propyl sulfides: garlic, onion
  "pyrazines", // browned food: grill, sesame, toasted nuts
  "amines", // trimethylamine above all: sea fish, shellfish, fish sauce
  "alcohols", // ethanol of ferments, octenol of mushrooms
  "esters", // fruit
  "ketones", // diacetyl and methyl ketones: milk fat, coconut
  "acids", // acetic and butyric: vinegar, ferments, milk fat
  "terpenes", // herbs, ginger, citrus peel, cumin
] as const;
export type Family = (typeof FAMILIES)[number];

/** Concentrations by family, in parts per million of air; shape [FAMILIES.length], in that order. */
export type FamilyPpm = readonly number[];

/** How a family behaves at the sensor. Pairs are [film 0, film 1]. */
export interface FamilyTraits {
  /** Heater temperature at which the film answers best, in degrees Celsius. */
  readonly optimumC: readonly [number, number];
  /** Standard width of the bell around it, in degrees Celsius. */
  readonly widthC: number;
  /** Sensitivity constant K at the top of the bell, per ppm. */
  readonly peakPerPpm: readonly [number, number];
  /** Time constant of uptake at the sensor, in milliseconds: long for heavy or sticky compounds. */
  readonly uptakeMs: number;
  /** Time constant of release, in milliseconds. Never shorter than uptake. */
  readonly releaseMs: number;
  /** Rise of the vapour above food with its temperature, as a fraction per degree Celsius. */
  readonly vapourPerC: number;
}

/** Invented for the model: plausible in order and size, taken from no data sheet. */
export const FAMILY_TRAITS: Readonly<Record<Family, FamilyTraits>> = {
  fatAldehydes: traits([335, 315], 55, [1.3, 0.5], 9000, 26000, 0.034),
  streckerAldehydes: traits([285, 300], 50, [1.1, 0.7], 5000, 13000, 0.028),
  hydrogenSulfide: traits([195, 215], 42, [5.0, 9.0], 4000, 20000, 0.018),
  dimethylSulfide: traits([255, 235], 45, [3.2, 1.3], 3500, 11000, 0.02),
  alliumSulfides: traits([300, 270], 50, [1.5, 2.6], 9000, 30000, 0.03),
  pyrazines: traits([360, 345], 52, [1.1, 1.0], 12000, 36000, 0.036),
  amines: traits([290, 325], 48, [0.9, 4.2], 9000, 42000, 0.022),
  alcohols: traits([275, 290], 60, [0.8, 0.22], 3000, 7500, 0.026),
  esters: traits([310, 330], 58, [0.7, 0.2], 3200, 8000, 0.027),
  ketones: traits([345, 360], 60, [0.9, 0.3], 3000, 7500, 0.024),
  acids: traits([235, 255], 55, [0.4, 0.8], 13000, 45000, 0.028),
  terpenes: traits([375, 370], 55, [0.9, 0.55], 10000, 30000, 0.033),
};

/**
 * A concentration vector from named parts.
 *
 * @param parts - ppm by family; a family not named is 0
 * @returns shape [FAMILIES.length]
 */
export function familyPpm(parts: Partial<Record<Family, number>>): FamilyPpm {
  return FAMILIES.map((family) => parts[family] ?? 0);
}

function traits(
  optimumC: readonly [number, number],
  widthC: number,
  peakPerPpm: readonly [number, number],
  uptakeMs: number,
  releaseMs: number,
  vapourPerC: number,
): FamilyTraits {
  return { optimumC, widthC, peakPerPpm, uptakeMs, releaseMs, vapourPerC };
}
