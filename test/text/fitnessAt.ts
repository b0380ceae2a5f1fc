import type { Fit, Fitness } from "../../src/flows/fitness.js";

/** Every item in the same state; the numbers do not matter here. */
export const fitnessAt = (fit: Fit): Fitness => ({
  burnIn: { fit, hours: 1 },
  warmUp: { fit, leftMs: 1000 },
  cleanAir: { fit, ageMs: 1000 },
  steadiness: { fit, drift: 0.1 },
  humidity: { fit, marginC: 2 },
  airSensor: { fit, humidityPct: 100 },
  battery: { fit, percent: 50 },
  link: { fit, lostShare: 0.1 },
  heater: { fit },
  channels: { fit, bad: [1] },
});
