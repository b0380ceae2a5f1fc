import { absoluteHumidityGm3 } from "../air/humidity.js";
import type { RandomSource } from "../kernel/random.js";
import type { Plate } from "./dishes.js";
import { FAMILIES, FAMILY_TRAITS, type FamilyPpm } from "./families.js";
import { inletAir } from "./inletAir.js";
import { wander } from "./noise.js";
import { relax } from "./relax.js";
import type { RoomAir } from "./roomAir.js";

/** The air inside the sniffer: it follows the inlet with a lag. */
export interface AirState {
  /** Concentrations at the films, ppm; shape [FAMILIES.length]. */
  readonly ppm: FamilyPpm;
  readonly absoluteHumidityGm3: number;
  /** The sniffer's own temperature, which its temperature sensor shows. */
  readonly caseC: number;
  /** Logarithm of the plume's gusts, and of the slow change of the room's background. */
  readonly logPlume: number;
  readonly logRoom: number;
}

/** What acts on the air of the sniffer during one step. */
export interface AirInput {
  readonly room: RoomAir;
  readonly plate: Plate | null;
  readonly servedForMs: number;
  readonly steamFactor: number;
  /** Hotter films burn off what clings to them: release is this many times faster; 1 when not purging. */
  readonly releaseFactor: number;
}

/** Gusts over a plate: spread and correlation time. Invented for the model. */
const PLUME = { sd: 0.22, tauMs: 3500 };
/** Slow change of the room's background. Invented for the model. */
const ROOM = { sd: 0.25, tauMs: 150_000 };
/** The heaters warm the case. */
const SELF_HEATING_C = 1.2;
const CASE_TAU_MS = 60_000;
const WATER_TAU_MS = { rise: 4000, fall: 9000 };

/** In equilibrium with the room: as if it had lain there for long. */
export function restingAir(room: RoomAir, random: RandomSource): AirState {
  const logPlume = wander(0, PLUME.sd, PLUME.tauMs, Infinity, random);
  const logRoom = wander(0, ROOM.sd, ROOM.tauMs, Infinity, random);
  return {
    ppm: room.backgroundPpm.map((ppm) => ppm * Math.exp(logRoom)),
    absoluteHumidityGm3: room.absoluteHumidityGm3,
    caseC: room.temperatureC + SELF_HEATING_C,
    logPlume,
    logRoom,
  };
}

/** One step of the air inside: gusts wander, then every quantity relaxes towards the inlet. */
export function stepAir(air: AirState, input: AirInput, stepMs: number, random: RandomSource): AirState {
  const logPlume = wander(air.logPlume, PLUME.sd, PLUME.tauMs, stepMs, random);
  const logRoom = wander(air.logRoom, ROOM.sd, ROOM.tauMs, stepMs, random);
  const inlet = inletAir(input.room, input.plate, {
    servedForMs: input.servedForMs,
    plume: Math.exp(logPlume - PLUME.sd ** 2 / 2),
    roomFactor: Math.exp(logRoom),
    steamFactor: input.steamFactor,
  });
  const { rise, fall } = WATER_TAU_MS;
  return {
    ppm: FAMILIES.map((family, i) => {
      const { uptakeMs, releaseMs } = FAMILY_TRAITS[family];
      return relax(air.ppm[i]!, inlet.ppm[i]!, uptakeMs, releaseMs / input.releaseFactor, stepMs);
    }),
    absoluteHumidityGm3: relax(air.absoluteHumidityGm3, inlet.absoluteHumidityGm3, rise, fall, stepMs),
    caseC: relax(air.caseC, inlet.temperatureC + SELF_HEATING_C, CASE_TAU_MS, CASE_TAU_MS, stepMs),
    logPlume,
    logRoom,
  };
}

/**
 * Relative humidity at the case, per cent, 0 to 100. Steam on a case colder than its dew point would go above
 * 100: then water condenses and the humidity sensor stands at its end.
 */
export function caseHumidityPct(air: AirState): number {
  return Math.min(100, (100 * air.absoluteHumidityGm3) / absoluteHumidityGm3(air.caseC, 100));
}
