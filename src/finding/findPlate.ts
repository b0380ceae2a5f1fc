import { answerSniff, headspaceMs, type Answer, type HorizonAnswer } from "../nose/answer.js";
import type { GroupNose, Nose } from "../nose/nose.js";
import { leastCalibrationCount } from "../stats/conformal.js";
import { clopperPearsonUpper, trialsToShow } from "../stats/proportionInterval.js";
import { sniffFaults } from "../sniff/quality.js";
import type { Sniff } from "../sniff/sniff.js";
import { FALSE_ALARM_RATE, LEAST_SIGNAL_TO_NOISE, UNLIKE_RATE } from "./bands.js";
import type { Basis, FindingRequest, GroupFinding, PlateFinding, Reason, Verdict } from "./finding.js";
import { groupJudge, type GroupJudge, type Label } from "./groupJudge.js";
import { likeScores } from "./likeScores.js";
import { taughtShare, withBelief } from "./withBelief.js";

/** Mean time between sweeps of a single-sweep sniff, for the word on how many are needed. Common practice. */
const USUAL_SWEEP_MS = 2_000;

/**
 * The finding for one plate: the only way from a nose and a sniff to words. Same arguments, same finding.
 *
 * @param nose - null if there is none yet
 * @param sniff - a whole sniff, or what there is of it so far
 * @throws {RangeError} if the accepted miss rate or a belief does not lie strictly between 0 and 1
 */
export function findPlate(nose: Nose | null, sniff: Sniff, request: FindingRequest): PlateFinding {
  const { acceptedMissRate } = request;
  if (!(acceptedMissRate > 0 && acceptedMissRate < 1))
    throw new RangeError(`the accepted miss rate lies between 0 and 1, got ${acceptedMissRate}`);
  const answer = nose === null ? null : answerSniff(nose, sniff);
  const common = commonReasons(nose, answer, sniff, request);
  return {
    format: "nidor-finding/1",
    sniffId: sniff.id,
    headspaceMs: headspaceMs(sniff),
    acceptedMissRate,
    groups: request.groups.map((group) => {
      const place = nose?.groups.findIndex(({ name }) => name === group) ?? -1;
      const heldBack = finishedReasons(common, group, request);
      if (nose === null) return withoutAnswer(group, heldBack);
      if (place < 0) return withoutAnswer(group, [{ kind: "groupNotTaught" }, ...heldBack]);
      return groupFinding(nose, place, answer, heldBack, request);
    }),
  };
}

/** A group that the person is allergic to is never cleared; that is said whatever else is. */
function finishedReasons(common: readonly Reason[], group: string, request: FindingRequest): Reason[] {
  return request.allergyGroups.includes(group) ? [...common, { kind: "allergy" }] : [...common];
}

function withoutAnswer(group: string, reasons: readonly Reason[]): GroupFinding {
  return { group, verdict: "uncertain", probability: null, interval: null, set: [], reasons, basis: null };
}

/** Reasons that hold for every group: the sniff, and the sniff against the nose. */
function commonReasons(
  nose: Nose | null,
  answer: Answer | null,
  sniff: Sniff,
  request: FindingRequest,
): Reason[] {
  const reasons: Reason[] = [...sniffFaults(sniff, sweepsNeeded(nose, answer, sniff))];
  if (nose === null || answer === null) return [...reasons, { kind: "noNose" }];
  if (sniff.sniffer.id !== nose.sniffer.id) reasons.push({ kind: "otherSniffer" });
  if (request.snifferInControl === false) reasons.push({ kind: "drifted" });
  if (answer.kind === "otherChannels" || answer.kind === "noCleanAir") reasons.push({ kind: answer.kind });
  const last = answer.kind === "answered" ? answer.horizons.at(-1) : undefined;
  if (last === undefined) return reasons;
  if (last.signalToNoise !== null && last.signalToNoise < LEAST_SIGNAL_TO_NOISE)
    reasons.push({ kind: "weakSignal", signalToNoise: last.signalToNoise, needed: LEAST_SIGNAL_TO_NOISE });
  if (last.familiarity <= UNLIKE_RATE)
    reasons.push({ kind: "unlikeTaught", distancePValue: last.familiarity });
  return reasons;
}

/** Sweeps until the first horizon, at the pace of this sniff; 1 once it is reached. */
function sweepsNeeded(nose: Nose | null, answer: Answer | null, sniff: Sniff): number {
  if (answer?.kind !== "tooShort") return 1;
  const sweeps = sniff.headspace.ohm.length;
  const paceMs = sweeps > 1 ? headspaceMs(sniff) / (sweeps - 1) : USUAL_SWEEP_MS;
  const firstMs = nose?.horizons[0]?.fromMs ?? 0;
  return Math.max(sweeps + 1, 1 + Math.ceil(firstMs / Math.max(paceMs, 1)));
}

