/** Small sound records for the store's tests. The dishes are invented. */
import type { Meal } from "../../src/meals/meal.js";
import { newMeal } from "../../src/meals/meal.js";
import type { Photo } from "../../src/meals/photo.js";
import { NOSE_FORMAT, type Nose } from "../../src/nose/nose.js";
import type { Sniff } from "../../src/sniff/sniff.js";
import type { SampleLabel } from "../../src/store/storeTypes.js";

/** The instant `minutes` after the market opened. */
export const at = (minutes: number) => new Date(Date.UTC(2026, 10, 25, 18, minutes)).toISOString();

export const mealAt = (id: string, minutes: number, more: Partial<Meal> = {}): Meal => ({
  ...newMeal(id, at(minutes)),
  dish: "clear broth with dumplings",
  place: "stall 4",
  ...more,
});

export const sniffAt = (id: string, minutes: number): Sniff => ({
  format: "nidor-sniff/1",
  id,
  takenAt: at(minutes),
  sniffer: { id: "sniffer-1", channels: [{ sensor: 0, heaterC: 200, dwellMs: 1000 }] },
  plate: `plate-${id}`,
  occasion: "evening-1",
  dish: "clear broth",
  groups: {},
  cleanAir: { atMs: [0, 1000], ohm: [[100_000], [100_100]] },
  headspace: { atMs: [0, 1000], ohm: [[60_000], [52_000]] },
});

export const labelOf = (groups: SampleLabel["groups"], minutes: number): SampleLabel => ({
  groups,
  plate: "pot-7",
  occasion: "evening-2",
  dish: "mushroom broth",
  keptAt: at(minutes),
});

export const photoOf = (id: string, bytes: readonly number[]): Photo => ({
  id,
  mime: "image/jpeg",
  bytes: Uint8Array.from(bytes),
  widthPx: 2,
  heightPx: 1,
  addedAt: at(0),
});

/** The smallest sound nose: one channel, no group, a neighbour model of nothing. */
export const noseAt = (id: string, minutes: number): Nose => ({
  format: NOSE_FORMAT,
  id,
  name: `nose ${id}`,
  taughtAt: at(minutes),
  sniffer: { id: "sniffer-1", channels: [{ sensor: 0, heaterC: 200, dwellMs: 1000 }] },
  recipe: 1,
  platesTaught: 0,
  sniffsTaught: 0,
  occasionsTaught: 0,
  groups: [],
  nets: null,
  horizons: [
    {
      fromMs: 0,
      uptoMs: 60_000,
      input: {
        humiditySlope: Float32Array.of(0, 0),
        usualRise: 0,
        centre: Float32Array.of(0.1, -2.5),
        scale: Float32Array.of(1, 3),
      },
      // A nose of the first version, which mixed five kinds of models: it must be read for ever.
      mix: new Float32Array(5),
      logistic: null,
      discriminant: null,
      trees: null,
      neighbours: {
        axes: 0,
        whitening: new Float32Array(),
        references: new Float32Array(),
        truths: new Int16Array(),
        plates: new Int16Array(),
      },
      heldOutDistances: new Float32Array(),
    },
  ],
  chosen: "mix",
  report: {
    groups: [],
    rivals: [],
    horizons: [],
    recipes: [],
    chosen: "mix",
    leftOut: [],
    notes: [],
    split: "plate",
    folds: 5,
    backend: "none",
  },
});
