import { sameChannels, type Channel } from "../kernel/channel.js";
import { err, ok, type Result } from "../kernel/result.js";
import type { LeftOut } from "../nose/report.js";
import type { Sniff } from "../sniff/sniff.js";

/** Samples that fit together, with everything that a name stood for as a number. */
export interface Prepared {
  readonly sniffs: readonly Sniff[];
  readonly sniffer: { readonly id: string; readonly channels: readonly Channel[] };
  readonly groups: readonly string[];
  /** 1 present, 0 absent, -1 unknown, shape [sniffs, groups]. */
  readonly truth: Int8Array;
  /** Number of each sniff's plate, occasion and dish, shape [sniffs]. */
  readonly plates: Int32Array;
  readonly occasions: Int32Array;
  readonly dishes: Int32Array;
  /** The same number for sniffs of one dish with the same truths, between which only the air differs, shape [sniffs]. */
  readonly foods: Int32Array;
  /** 1 / sniffs of the same plate, so that each plate counts once, shape [sniffs]. */
  readonly weight: Float64Array;
  readonly hasCleanAir: boolean;
  readonly leftOut: readonly LeftOut[];
}

/** What is known of the samples besides their features: small enough to be sent to another thread. */
export type Labels = Pick<Prepared, "groups" | "truth" | "plates" | "dishes" | "foods">;

/** The labels alone, without the sweeps. */
export function labelsOf({ groups, truth, plates, dishes, foods }: Prepared): Labels {
  return { groups, truth, plates, dishes, foods };
}

/** Why nothing can be taught. */
export type SampleError =
  | { readonly kind: "noSamples" } // nothing to teach on: keep a sniff as a sample first
  | { readonly kind: "noKnownGroup" }; // every group of every sample is unknown: say what was on the plates

/** Sniffs without clean air are left out if at least this share of the samples has it; else no recipe uses it. */
const CLEAN_AIR_SHARE = 0.5;

/**
 * Picks the samples that can be taught on together: of the sniffer with the most sniffs, each sniff once.
 *
 * @param groups - groups to teach; all that are named if left out
 */
export function prepareSamples(
  samples: readonly Sniff[],
  groups?: readonly string[],
): Result<Prepared, SampleError> {
  if (samples.length === 0) return err({ kind: "noSamples" });
  const leftOut: LeftOut[] = [];
  const keep = (from: readonly Sniff[], why: LeftOut["why"], test: (sniff: Sniff) => boolean) => {
    const kept = from.filter(test);
    if (kept.length < from.length) leftOut.push({ why, sniffs: from.length - kept.length });
    return kept;
  };
  const wanted = groups ?? namedGroups(samples);
  const seen = new Set<string>();
  // In the order of their ids, so that the order of the file does not matter.
  const sorted = [...samples].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  let kept = keep(sorted, "duplicate", ({ id }) => !seen.has(id) && seen.add(id) !== undefined);
  kept = keep(kept, "noKnownGroup", (sniff) => wanted.some((group) => isKnown(sniff, group)));
  if (kept.length === 0) return err({ kind: "noKnownGroup" });
  const snifferId = mostCommon(kept.map(({ sniffer }) => sniffer.id));
  kept = keep(kept, "otherSniffer", ({ sniffer }) => sniffer.id === snifferId);
  const layout = mostCommon(kept.map(({ sniffer }) => JSON.stringify(sniffer.channels)));
  const channels = JSON.parse(layout) as Channel[];
  kept = keep(kept, "otherChannels", ({ sniffer }) => sameChannels(sniffer.channels, channels));
  const clean = kept.filter(({ cleanAir }) => cleanAir !== undefined).length;
  const hasCleanAir = clean >= CLEAN_AIR_SHARE * kept.length;
  if (hasCleanAir) kept = keep(kept, "noCleanAir", ({ cleanAir }) => cleanAir !== undefined);
  return ok(numbered(kept, wanted, { id: snifferId, channels }, hasCleanAir, leftOut));
}

function numbered(
  sniffs: readonly Sniff[],
  wanted: readonly string[],
  sniffer: Prepared["sniffer"],
  hasCleanAir: boolean,
  leftOut: readonly LeftOut[],
): Prepared {
  const groups = wanted.filter((group) => sniffs.some((sniff) => isKnown(sniff, group)));
  const truth = new Int8Array(sniffs.length * groups.length);
  sniffs.forEach((sniff, row) =>
    groups.forEach((group, i) => {
      const said = sniff.groups[group];
      truth[row * groups.length + i] = said === "present" ? 1 : said === "absent" ? 0 : -1;
    }),
  );
  const plates = numbersOf(sniffs.map(({ plate }) => plate));
  const count = new Map<number, number>();
  for (const plate of plates) count.set(plate, (count.get(plate) ?? 0) + 1);
  const dishes = numbersOf(sniffs.map(({ dish }) => dish));
  const kinds = sniffs.map((_, row) => kindOfRow({ truth, groups, dishes }, row));
  return {
    sniffs,
    sniffer,
    groups,
    truth,
    plates,
    occasions: numbersOf(sniffs.map(({ occasion }) => occasion)),
    dishes,
    foods: numbersOf(kinds),
    weight: Float64Array.from(plates, (plate) => 1 / count.get(plate)!),
    hasCleanAir,
    leftOut,
  };
}

/** What is known of a row's groups, as a name: rows of one name have the same truths. */
export function truthsOfRow({ truth, groups }: Pick<Prepared, "truth" | "groups">, row: number): string {
  return truth.subarray(row * groups.length, (row + 1) * groups.length).join();
}

/** The same truths and the same dish: sniffs of one kind are spread evenly over the folds. */
export function kindOfRow(prepared: Pick<Prepared, "truth" | "groups" | "dishes">, row: number): string {
  return `${truthsOfRow(prepared, row)} ${prepared.dishes[row]}`;
}

/** Numbers names in the order in which they first come up. */
export function numbersOf(names: readonly string[]): Int32Array {
  const numbers = new Map<string, number>();
  return Int32Array.from(names, (name) => {
    const known = numbers.get(name);
    if (known !== undefined) return known;
    numbers.set(name, numbers.size);
    return numbers.size - 1;
  });
}

/** Group names in the order of the alphabet, so that the order of the samples does not matter. */
export function namedGroups(samples: readonly Sniff[]): string[] {
  return [...new Set(samples.flatMap(({ groups }) => Object.keys(groups)))].sort();
}

function isKnown(sniff: Sniff, group: string): boolean {
  const said = sniff.groups[group];
  return said === "present" || said === "absent";
}

/** The most frequent name; of equals the first in the alphabet. */
function mostCommon(names: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  const ranked = [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1));
  return ranked[0]?.[0] ?? "";
}
