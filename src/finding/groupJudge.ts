import type { GroupNose } from "../nose/nose.js";
import { allowedBelow, FALSE_ALARM_RATE, SMELLED_LEAST_PROBABILITY, SMELLED_WRONG_SHARE } from "./bands.js";
import { type ScoreLadder, scoreLadder } from "./scoreLadder.js";

export type Label = "present" | "absent";

/** A score at one horizon, of a new sniff or of a held-out one. */
export interface Score {
  /** Mixed log-odds. */
  readonly logit: number;
  /** Calibrated probability of *present*. */
  readonly probability: number;
}

/** What the held-out plates have shown of the rule itself. */
export interface ShownErrors {
  /** Held-out present plates that the rule would have called *not smelled* by now. */
  readonly misses: number;
  /** Held-out absent plates that the rule would have called *smelled* by now. */
  readonly falseAlarms: number;
  /** Held-out present plates that the rule would have called *smelled* by now. */
  readonly hits: number;
}

/** The rule for one group at one accepted miss rate. */
export interface GroupJudge {
  readonly heldOutPresent: number;
  readonly heldOutAbsent: number;
  /** False if those called *smelled* were wrong too often on the held-out plates. */
  canAlarm(): boolean;
  /** False if so few present plates can never show the accepted rate. */
  readonly canClear: boolean;
  /** Conformal set at a horizon; for a held-out sniff, against the plates outside its fold. */
  setAt(place: number, score: Score, outsideFold?: number | null): Label[];
  /** The single label that stands after these sets, or null while there is none or it has just come up. */
  settledLabel(sets: readonly Label[][]): Label | null;
  /** The label that would stand at each horizon for a held-out sniff, against the plates outside its fold. */
  heldOutLabels(sniff: number): readonly (Label | null)[];
  /** Errors of the whole rule, looks at earlier horizons included, on the held-out plates. */
  shownErrors(lastPlace: number): ShownErrors;
}

/**
 * Class-conditional (Mondrian) conformal sets in cross-conformal form, with exchangeability by plate.
 *
 * @see Vovk, Annals of Mathematics and Artificial Intelligence 74 (2015), 9-28 (cross-conformal); Vovk, Gammerman and
 *   Shafer, Algorithmic Learning in a Random World (2005), section 4.5 (Mondrian)
 */
export function groupJudge(group: GroupNose, acceptedMissRate: number): GroupJudge {
  const own = judges.get(group) ?? new Map<number, GroupJudge>();
  judges.set(group, own);
  const made = own.get(acceptedMissRate) ?? makeJudge(group, acceptedMissRate);
  own.set(acceptedMissRate, made);
  return made;
}

/** Judges made so far: a finding comes with every sweep, and its rule is the same each time. */
const judges = new WeakMap<GroupNose, Map<number, GroupJudge>>();

