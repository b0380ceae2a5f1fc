/** Checks of plates and of the check jar: what they are asked for, how they begin, what becomes of them. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import type { FindingRequest, PlateFinding } from "../finding/finding.js";
import type { CheckState } from "../flows/checkState.js";
import type { Sniff } from "../sniff/sniff.js";
import type { StoreError } from "../store/storeError.js";
import type { InterruptedAction } from "../views/interruptedView.js";
import { buzzesByDefault } from "./attention.js";
import { createCheckControl, type CheckControl } from "./checkControl.js";
import { checkSubject } from "./checkSubject.js";
import type { DietControl } from "./dietControl.js";
import type { Drafts } from "./drafts.js";
import type { JarControl } from "./nose/jarControl.js";
import type { NoseControl } from "./noseControl.js";
import { clearPlateForm, type PlateForm } from "./plateForm.js";
import { nowIso, type Ports } from "./ports.js";
import { PRACTICE_JAR, type PracticeDish } from "./practice.js";
import type { PracticeKitchen } from "./practiceKitchen.js";
import type { PreferencesControl } from "./preferencesControl.js";
import type { Reach } from "./reach.js";
import { createReleaseControl, type ReleaseControl } from "./releaseControl.js";
import type { Router } from "./router.js";
import type { SnifferControl } from "./snifferControl.js";

/** What a check is for: a plate, or a reading of the check jar. */
export type Purpose = "plate" | "jar";

export interface Checks {
  readonly check: CheckControl;
  /** The way back to clean air after the last plate. */
  readonly release: ReleaseControl;
  readonly checkRunning: ReadonlySignal<boolean>;
  readonly purpose: ReadonlySignal<Purpose>;
  /** What the virtual cook served for the check that runs or just ended. */
  readonly served: ReadonlySignal<PracticeDish | null>;
  /** Groups to judge: what the person avoids, or all that the nose knows. */
  readonly groups: ReadonlySignal<readonly string[]>;
  /** ISO 8601 instant of the last steady clean air; null if there was none. */
  readonly cleanAirAt: ReadonlySignal<string | null>;
  /** Headspace time that a check is likely to take; null where the nose cannot tell. */
  readonly likelyMs: ReadonlySignal<number | null>;
  judge(sniff: Sniff): PlateFinding;
  beginCheck(): void;
  beginJarCheck(): void;
  /** Leaves a finished check: the next plate starts with an empty form. */
  leaveCheck(): void;
  resolveInterruption(action: InterruptedAction): void;
}

export interface ChecksParts {
  readonly ports: Ports;
  readonly preferences: PreferencesControl;
  readonly diet: DietControl;
  readonly noses: NoseControl;
  readonly sniffers: SnifferControl;
  readonly reach: Reach;
  readonly jar: JarControl;
  readonly drafts: Drafts;
  readonly kitchen: PracticeKitchen;
  readonly plate: PlateForm;
  readonly router: Router;
  readonly tellStoreError: (error: StoreError) => void;
}

