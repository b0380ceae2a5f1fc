import type { Channel } from "../kernel/channel.js";
import type { Sniff, SniffPhase } from "../sniff/sniff.js";
import { cleanAirReference, type CleanAirReference } from "./cleanAirReference.js";
import { humidityRise } from "./humidityRise.js";
import { courseValues } from "./courseValues.js";
import { QUARTERS, quarterLevels } from "./quarterLevels.js";
import type { Recipe } from "./recipe.js";
import { mapPhase, type SnifferMap } from "./snifferMap.js";

/** What could not be had, and what it costs. */
export type FeatureNote =
  | "noCleanAir" // no clean-air sweeps: no ratio to clean air, and no noise floor
  | "noNoiseFloor" // too few clean-air sweeps to know the noise: the signal's strength stays unknown
  | "noHumidity"; // an air reading is missing: the log ratios are not corrected for steam

/** A sniff as numbers. */
export interface SniffFeatures {
  /** Shape [featureCount], natural log units. */
  readonly values: Float64Array;
  readonly notes: readonly FeatureNote[];
  /** Response against noise, root mean square over channels; null where the noise is unknown. */
  readonly signalToNoise: number | null;
  /** Humidity covariate, for correction only (see humidityRise); null where unknown. */
  readonly humidityRise: number | null;
}

/**
 * A sniff, or the first part of one, as the feature vector of a recipe.
 *
 * @param map - to the sniffer that the recipe's nose was taught on, where the sniff is another one's
 * @returns null if the recipe needs clean air and the sniff has none
 */
export function extractFeatures(sniff: Sniff, recipe: Recipe, map?: SnifferMap): SniffFeatures | null {
  const order = channelOrder(sniff.sniffer.channels);
  const headspace = inOrder(sniff.headspace, order);
  const clean = sniff.cleanAir === undefined ? null : cleanAirReference(inOrder(sniff.cleanAir, order));
  if (clean === null && recipe.reference === "cleanAir") return null;
  const channels = sniff.sniffer.channels.length;
  const levels = quarterLevels(headspace);
  const reference = referenceOf(recipe, headspace, clean, channels);
  const values = map
    ? mappedValues(recipe, map, headspace, reference)
    : courseValues(recipe.course, headspace, levels, reference);
  const rise = humidityRise(sniff, recipe.reference);
  const notes: FeatureNote[] = [];
  if (clean === null) notes.push("noCleanAir");
  else if (clean.noise === null) notes.push("noNoiseFloor");
  if (rise === null) notes.push("noHumidity");
  return { values, notes, signalToNoise: signalToNoise(levels, clean, channels), humidityRise: rise };
}

function mappedValues({ course }: Recipe, map: SnifferMap, headspace: SniffPhase, reference: Float64Array) {
  const mapped = mapPhase(map, headspace, reference);
  return courseValues(course, mapped, quarterLevels(mapped), new Float64Array(reference.length));
}

/** Names of the features of a recipe, in order, for charts and reports. */
export function featureNames(recipe: Recipe, channels: number): string[] {
  const each = (name: string) => Array.from({ length: channels }, (_, i) => `${name} ${i + 1}`);
  const steps = Array.from({ length: channels - 1 }, (_, i) => `difference ${i + 1}-${i + 2}`);
  const ends = [...each("level"), ...each("uptake")];
  switch (recipe.course) {
    case "end":
      return ends;
    case "bends":
      return [...ends, ...each("early bend"), ...each("late bend"), ...steps];
    case "quarters":
      return [
        ...Array.from({ length: QUARTERS }, (_, quarter) => each(`quarter ${quarter + 1}`)).flat(),
        ...each("spread"),
        ...steps,
      ];
    case "mean":
      return [...each("mean"), ...each("start"), ...each("end"), ...each("spread"), ...steps];
  }
}

function referenceOf(
  recipe: Recipe,
  headspace: SniffPhase,
  clean: CleanAirReference | null,
  channels: number,
): Float64Array {
  if (recipe.reference === "cleanAir" && clean !== null) return clean.logOhm;
  if (recipe.reference === "start") return Float64Array.from(headspace.ohm[0]!, (ohm) => Math.log(ohm));
  return new Float64Array(channels);
}

function signalToNoise(
  levels: Float64Array,
  clean: CleanAirReference | null,
  channels: number,
): number | null {
  if (clean === null || clean.noise === null) return null;
  const last = (QUARTERS - 1) * channels;
  let sum = 0;
  for (let channel = 0; channel < channels; channel += 1)
    sum += ((levels[last + channel]! - clean.logOhm[channel]!) / clean.noise[channel]!) ** 2;
  return Math.sqrt(sum / channels);
}

/** Channels by sensor, heater step and dwell time, so that the order in which a sniffer lists them does not matter. */
function channelOrder(channels: readonly Channel[]): number[] {
  const key = ({ sensor, heaterC, dwellMs }: Channel) => [sensor, heaterC ?? -Infinity, dwellMs ?? -Infinity];
  return channels
    .map((channel, i) => ({ key: key(channel), i }))
    .sort((a, b) => {
      const first = a.key.findIndex((value, at) => value !== b.key[at]);
      return first < 0 ? a.i - b.i : a.key[first]! - b.key[first]!;
    })
    .map(({ i }) => i);
}

function inOrder(phase: SniffPhase, order: readonly number[]): SniffPhase {
  if (order.every((from, to) => from === to)) return phase;
  return { atMs: phase.atMs, ohm: phase.ohm.map((sweep) => order.map((from) => sweep[from]!)) };
}
