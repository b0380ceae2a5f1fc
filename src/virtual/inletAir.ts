import { absoluteHumidityGm3 } from "../air/humidity.js";
import { ORDINARY_MIXING, RECIPE_C, type Plate } from "./dishes.js";
import { FAMILIES, FAMILY_TRAITS, type FamilyPpm } from "./families.js";
import type { RoomAir } from "./roomAir.js";

/** Warm air rises and radiates as well: the inlet warms more than mixing alone would make it. Invented. */
const WARMTH_FACTOR = 2;

/** The air that reaches the sniffer's inlet at one moment. */
export interface InletAir {
  readonly ppm: FamilyPpm;
  readonly absoluteHumidityGm3: number;
  readonly temperatureC: number;
}

/** What the moment adds to room and plate. */
export interface AirMoment {
  /** How long the plate has been there, in milliseconds. */
  readonly servedForMs: number;
  /** Gusts of the plume over the plate: a factor around 1. */
  readonly plume: number;
  /** Slow change of the room's background: a factor around 1. */
  readonly roomFactor: number;
  /** More steam than an ordinary plate gives: 1 is ordinary. */
  readonly steamFactor: number;
}

/** Temperature of a plate that cools towards the room (Newton's law of cooling), in degrees Celsius. */
export function plateTemperatureC(plate: Plate, roomC: number, servedForMs: number): number {
  return roomC + (plate.servedC - roomC) * Math.exp(-servedForMs / plate.coolingMs);
}

/**
 * Room air, and over a plate a share of the plate's own: its vapours rise with its temperature by an exponential
 * for each family, and its water stands at saturation over the wet food.
 */
export function inletAir(room: RoomAir, plate: Plate | null, moment: AirMoment): InletAir {
  const background = room.backgroundPpm.map((ppm) => ppm * moment.roomFactor);
  if (plate === null) {
    return {
      ppm: background,
      absoluteHumidityGm3: room.absoluteHumidityGm3,
      temperatureC: room.temperatureC,
    };
  }
  const foodC = plateTemperatureC(plate, room.temperatureC, moment.servedForMs);
  const share = Math.min(1, plate.mixing * moment.plume);
  const steamShare = Math.min(1, share * moment.steamFactor);
  const foodGm3 = absoluteHumidityGm3(foodC, 100);
  return {
    ppm: FAMILIES.map((family, i) => {
      const vapour = Math.exp(FAMILY_TRAITS[family].vapourPerC * (foodC - RECIPE_C));
      return background[i]! + plate.ppm[i]! * vapour * (share / ORDINARY_MIXING);
    }),
    absoluteHumidityGm3: room.absoluteHumidityGm3 + steamShare * (foodGm3 - room.absoluteHumidityGm3),
    temperatureC: room.temperatureC + Math.min(1, WARMTH_FACTOR * share) * (foodC - room.temperatureC),
  };
}
