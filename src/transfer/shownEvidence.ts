/** What a moved nose has shown: its held-out answers with the second sniffer, in place of those with the first. */
import type { SnifferMap } from "../features/snifferMap.js";
import { answerSniff, type HorizonAnswer } from "../nose/answer.js";
import { calibrate, type DrawIn, drawInOf, slipRate } from "../nose/calibrate.js";
import { comparison, plateAnswers } from "../nose/compareNoses.js";
import type { GroupNose, Nose, NoseTransfer } from "../nose/nose.js";
import type { GroupComparison, GroupReport, NoseReport, Rate } from "../nose/report.js";
import { tellTaught } from "../nose/tellTaught.js";
import type { Sniff } from "../sniff/sniff.js";
import { clopperPearson } from "../stats/proportionInterval.js";

/** A sniff of the second sniffer, of a plate that no model was taught. */
interface Shown {
  readonly sniff: Sniff;
  /** Through a map that never saw its plate; one entry for each horizon. */
  readonly moved: readonly HorizonAnswer[];
  /** The same nose without a map. */
  readonly plain: readonly HorizonAnswer[];
}

export interface Evidence {
  readonly groups: readonly GroupNose[];
  readonly plateNames: readonly string[] | undefined;
  readonly report: NoseReport;
  readonly comparison: readonly GroupComparison[];
}

/**
 * Replaces the evidence of a nose by that of the second sniffer.
 *
 * @param taught - the nose as it was taught
 * @param bare - the same one with the map of all pairs, still with the first sniffer's evidence
 * @param heldOutMaps - for each paired plate the map that was fitted without it; other plates take the map of all
 */
export function shownEvidence(
  taught: Nose,
  bare: Nose & { readonly transfer?: NoseTransfer | undefined },
  second: readonly Sniff[],
  heldOutMaps: ReadonlyMap<string, SnifferMap>,
): Evidence {
  const shown = shownSniffs(taught, bare, second, heldOutMaps);
  const plates = [...new Set(shown.map(({ sniff }) => sniff.plate))];
  const groups = bare.groups.map((group, place) => groupShown(group, place, shown, plates, drawInOf(taught)));
  const compared = bare.groups.flatMap(({ name }, place) => {
    const of = (kind: "moved" | "plain") =>
      plateAnswers(
        shown.flatMap((one) => {
          const truth = one.sniff.groups[name];
          const probability = one[kind].at(-1)?.probabilities[place] ?? null;
          if (probability === null || (truth !== "present" && truth !== "absent")) return [];
          return [{ plate: one.sniff.plate, truth: truth === "present" ? 1 : 0, probability }];
        }),
      );
    return comparison(name, of("plain"), of("moved"));
  });
  const names = taught.plateNames;
  return {
    groups,
    // The taught names stay, so that a taught plate is never taken for an untaught one.
    plateNames:
      names === undefined ? undefined : [...plates, ...names.filter((one) => !plates.includes(one))],
    report: reportOf(taught, groups, compared, plates.length),
    comparison: compared,
  };
}

function shownSniffs(
  taught: Nose,
  bare: Nose,
  second: readonly Sniff[],
  heldOutMaps: ReadonlyMap<string, SnifferMap>,
): Shown[] {
  const knows = tellTaught(taught);
  return second.flatMap((sniff) => {
    const { transfer } = bare;
    if (knows(sniff) || transfer === undefined) return [];
    const map = heldOutMaps.get(sniff.plate) ?? transfer.map;
    const moved = answerSniff({ ...bare, transfer: { ...transfer, map } }, sniff);
    const plain = answerSniff(taught, sniff);
    if (moved.kind !== "answered" || plain.kind !== "answered") return [];
    // A sniff that ended before the last horizon would leave a hole in the table.
    if (moved.horizons.length < bare.horizons.length) return [];
    return [{ sniff, moved: moved.horizons, plain: plain.horizons }];
  });
}

function groupShown(
  group: GroupNose,
  place: number,
  shown: readonly Shown[],
  plates: readonly string[],
  drawIn: DrawIn,
): GroupNose {
  const own = shown.filter(({ sniff }) => ["present", "absent"].includes(sniff.groups[group.name] ?? ""));
  const plate = Int16Array.from(own, ({ sniff }) => plates.indexOf(sniff.plate));
  const margin = slipRate(new Set(plate).size);
  return {
    ...group,
    truth: Int16Array.from(own, ({ sniff }) => (sniff.groups[group.name] === "present" ? 1 : 0)),
    plate,
    // Each plate was answered without its own pair: it is its own fold.
    fold: plate,
    horizons: group.horizons.map((horizon, at) => ({
      calibration: horizon.calibration,
      margin,
      logits: Float32Array.from(own, ({ moved }) => moved[at]!.logits[place]!),
      probabilities: Float32Array.from(own, ({ moved }) =>
        calibrate(horizon.calibration, moved[at]!.logits[place]!, margin, drawIn),
      ),
    })),
  };
}

/** The report states what was shown with the second sniffer, and nothing that was shown with the first. */
function reportOf(
  { report }: Nose,
  groups: readonly GroupNose[],
  compared: readonly GroupComparison[],
  plates: number,
): NoseReport {
  const none: Rate = { events: 0, trials: 0, ...clopperPearson(0, 0) };
  return {
    groups: groups.map(({ name }): GroupReport => {
      const one = compared.find(({ group }) => group === name);
      const [found, quiet] = [one?.found.newer ?? none, one?.quiet.newer ?? none];
      return {
        group: name,
        platesPresent: found.trials,
        platesAbsent: quiet.trials,
        scores: null,
        sensitivity: found,
        specificity: quiet,
        brierParts: null,
        coverage: null,
        reliability: [],
        riskCoverage: [],
        calibration: report.groups.find(({ group }) => group === name)?.calibration ?? "identity",
      };
    }),
    rivals: [],
    horizons: [],
    recipes: report.recipes,
    chosen: report.chosen,
    leftOut: [],
    notes: report.notes,
    split: "plate",
    folds: plates,
    backend: report.backend,
  };
}