function makeJudge(group: GroupNose, acceptedMissRate: number): GroupJudge {
  const ladders = group.horizons.map((own) => ({
    present: ladderOf(group, own.logits, 1),
    absent: ladderOf(group, own.logits, 0),
  }));
  const heldOutPresent = ladders[0]?.present.plates(null) ?? 0;
  const heldOutAbsent = ladders[0]?.absent.plates(null) ?? 0;
  const allowed = allowedBelow(heldOutPresent, acceptedMissRate);

  function setAt(place: number, score: Score, outsideFold: number | null = null): Label[] {
    const ladder = ladders[place];
    if (ladder === undefined) return ["present", "absent"];
    const presentOut = isStrangePresent(ladder.present, score.logit, outsideFold);
    const absentOut = isStrangeAbsent(ladder.absent, score.logit, outsideFold);
    if (presentOut && absentOut) return [];
    if (presentOut && score.probability <= acceptedMissRate) return ["absent"];
    if (absentOut && score.probability >= SMELLED_LEAST_PROBABILITY) return ["present"];
    return ["present", "absent"];
  }

  function isStrangePresent(ladder: ScoreLadder, logit: number, outsideFold: number | null): boolean {
    if (allowed < 0) return false;
    const share = (ladder.plates(outsideFold) + 1) / (heldOutPresent + 1);
    // With a fold left out there are fewer plates; the same level then allows fewer below, but at least none.
    const allowedHere = outsideFold === null ? allowed : Math.max(0, Math.floor((allowed + 1) * share) - 1);
    return ladder.atOrBelow(logit, outsideFold) <= allowedHere + 1e-6;
  }

  function isStrangeAbsent(ladder: ScoreLadder, logit: number, outsideFold: number | null): boolean {
    const p = (1 + ladder.atOrAbove(logit, outsideFold)) / (ladder.plates(outsideFold) + 1);
    return p <= FALSE_ALARM_RATE + 1e-6;
  }

  function settledLabel(sets: readonly Label[][]): Label | null {
    const last = sets.at(-1);
    const label = last?.length === 1 ? (last[0] ?? null) : null;
    if (label === null || sets.length === group.horizons.length) return label;
    const before = sets.at(-2);
    return before?.length === 1 && before[0] === label ? label : null;
  }

  const held = new Map<number, readonly (Label | null)[]>();
  function heldOutLabels(sniff: number): readonly (Label | null)[] {
    const labels = held.get(sniff) ?? labelsOf(sniff);
    held.set(sniff, labels);
    return labels;
  }

  function labelsOf(sniff: number): (Label | null)[] {
    const fold = group.fold[sniff] ?? 0;
    const sets: Label[][] = [];
    return group.horizons.map((own, place) => {
      const score = { logit: own.logits[sniff] ?? 0, probability: own.probabilities[sniff] ?? 0.5 };
      sets.push(setAt(place, score, fold));
      return settledLabel(sets);
    });
  }

  const shown = new Map<number, ShownErrors>();
  function shownErrors(lastPlace: number): ShownErrors {
    const errors = shown.get(lastPlace) ?? countErrors(group, heldOutLabels, lastPlace);
    shown.set(lastPlace, errors);
    return errors;
  }

  function canAlarm(): boolean {
    const { hits, falseAlarms } = shownErrors(group.horizons.length - 1);
    return (falseAlarms + 0.5) / (hits + falseAlarms + 1) <= SMELLED_WRONG_SHARE;
  }

  return {
    heldOutPresent,
    heldOutAbsent,
    canAlarm,
    canClear: allowed >= 0,
    setAt,
    settledLabel,
    heldOutLabels,
    shownErrors,
  };
}

/** Errors by a horizon, from the labels that would stand at each for every held-out sniff. */
function countErrors(
  group: GroupNose,
  labelsOf: (sniff: number) => readonly (Label | null)[],
  lastPlace: number,
): ShownErrors {
  const misses = plateVotes();
  const falseAlarms = plateVotes();
  const hits = plateVotes();
  group.truth.forEach((truth, i) => {
    const stood = labelsOf(i).slice(0, lastPlace + 1);
    const plate = group.plate[i] ?? 0;
    if (truth === 1) {
      misses.add(plate, stood.includes("absent"));
      hits.add(plate, stood.includes("present"));
    } else falseAlarms.add(plate, stood.includes("present"));
  });
  return { misses: misses.whole(), falseAlarms: falseAlarms.whole(), hits: hits.whole() };
}

function ladderOf(group: GroupNose, logits: Float32Array, truth: 0 | 1): ScoreLadder {
  return scoreLadder(
    logits,
    group.plate,
    group.fold,
    Array.from(group.truth, (one) => one === truth),
  );
}

/** Counts plates; one of which only some sniffs were so called counts in part, rounded up in sum. */
function plateVotes() {
  const votes = new Map<number, { events: number; sniffs: number }>();
  return {
    add(plate: number, happened: boolean): void {
      const held = votes.get(plate) ?? { events: 0, sniffs: 0 };
      votes.set(plate, { events: held.events + (happened ? 1 : 0), sniffs: held.sniffs + 1 });
    },
    whole(): number {
      let sum = 0;
      for (const { events, sniffs } of votes.values()) sum += events / sniffs;
      return Math.ceil(Math.max(0, sum - 1e-9));
    },
  };
}
