/** The app's parts, put together once. Places read their signals and call them; nothing here draws. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import { findPlate } from "../finding/findPlate.js";
import type { FindingRequest, PlateFinding } from "../finding/finding.js";
import type { Sniff } from "../sniff/sniff.js";
import type { InterruptedAction } from "../views/interruptedView.js";
import { createTeachClient } from "../worker/teachClient.js";
import { createCheckControl, type CheckControl } from "./checkControl.js";
import { checkSubject } from "./checkSubject.js";
import { createDietControl, type DietControl } from "./dietControl.js";
import { createDrafts, type Drafts } from "./drafts.js";
import { createNoseControl, type NoseControl } from "./noseControl.js";
import { onlineSignal } from "./online.js";
import { clearPlateForm, createPlateForm, type PlateForm } from "./plateForm.js";
import type { Ports } from "./ports.js";
import type { PracticeDish } from "./practice.js";
import { createPracticeKitchen, type PracticeKitchen } from "./practiceKitchen.js";
import { createPreferencesControl, type PreferencesControl } from "./preferencesControl.js";
import { createRouter, type Router } from "./router.js";
import { registerServiceWorker, type Updates } from "./serviceWorker.js";
import { createSnifferControl, type SnifferControl } from "./snifferControl.js";
import { createToasts, type Toasts } from "./toasts.js";

export interface AppModel {
  readonly ports: Ports;
  readonly router: Router;
  readonly updates: Updates;
  readonly toasts: Toasts;
  readonly online: ReadonlySignal<boolean>;
  readonly preferences: PreferencesControl;
  readonly diet: DietControl;
  readonly sniffers: SnifferControl;
  readonly kitchen: PracticeKitchen;
  readonly noses: NoseControl;
  readonly check: CheckControl;
  readonly checkRunning: ReadonlySignal<boolean>;
  readonly drafts: Drafts;
  readonly plate: PlateForm;
  /** What the virtual cook served for the check that runs or just ended. */
  readonly served: ReadonlySignal<PracticeDish | null>;
  /** Groups to judge: what the person avoids, or all that the nose knows. */
  readonly groups: ReadonlySignal<readonly string[]>;
  judge(sniff: Sniff): PlateFinding;
  beginCheck(): void;
  /** Leaves a finished check: the next plate starts with an empty form. */
  leaveCheck(): void;
  resolveInterruption(action: InterruptedAction): void;
}

export function createAppModel(ports: Ports): AppModel {
  const preferences = createPreferencesControl(ports);
  const plate = createPlateForm();
  const diet = createDietControl(preferences, plate);
  const teachers = createTeachClient(
    () => new Worker(new URL("../worker/teachWorker.ts", import.meta.url), { type: "module" }),
  );
  const noses = createNoseControl(ports, teachers, new URL("wasm/", document.baseURI).href);
  const sniffers = createSnifferControl();
  const drafts = createDrafts(ports);
  const kitchen = createPracticeKitchen(ports);
  const served = signal<PracticeDish | null>(null);
  const nose = computed(() => (noses.active.value.kind === "ready" ? noses.active.value.nose : null));
  const groups = computed<readonly string[]>(() => {
    // Before the diet is read, no group is known: a check must not begin without an allergy.
    if (!diet.ready.value) return [];
    const wanted = diet.groups.value;
    return wanted.length > 0 ? wanted : (nose.value?.groups.map(({ name }) => name) ?? []);
  });

  function judge(sniff: Sniff): PlateFinding {
    const request: FindingRequest = {
      groups: groups.value,
      acceptedMissRate: preferences.preferences.value.acceptedMissRate,
      allergyGroups: diet.allergyGroups.value,
      beliefs: plate.beliefs.value,
    };
    return findPlate(nose.value, sniff, request);
  }

  const check = createCheckControl({
    sniffers,
    assess: (sniff) => {
      const finding = judge(sniff);
      return { finding, settled: finding.groups.every(({ verdict }) => verdict !== "uncertain") };
    },
    saveDraft: (sniff) => void drafts.keep(sniff),
    onPhase: (phase) => kitchen.serve(phase === "headspace" ? served.value : null),
  });

  function beginCheck(): void {
    const { value } = sniffers.state;
    if (value.kind !== "ready") return;
    served.value = value.sniffer.virtual ? kitchen.choose(plate.practiceDish.value) : null;
    check.begin(checkSubject(ports, value.sniffer, plate.dish.value, nose.value));
  }

  const resolutions: Readonly<Record<InterruptedAction, () => void>> = {
    useGathered: () => check.send({ kind: "finishNow" }),
    goOn: () => check.send({ kind: "goOnUnsteady" }),
    restart: beginCheck,
    reconnect: () => void sniffers.reconnect(),
  };

  return {
    ports,
    router: createRouter(),
    updates: registerServiceWorker(),
    toasts: createToasts(),
    online: onlineSignal(),
    preferences,
    diet,
    sniffers,
    kitchen,
    noses,
    check,
    checkRunning: computed(() => !["idle", "done"].includes(check.state.value.phase)),
    drafts,
    plate,
    served,
    groups,
    judge,
    beginCheck,
    leaveCheck: () => {
      check.send({ kind: "cancel" });
      served.value = null;
      clearPlateForm(plate);
    },
    resolveInterruption: (action) => resolutions[action](),
  };
}
