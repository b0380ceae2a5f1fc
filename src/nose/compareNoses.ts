import type { Sniff } from "../sniff/sniff.js";
import { mcNemar } from "../stats/agreement.js";
import { clopperPearson } from "../stats/proportionInterval.js";
import { logLoss } from "../stats/scores.js";
import { answerSniff } from "./answer.js";
import type { GroupNose, Nose } from "./nose.js";
import type { GroupComparison, PairedRate } from "./report.js";
import { tellTaught } from "./tellTaught.js";

/** What a nose says of one plate that it never saw, beside the truth. */
interface PlateAnswer {
  /** 1 present, 0 absent. */
  readonly truth: number;
  readonly probability: number;
}

/**
 * Puts two noses side by side on the same plates, none of which the answering models ever saw: held-out answers where
 * a nose was taught the plate, its plain answer where it was not. At probability one half, by plate.
 *
 * @param samples - sniffs of known truth, for plates that only one nose was taught; may be left out
 * @returns one entry for each group that both know with a common plate; none if there is none
 */
export function compareNoses(older: Nose, newer: Nose, samples: readonly Sniff[] = []): GroupComparison[] {
  return newer.groups.flatMap((group) => {
    const same = older.groups.find(({ name }) => name === group.name);
    if (same === undefined) return [];
    const before = new Map([...untaughtAnswers(older, group.name, samples), ...heldOutAnswers(older, same)]);
    const after = new Map([...untaughtAnswers(newer, group.name, samples), ...heldOutAnswers(newer, group)]);
    return comparison(group.name, before, after);
  });
}

/** One group of two noses on the plates that both answered for; empty if there is none. */
export function comparison(
  group: string,
  before: ReadonlyMap<string, PlateAnswer>,
  after: ReadonlyMap<string, PlateAnswer>,
): GroupComparison[] {
  const common = [...after].flatMap(([plate, { truth, probability }]) => {
    const old = before.get(plate);
    return old?.truth === truth ? [{ truth, older: old.probability, newer: probability }] : [];
  });
  if (common.length === 0) return [];
  const truths = common.map(({ truth }) => truth);
  const of = (kind: number) => common.filter(({ truth }) => truth === kind);
  const lossOf = (probabilities: readonly number[]) => logLoss(probabilities, truths);
  return [
    {
      group,
      plates: common.length,
      olderLogLoss: lossOf(common.map(({ older }) => older)),
      newerLogLoss: lossOf(common.map(({ newer }) => newer)),
      found: pairedRate(of(1)),
      quiet: pairedRate(of(0)),
    },
  ];
}

/** Mean answer of each plate, from the answers to its sniffs; a plate with sniffs of either truth is left out. */
export function plateAnswers(
  sniffs: Iterable<{ readonly plate: string; readonly truth: number; readonly probability: number }>,
): Map<string, PlateAnswer> {
  const sums = new Map<string, { truth: number; sum: number; count: number }>();
  for (const { plate, truth, probability } of sniffs) {
    const held = sums.get(plate) ?? { truth, sum: 0, count: 0 };
    const agreed = held.truth === truth ? truth : -1;
    sums.set(plate, { truth: agreed, sum: held.sum + probability, count: held.count + 1 });
  }
  return new Map(
    [...sums]
      .filter(([, { truth }]) => truth >= 0)
      .map(([plate, { truth, sum, count }]) => [plate, { truth, probability: sum / count }]),
  );
}

/** Answers of a nose to sniffs of plates that it was not taught, at the last horizon that each sniff reached. */
export function untaughtAnswers(
  nose: Nose,
  group: string,
  samples: readonly Sniff[],
): ReadonlyMap<string, PlateAnswer> {
  const knows = tellTaught(nose);
  const place = nose.groups.findIndex(({ name }) => name === group);
  return plateAnswers(
    samples.flatMap((sniff) => {
      const said = sniff.groups[group];
      if (knows(sniff) || sniff.sniffer.id !== nose.sniffer.id) return [];
      if (said !== "present" && said !== "absent") return [];
      const answer = answerSniff(nose, sniff);
      const last = answer.kind === "answered" ? answer.horizons.at(-1) : undefined;
      const probability = last?.probabilities[place] ?? null;
      return probability === null
        ? []
        : [{ plate: sniff.plate, truth: said === "present" ? 1 : 0, probability }];
    }),
  );
}

function heldOutAnswers(nose: Nose, group: GroupNose): ReadonlyMap<string, PlateAnswer> {
  const own = group.horizons.at(-1);
  const names = nose.plateNames;
  if (own === undefined || names === undefined) return new Map();
  return plateAnswers(
    Array.from(group.truth, (truth, i) => ({
      plate: names[group.plate[i]!]!,
      truth,
      probability: own.probabilities[i]!,
    })),
  );
}

function pairedRate(
  plates: readonly { readonly truth: number; readonly older: number; readonly newer: number }[],
): PairedRate {
  const right = (probability: number, truth: number) => probability >= 0.5 === (truth === 1);
  const count = (test: (older: boolean, newer: boolean) => boolean) =>
    plates.filter(({ truth, older, newer }) => test(right(older, truth), right(newer, truth))).length;
  const rate = (events: number) => ({
    events,
    trials: plates.length,
    ...clopperPearson(events, plates.length),
  });
  const onlyOlder = count((older, newer) => older && !newer);
  const onlyNewer = count((older, newer) => newer && !older);
  return {
    older: rate(count((older) => older)),
    newer: rate(count((_older, newer) => newer)),
    onlyOlder,
    onlyNewer,
    p: mcNemar(onlyOlder, onlyNewer).exactP,
  };
}
