/**
 * A nose moved to another sniffer, by plates or jars that both sniffed. What it may state rests on what was shown with
 * the second sniffer alone: plates that no model was taught, each through a map that was fitted without it.
 */
import { type Channel, sameChannels } from "../kernel/channel.js";
import { err, ok, type Result } from "../kernel/result.js";
import { runThrough, type Steps } from "../kernel/steps.js";
import { TRANSFERRED_FORMAT, type Nose, type NoseTransfer, type TransferGain } from "../nose/nose.js";
import type { GroupComparison } from "../nose/report.js";
import type { Sniff } from "../sniff/sniff.js";
import { choosingMap, type ChosenMap } from "./chooseMap.js";
import { immovable, type Immovable } from "./immovable.js";
import { pairedLevels } from "./pairedLevels.js";
import { shownEvidence } from "./shownEvidence.js";
import { pairsNeeded, transferGain, LEAST_PAIRS } from "./transferGain.js";
import { movedHorizons } from "./unlikeLimit.js";

/** Name of the pair that the check jar makes; plates are named by ids, which hold no space. */
const JAR_PAIR = "the check jar";

/** Why a nose was not moved. Its findings with that sniffer stay *uncertain, another sniffer*. */
export type TransferError =
  | Immovable
  | { readonly kind: "tooFewPairs"; readonly pairs: number; readonly more: number }
  /** `more` pairs might show it, going by those so far; null where no number would. */
  | {
      readonly kind: "noGain";
      readonly pairs: number;
      readonly gain: TransferGain;
      readonly more: number | null;
    };

export interface TransferOptions {
  readonly id: string;
  readonly name: string;
  /** ISO 8601 instant. */
  readonly transferredAt: string;
  /** The second sniffer. */
  readonly sniffer: { readonly id: string; readonly channels: readonly Channel[] };
  /** Readings of one jar that both sniffers sniffed. They are one more pair, and no evidence: nobody eats a jar. */
  readonly jarReadings?: readonly Sniff[];
}

export interface Transferred {
  readonly nose: Nose;
  /** The taught nose as it is against the moved one, on the evidence plates of the second sniffer. */
  readonly comparison: readonly GroupComparison[];
}

/**
 * Moves a nose.
 *
 * @param samples - sniffs of both sniffers; those of any third are passed over. A plate is paired by its name
 * @returns the new version, tied to the second sniffer; or why not, with what was worked out
 */
export function transferNose(
  nose: Nose,
  samples: readonly Sniff[],
  options: TransferOptions,
): Result<Transferred, TransferError> {
  return runThrough(transferring(nose, samples, options));
}

/** The same in steps. */
export function* transferring(
  nose: Nose,
  samples: readonly Sniff[],
  options: TransferOptions,
): Steps<Result<Transferred, TransferError>> {
  const { sniffer } = options;
  const never = immovable(nose, sniffer);
  if (never !== null) return err(never);
  const second = sniffsOf(samples, sniffer);
  const sniffed = [...samples, ...asOneJar(options.jarReadings ?? [])];
  const pairs = pairedLevels(nose, sniffsOf(sniffed, nose.sniffer), sniffsOf(sniffed, sniffer));
  if (pairs.length < LEAST_PAIRS)
    return err({ kind: "tooFewPairs", pairs: pairs.length, more: LEAST_PAIRS - pairs.length });
  const chosen = yield* choosingMap(pairs, sensorsOf(nose), scaleOf(nose));
  const gain = transferGain(chosen.heldOut);
  if (!(gain.low > 1))
    return err({ kind: "noGain", pairs: pairs.length, gain, more: pairsNeeded(chosen.heldOut) });
  const first = sniffsOf(samples, nose.sniffer);
  return ok(moved(nose, { first, second }, chosen, gain, options));
}

function moved(
  nose: Nose,
  { first, second }: { readonly first: readonly Sniff[]; readonly second: readonly Sniff[] },
  chosen: ChosenMap,
  gain: TransferGain,
  { id, name, transferredAt, sniffer }: TransferOptions,
): Transferred {
  const { choice, map, heldOut } = chosen;
  const transfer: NoseTransfer = {
    of: { id: nose.id, name: nose.name, taughtAt: nose.taughtAt, snifferId: nose.sniffer.id },
    ...choice,
    pairs: heldOut.length,
    map,
    gain,
  };
  const bare = {
    ...nose,
    format: TRANSFERRED_FORMAT,
    id,
    name,
    taughtAt: transferredAt,
    sniffer: { id: sniffer.id, channels: nose.sniffer.channels },
    transfer,
  } satisfies Nose;
  const maps = new Map(heldOut.map((one) => [one.plate, one.map]));
  const { groups, plateNames, report, comparison } = shownEvidence(nose, bare, second, maps);
  const horizons = movedHorizons(nose, bare, first, second, maps);
  return { nose: { ...bare, horizons, groups, plateNames, report }, comparison };
}

/** A jar smells of one thing, however often it is sniffed: all its readings are one pair. */
function asOneJar(readings: readonly Sniff[]): Sniff[] {
  return readings.map((sniff) => ({ ...sniff, plate: JAR_PAIR }));
}

function sniffsOf(samples: readonly Sniff[], sniffer: TransferOptions["sniffer"]): Sniff[] {
  return samples.filter(
    (sniff) => sniff.sniffer.id === sniffer.id && sameChannels(sniff.sniffer.channels, sniffer.channels),
  );
}

/** Sensor of each channel in the order of the features: by sensor first. */
function sensorsOf({ sniffer }: Nose): number[] {
  return sniffer.channels.map(({ sensor }) => sensor).sort((a, b) => a - b);
}

/** What the nose takes for one standard deviation of each channel's level, once all of the headspace is sniffed: levels
 * come first in every recipe. */
function scaleOf({ horizons, sniffer }: Nose): Float32Array {
  return horizons.at(-1)!.input.scale.slice(0, sniffer.channels.length);
}
