/** The app's parts, put together once. Places read their signals and call them; nothing here draws. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { Result } from "../kernel/result.js";
import type { StoreError } from "../store/storeError.js";
import { createTeachClient, type TeachClient } from "../worker/teachClient.js";
import { createChecks, type Checks } from "./checks.js";
import { createDietControl, type DietControl } from "./dietControl.js";
import { createDrafts, type Drafts } from "./drafts.js";
import { createFirstRun, type FirstRun } from "./firstRun.js";
import { watchNetwork, type Network } from "./network.js";
import { createNoseControl, type NoseControl } from "./noseControl.js";
import { createJarControl, type JarControl } from "./nose/jarControl.js";
import { createSampleControl, type SampleControl } from "./nose/sampleControl.js";
import { createLostNotice, type LostNotice } from "./lostNotice.js";
import { createPlateForm, type PlateForm } from "./plateForm.js";
import type { Ports } from "./ports.js";
import { createPracticeKitchen, type PracticeKitchen } from "./practiceKitchen.js";
import { createPreferencesControl, type PreferencesControl } from "./preferencesControl.js";
import { createReach, type Reach } from "./reach.js";
import { createRouter, type Router } from "./router.js";
import { registerServiceWorker, type Updates } from "./serviceWorker.js";
import { createSnifferControl, type SnifferControl } from "./snifferControl.js";
import { createBackupReminder, type BackupReminder } from "./you/backupReminder.js";
import { untilIdle } from "./untilIdle.js";
import { createToasts, type Toasts } from "./toasts.js";

export type Opening =
  | { readonly kind: "reading" }
  | { readonly kind: "open" }
  | { readonly kind: "failed"; readonly cause: unknown };

export interface AppModel extends Checks, Network {
  readonly ports: Ports;
  readonly router: Router;
  readonly updates: Updates;
  readonly toasts: Toasts;
  readonly preferences: PreferencesControl;
  readonly diet: DietControl;
  readonly sniffers: SnifferControl;
  readonly reach: Reach;
  readonly kitchen: PracticeKitchen;
  readonly noses: NoseControl;
  /** The way to the worker that teaches and moves noses. */
  readonly teachers: TeachClient;
  readonly samples: SampleControl;
  readonly jar: JarControl;
  readonly drafts: Drafts;
  readonly firstRun: FirstRun;
  readonly reminder: BackupReminder;
  readonly plate: PlateForm;
  readonly lost: LostNotice;
  /** What is kept is read, and all words are here: no place but the first screen opens before. */
  readonly opening: ReadonlySignal<Opening>;
  /** Reads what is kept. Never rejects: what went wrong is in `opening`. */
  open(): Promise<void>;
  /** Says what the storage refused and what to do. */
  tellStoreError(error: StoreError): void;
  /** Takes away everything made from demo data, for good. */
  dropDemo(): Promise<Result<number, StoreError>>;
}

export function createAppModel(ports: Ports): AppModel {
  const preferences = createPreferencesControl(ports);
  const plate = createPlateForm();
  const diet = createDietControl(preferences, plate);
  const teachers = createTeachClient(
    () => new Worker(new URL("../worker/teachWorker.ts", import.meta.url), { type: "module" }),
  );
  const noses = createNoseControl(ports, teachers, new URL("wasm/", document.baseURI).href);
  const samples = createSampleControl(ports);
  const sniffers = createSnifferControl();
  const reach = createReach(ports, sniffers);
  const jar = createJarControl(ports, sniffers.state, noses.current);
  const drafts = createDrafts(ports);
  const kitchen = createPracticeKitchen(ports);
  const reminder = createBackupReminder(ports);
  const toasts = createToasts();
  const router = createRouter();
  const opening = signal<Opening>({ kind: "reading" });
  const tellStoreError = ({ kind }: StoreError) => {
    const { trouble } = preferences.firstWords.value.text;
    toasts.show(`${trouble.notKept} ${trouble.kinds[kind]}`);
  };
  const lost = createLostNotice(ports.store);
  const checks = createChecks({
    ports,
    preferences,
    diet,
    noses,
    sniffers,
    reach,
    jar,
    drafts,
    kitchen,
    plate,
    router,
    tellStoreError,
  });
  return {
    ...checks,
    ...watchNetwork(),
    ports,
    router,
    updates: registerServiceWorker(),
    toasts,
    preferences,
    diet,
    sniffers,
    reach,
    kitchen,
    noses,
    teachers,
    samples,
    jar,
    drafts,
    firstRun: createFirstRun(),
    reminder,
    plate,
    lost,
    opening,
    open: async () => {
      try {
        await Promise.all([preferences.load(), preferences.loadAll()]);
        lost.look();
        opening.value = { kind: "open" };
        await Promise.all([diet.load(), noses.load(), reach.load()]);
        // Last: a sniff that was cut short is judged as soon as it is shown.
        await drafts.load();
        await Promise.all([reminder.check(), workAhead(checks)]);
      } catch (cause) {
        opening.value = { kind: "failed", cause };
      }
    },
    tellStoreError,
    dropDemo: async () => {
      await preferences.change({ demoDropped: true });
      const dropped = await samples.dropDemo();
      await noses.load();
      return dropped;
    },
  };
}

/** What Plate shows as soon as it is opened is worked out while nobody waits for it. */
async function workAhead({ likelyMs }: Checks): Promise<void> {
  await untilIdle();
  likelyMs.peek();
}