function groupFinding(
  nose: Nose,
  place: number,
  answer: Answer | null,
  heldBack: readonly Reason[],
  request: FindingRequest,
): GroupFinding {
  const group = nose.groups[place] as GroupNose;
  const { acceptedMissRate } = request;
  const horizons = answer?.kind === "answered" ? answer.horizons : [];
  const last = horizons.at(-1);
  const judge = groupJudge(group, acceptedMissRate);
  const basis = basisOf(nose, judge, last?.horizon ?? group.horizons.length - 1);
  const probability = last?.probabilities[place] ?? null;
  const own = last === undefined ? undefined : group.horizons[last.horizon];
  if (last === undefined || own === undefined || probability === null) {
    const few = group.horizons.length === 0 ? [tooFewPlates(group, judge, acceptedMissRate)] : [];
    return { ...withoutAnswer(group.name, [...few, ...heldBack]), basis };
  }
  const said = horizons.map((one) => setOf(judge, one, place));
  const sets = judge.canAlarm() ? said : said.map(withoutAlarm);
  const label = judge.settledLabel(sets);
  const unsound = heldBack.filter(({ kind }) => kind !== "allergy" || label !== "present");
  const reasons = [
    ...unsound,
    ...setReasons(group, judge, sets, label, probability, acceptedMissRate),
    ...(label === "absent" ? shownReasons(basis, acceptedMissRate) : []),
  ];
  // A sniff that is not to be relied on moves nobody's belief; nor does one that might lower it for an allergy.
  const belief = unsound.length > 0 ? undefined : request.beliefs?.[group.name];
  return {
    group: group.name,
    verdict: verdictOf(label, reasons),
    probability,
    interval: likeScores(own, group.truth, probability),
    ...(belief === undefined ? {} : { belief: withBelief(probability, taughtShare(group), belief) }),
    set: sets.at(-1) ?? [],
    reasons,
    basis,
  };
}

function setOf(judge: GroupJudge, answer: HorizonAnswer, place: number): Label[] {
  const probability = answer.probabilities[place] ?? 0.5;
  return judge.setAt(answer.horizon, { logit: answer.logits[place] ?? 0, probability });
}

/** Where alarms have been wrong too often on held-out plates, *absent* stays possible. */
function withoutAlarm(set: readonly Label[]): Label[] {
  return set.length === 1 && set[0] === "present" ? ["present", "absent"] : [...set];
}

function verdictOf(label: Label | null, reasons: readonly Reason[]): Verdict {
  if (label === null || reasons.length > 0) return "uncertain";
  return label === "present" ? "smelled" : "not smelled";
}

/** Why the sets name no single label that stands. */
function setReasons(
  group: GroupNose,
  judge: GroupJudge,
  sets: readonly Label[][],
  label: Label | null,
  probability: number,
  acceptedMissRate: number,
): Reason[] {
  if (label !== null) return [];
  const set = sets.at(-1) ?? [];
  if (set.length === 0) return [{ kind: "neitherFits" }];
  if (set.length === 1) return [{ kind: "stillMoving" }];
  const wasSingle = sets.length < group.horizons.length && sets.at(-2)?.length === 1;
  const moving: Reason[] = wasSingle ? [{ kind: "stillMoving" }] : [];
  const towards: Label = probability < 0.5 ? "present" : "absent";
  const cannot =
    towards === "present" ? !judge.canClear : judge.heldOutAbsent < leastCalibrationCount(FALSE_ALARM_RATE);
  const why: Reason = cannot
    ? tooFewPlates(group, judge, acceptedMissRate, towards)
    : { kind: "bothPossible" };
  return [why, ...moving];
}

/** *Not smelled* also needs the miss rate to have been shown. */
function shownReasons(basis: Basis, accepted: number): Reason[] {
  if (basis.missRateUpper <= accepted) return [];
  return [
    {
      kind: "missRateNotShown",
      misses: basis.misses,
      plates: basis.heldOutPresent,
      upper: basis.missRateUpper,
      accepted,
    },
  ];
}

/** Too few plates of one truth; of the present ones while they cannot show the accepted rate. */
function tooFewPlates(group: GroupNose, judge: GroupJudge, acceptedMissRate: number, truth?: Label): Reason {
  const least = leastCalibrationCount(FALSE_ALARM_RATE);
  const scarcer = group.platesAbsent < Math.min(least, group.platesPresent) ? "absent" : "present";
  if ((truth ?? scarcer) === "absent")
    return {
      kind: "tooFewPlates",
      truth: "absent",
      plates: group.horizons.length === 0 ? group.platesAbsent : judge.heldOutAbsent,
      bestShowable: null,
      needed: least,
    };
  const plates = group.horizons.length === 0 ? group.platesPresent : judge.heldOutPresent;
  const bestShowable = clopperPearsonUpper(0, plates);
  return {
    kind: "tooFewPlates",
    truth: "present",
    plates,
    bestShowable,
    needed: trialsToShow(acceptedMissRate),
  };
}

function basisOf(nose: Nose, judge: GroupJudge, lastPlace: number): Basis {
  const { misses, falseAlarms } = judge.shownErrors(lastPlace);
  return {
    noseId: nose.id,
    noseName: nose.name,
    taughtAt: nose.taughtAt,
    platesTaught: nose.platesTaught,
    heldOutPresent: judge.heldOutPresent,
    heldOutAbsent: judge.heldOutAbsent,
    misses,
    missRateUpper: clopperPearsonUpper(misses, judge.heldOutPresent),
    falseAlarms,
  };
}