export function createChecks(parts: ChecksParts): Checks {
  const { ports, sniffers, jar, kitchen, plate } = parts;
  const served = signal<PracticeDish | null>(null);
  const purpose = signal<Purpose>("plate");
  const cleanAirAt = signal<string | null>(null);
  const { groups, likelyMs, judge } = createJudge(parts);

  function onPhase(phase: CheckState["phase"]): void {
    if (phase === "overPlate") cleanAirAt.value = nowIso(ports);
    kitchen.follow(phase, served.value);
    if (phase === "done") dropOwnDraft();
    if (phase === "done" && purpose.value === "jar") void finishJar();
  }

  /** A sniff that was cut short and came to its finding after all is kept as a sniff: its draft is done with. */
  function dropOwnDraft(): void {
    const { value } = check.state;
    if (value.phase === "done" && parts.drafts.sniff.value?.id === value.sniff.id) void parts.drafts.drop();
  }

  const release = createReleaseControl(sniffers);
  const check = createCheckControl({
    sniffers,
    release,
    assess: (sniff) => {
      const finding = judge(sniff);
      const { kind } = judgingOf(parts.noses).settled([finding], Infinity);
      // A reading of the jar runs its full time: its last sweeps are what counts.
      return { finding, settled: purpose.value === "plate" && kind === "settled" };
    },
    saveDraft: (sniff) => void parts.drafts.keep(sniff),
    onPhase,
    buzzes: () => parts.preferences.preferences.value.vibration ?? buzzesByDefault(),
  });

  async function finishJar(): Promise<void> {
    const { value } = check.state;
    if (value.phase !== "done") return;
    const taken = await jar.take(value.sniff);
    leaveCheck();
    parts.router.go("nose", "fitness");
    if (!taken.ok) parts.tellStoreError(taken.error);
  }

  function begin(what: Purpose): void {
    const { value } = sniffers.state;
    if (value.kind !== "ready") return;
    purpose.value = what;
    const wanted = what === "jar" ? PRACTICE_JAR : plate.practiceDish.value;
    served.value = value.sniffer.virtual ? kitchen.choose(wanted) : null;
    const dish = what === "jar" ? "" : plate.dish.value;
    check.begin(checkSubject(ports, value.sniffer, dish, parts.noses.current.value));
  }

  function leaveCheck(): void {
    check.send({ kind: "cancel" });
    served.value = null;
    purpose.value = "plate";
    clearPlateForm(plate);
  }

  const resolutions: Readonly<Record<InterruptedAction, () => void>> = {
    useGathered: () => check.send({ kind: "finishNow" }),
    goOn: () => check.send({ kind: "goOnUnsteady" }),
    restart: () => begin(purpose.value),
    reconnect: parts.reach.tryNow,
    giveUp: parts.reach.giveUp,
  };
  return {
    check,
    release,
    checkRunning: computed(() => !["idle", "done"].includes(check.state.value.phase)),
    purpose,
    served,
    groups,
    likelyMs,
    cleanAirAt,
    judge,
    beginCheck: () => begin("plate"),
    beginJarCheck: () => begin("jar"),
    leaveCheck,
    resolveInterruption: (action) => resolutions[action](),
  };
}

/** No check begins before this is loaded: until then there are no groups to judge. */
function judgingOf(noses: NoseControl) {
  const { value } = noses.judging;
  if (value === null) throw new RangeError("a check began before the judge was loaded");
  return value;
}

/** What a finding is asked for: groups, allergies and accepted rate of the person, the check jar's word. */
function createJudge({
  preferences,
  diet,
  noses,
  jar,
  plate,
}: ChecksParts): Pick<Checks, "groups" | "likelyMs" | "judge"> {
  const groups = computed<readonly string[]>(() => {
    // Before all is read no group is known, and no check begins: it must not begin without an allergy.
    if (!diet.ready.value || noses.judging.value === null) return [];
    const wanted = diet.groups.value;
    return wanted.length > 0 ? wanted : (noses.current.value?.groups.map(({ name }) => name) ?? []);
  });
  const likelyMs = computed(() => {
    const [nose, { value: piece }] = [noses.current.value, noses.judging];
    if (nose === null || piece === null) return null;
    const { acceptedMissRate } = preferences.preferences.value;
    return piece.likelyTimeMs(nose, groups.value, acceptedMissRate, diet.allergyGroups.value);
  });
  return {
    groups,
    likelyMs,
    judge: (sniff) => {
      const { inControl } = jar.verdict.value;
      const request: FindingRequest = {
        groups: groups.value,
        acceptedMissRate: preferences.preferences.value.acceptedMissRate,
        allergyGroups: diet.allergyGroups.value,
        beliefs: plate.beliefs.value,
        ...(inControl === null ? {} : { snifferInControl: inControl }),
      };
      return judgingOf(noses).findPlate(noses.current.value, sniff, request);
    },
  };
}
