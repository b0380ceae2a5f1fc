/** The app's parts, put together once. Places read their signals and call them; nothing here draws. */
import { computed, signal, type ReadonlySignal, type Signal } from "@preact/signals";
import { findPlate } from "../finding/findPlate.js";
import type { FindingRequest } from "../finding/finding.js";
import type { Sniff } from "../sniff/sniff.js";
import type { Dish } from "../virtual/dishes.js";
import { createTeachClient } from "../worker/teachClient.js";
import { createCheckControl, type Assessment, type CheckControl } from "./checkControl.js";
import { checkSubject } from "./checkSubject.js";
import { createDietControl, type DietControl } from "./dietControl.js";
import { createNoseControl, type NoseControl } from "./noseControl.js";
import { createPlateForm, type PlateForm } from "./plateForm.js";
import { nowIso, type Ports } from "./ports.js";
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
  readonly preferences: PreferencesControl;
  readonly diet: DietControl;
  readonly sniffers: SnifferControl;
  readonly kitchen: PracticeKitchen;
  readonly noses: NoseControl;
  readonly check: CheckControl;
  readonly plate: PlateForm;
  /** A sniff that was cut short and kept. */
  readonly draft: Signal<Sniff | null>;
  /** What the virtual cook served for the check that runs or just ended. */
  readonly served: Signal<Dish | null>;
  readonly groups: ReadonlySignal<readonly string[]>;
  readonly request: ReadonlySignal<FindingRequest>;
  beginCheck(): void;
}

export function createAppModel(ports: Ports): AppModel {
  const preferences = createPreferencesControl(ports);
  const diet = createDietControl(preferences);
  const teachers = createTeachClient(
    () => new Worker(new URL("../worker/teachWorker.ts", import.meta.url), { type: "module" }),
  );
  const noses = createNoseControl(ports, teachers, new URL("wasm/", document.baseURI).href);
  const sniffers = createSnifferControl();
  const plate = createPlateForm();
  const draft = signal<Sniff | null>(null);
  const served = signal<Dish | null>(null);
  const kitchen = createPracticeKitchen(ports);
  const activeNose = () => (noses.active.value.kind === "ready" ? noses.active.value.nose : null);

  const groups = computed(() => {
    const wanted = diet.groups.value;
    if (wanted.length > 0) return wanted;
    return activeNose()?.groups.map(({ name }) => name) ?? [];
  });
  const request = computed<FindingRequest>(() => ({
    groups: groups.value,
    acceptedMissRate: preferences.preferences.value.acceptedMissRate,
    allergyGroups: diet.allergyGroups.value,
    beliefs: plate.beliefs.value,
  }));

  function assess(sniff: Sniff): Assessment {
    const finding = findPlate(activeNose(), sniff, request.value);
    return { finding, settled: finding.groups.every(({ verdict }) => verdict !== "uncertain") };
  }

  const check = createCheckControl({
    sniffers,
    assess,
    saveDraft: (sniff) => {
      draft.value = sniff;
      const record = { id: sniff.id, kind: "sniff", changedAt: nowIso(ports), value: sniff };
      void ports.store.save({ drafts: [record] });
    },
    onPhase: (phase) => {
      if (phase === "headspace") kitchen.serve(served.value);
      else kitchen.serve(null);
    },
  });

  function beginCheck(): void {
    const { value } = sniffers.state;
    if (value.kind !== "ready") return;
    served.value = value.sniffer.virtual ? kitchen.choose(plate.practiceDish.value) : null;
    check.begin(checkSubject(ports, value.sniffer, plate.dish.value, activeNose()));
  }

  return {
    ports,
    router: createRouter(),
    updates: registerServiceWorker(),
    toasts: createToasts(),
    preferences,
    diet,
    sniffers,
    kitchen,
    noses,
    check,
    plate,
    draft,
    served,
    groups,
    request,
    beginCheck,
  };
}
