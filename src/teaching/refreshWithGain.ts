import { sameChannels } from "../kernel/channel.js";
import { seededRandom } from "../kernel/random.js";
import { err, ok, type Result } from "../kernel/result.js";
import { comparison, untaughtAnswers } from "../nose/compareNoses.js";
import type { Nose } from "../nose/nose.js";
import type { GroupComparison } from "../nose/report.js";
import { tellTaught } from "../nose/tellTaught.js";
import type { Sniff } from "../sniff/sniff.js";
import { dealFolds } from "./dealFolds.js";
import { kindOfRow, prepareSamples } from "./prepareSamples.js";
import { refreshNose } from "./refreshNose.js";
import type { TeachError, TeachOptions } from "./teachNose.js";

/** Why there is no refreshed nose. */
export type RefreshError =
  | TeachError
  /** Fresh plates of this sniffer that the nose was not taught: one cannot be held out while another teaches. */
  | { readonly kind: "tooFewFresh"; readonly plates: number };

const LEAST_FRESH_PLATES = 2;
/** Parts in which the fresh plates are held out. Common practice. */
const FOLDS = 5;

/**
 * Brings a nose up to date and tries how much that brings: each fresh plate is judged by the old nose and by a nose
 * refreshed without it.
 *
 * @param oldSamples - what the old nose was taught; without them the refreshed nose rests on the fresh plates alone
 * @param fresh - samples of known truth; those that the nose was taught, or of another sniffer, are left out
 */
export async function refreshWithGain(
  old: Nose,
  oldSamples: readonly Sniff[],
  fresh: readonly Sniff[],
  options: TeachOptions,
): Promise<Result<Nose, RefreshError>> {
  const prepared = prepareSamples(usableFresh(old, fresh), options.groups);
  if (!prepared.ok) return err({ kind: "tooFewFresh", plates: 0 });
  const { sniffs, plates } = prepared.value;
  const freshPlates = new Set(plates).size;
  if (freshPlates < LEAST_FRESH_PLATES) return err({ kind: "tooFewFresh", plates: freshPlates });
  const folds = Math.min(FOLDS, freshPlates);
  const freshNames = new Set(sniffs.map(({ plate }) => plate));
  // A plate that is fresh must not come back in through the old samples.
  const known = oldSamples.filter(({ plate }) => !freshNames.has(plate));
  const foldOf = dealFolds(
    plates,
    (row) => kindOfRow(prepared.value, row),
    folds,
    seededRandom(options.seed),
  );
  const judged = old.groups.map(({ name }) => ({ name, before: new Map(), after: new Map() }));
  for (let fold = 0; fold < folds; fold += 1) {
    const held = sniffs.filter((_, row) => foldOf[row] === fold);
    const others = sniffs.filter((_, row) => foldOf[row] !== fold);
    const refreshed = await refreshNose(old, known, others, withinPart(options, fold, folds + 1));
    if (!refreshed.ok) return refreshed;
    for (const { name, before, after } of judged) {
      untaughtAnswers(old, name, held).forEach((answer, plate) => before.set(plate, answer));
      untaughtAnswers(refreshed.value.nose, name, held).forEach((answer, plate) => after.set(plate, answer));
    }
  }
  const whole = await refreshNose(old, known, sniffs, withinPart(options, folds, folds + 1));
  if (!whole.ok) return whole;
  const gain: GroupComparison[] = judged.flatMap(({ name, before, after }) =>
    comparison(name, before, after),
  );
  const { nose } = whole.value;
  const refresh = { of: { id: old.id, name: old.name }, freshPlates, folds, gain };
  return ok({ ...nose, report: { ...nose.report, refresh } });
}

/** Of the nose's own sniffer, and of plates that it was not taught. */
export function usableFresh(old: Nose, fresh: readonly Sniff[]): Sniff[] {
  const taught = tellTaught(old);
  return fresh.filter(
    (sniff) =>
      !taught(sniff) &&
      sniff.sniffer.id === old.sniffer.id &&
      sameChannels(sniff.sniffer.channels, old.sniffer.channels),
  );
}

/** The same options, with the progress of one part of several. */
function withinPart(options: TeachOptions, part: number, parts: number): TeachOptions {
  return { ...options, onProgress: (done) => options.onProgress?.((part + done) / parts) };
}
