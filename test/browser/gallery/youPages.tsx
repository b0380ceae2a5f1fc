import { planImport } from "../../../src/meals/importPlan.js";
import { emptyProfile, type DietProfile } from "../../../src/diet/profile.js";
import { ALLERGEN_LISTS } from "../../../src/diet/data/jurisdictions.js";
import { AboutScreen, GlossaryScreen, InstallScreen } from "../../../src/screens/AboutScreen.js";
import {
  AllergiesActions,
  AllergiesScreen,
  AllergyFormScreen,
} from "../../../src/screens/AllergiesScreen.js";
import { DataScreen } from "../../../src/screens/DataScreen.js";
import { DietFormScreen } from "../../../src/screens/DietFormScreen.js";
import { ErrorScreen } from "../../../src/screens/ErrorScreen.js";
import { FirstRunActions, FirstRunScreen } from "../../../src/screens/FirstRunScreen.js";
import { ImportPlanScreen } from "../../../src/screens/ImportPlanScreen.js";
import { IntoleranceFormScreen } from "../../../src/screens/IntoleranceFormScreen.js";
import { KitchenCardScreen } from "../../../src/screens/KitchenCardScreen.js";
import { LoadingScreen } from "../../../src/screens/LoadingScreen.js";
import { FormActions } from "../../../src/screens/parts/FormActions.js";
import { MissRateScreen, SettingsScreen } from "../../../src/screens/SettingsScreen.js";
import { YouHomeScreen } from "../../../src/screens/YouHomeScreen.js";
import { aboutView, glossaryView, installView } from "../../../src/views/aboutView.js";
import { allergiesView, allergyFormView, type AllergyDraft } from "../../../src/views/allergiesView.js";
import { brokenView } from "../../../src/views/brokenView.js";
import { dataView, importPlanView, type DataState } from "../../../src/views/dataView.js";
import { dietFormView, intoleranceFormView } from "../../../src/views/dietFormView.js";
import { firstRunView, type FirstRunStep } from "../../../src/views/firstRunView.js";
import { kitchenCardView } from "../../../src/views/kitchenCardView.js";
import { loadView } from "../../../src/views/loadView.js";
import { missRateView, settingsView } from "../../../src/views/settingsView.js";
import { youHomeView } from "../../../src/views/youHomeView.js";
import { NOSE } from "./fixtures/noses.js";
import { NOW_MS } from "./fixtures/words.js";
import { noCalls } from "./noCalls.js";
import type { Page, Shown } from "./page.js";

const nothing = () => undefined;
const on = (body: Shown["body"], actions?: Shown["actions"]): Shown => ({ place: "you", body, actions });

const PROFILE: DietProfile = {
  ...emptyProfile("EU"),
  diets: ["eatsFishNoMeat"],
  avoidedGroups: ["meat"],
  allergies: [
    { allergen: "egg", severity: "lifeThreatening", note: "Adrenaline pen in the front pocket" },
    { allergen: "coriander", severity: "mild", note: "" },
  ],
  intolerances: ["lactose"],
  coeliac: true,
  ownWords: ["suet"],
};

const home =
  (profile: DietProfile, profileLost = false): Page =>
  (words) => {
    const allergenNames = allergiesView(profile, words).items.map(({ name }) => name);
    const groups = profile.avoidedGroups;
    const state = { profile, allergenNames, groups, profileLost, acceptedMissRate: 0.05 };
    return on(<YouHomeScreen view={youHomeView(state, words)} onOpen={nothing} />);
  };

const DRAFT: AllergyDraft = { choice: "egg", own: "", severity: "serious", note: "", isNew: true };
const allergyForm =
  (draft: Partial<AllergyDraft>): Page =>
  (words) => {
    const view = allergyFormView({ ...DRAFT, ...draft }, "EU", words);
    return {
      place: null,
      body: <AllergyFormScreen view={view} calls={noCalls()} />,
      actions: <FormActions save={view.save} cancel={view.cancel} onSave={nothing} onCancel={nothing} />,
    };
  };

const allergies =
  (profile: DietProfile): Page =>
  (words) => {
    const view = allergiesView(profile, words);
    return on(
      <AllergiesScreen view={view} calls={noCalls()} />,
      <AllergiesActions label={view.add} onAdd={nothing} />,
    );
  };

const DATA: DataState = {
  meals: 128,
  photos: 64,
  sniffs: 190,
  noses: 2,
  sizeBytes: 48_200_000,
  persisted: false,
  lastBackupAt: "2026-11-10T10:00:00Z",
  setAside: 0,
  hasDemo: true,
  fault: null,
  saving: false,
  erase: null,
  nowMs: NOW_MS,
};

const data =
  (state: Partial<DataState>): Page =>
  (words) =>
    on(<DataScreen view={dataView({ ...DATA, ...state }, words)} calls={noCalls()} />);

const plan: Page = (words) => {
  const meal = { format: "nidor-meal/1", dish: "Clear noodle soup" };
  const contents = {
    writtenAt: "2026-11-20T10:00:00Z",
    records: [
      {
        table: "meals",
        id: "a",
        demo: false,
        changedAt: "2026-11-20T09:00:00Z",
        value: { ...meal, id: "a" },
      },
      {
        table: "meals",
        id: "b",
        demo: false,
        changedAt: "2026-11-19T09:00:00Z",
        value: { ...meal, id: "b" },
      },
    ],
  } as const;
  const existing = [
    { table: "meals", id: "a", changedAt: "2026-11-18T09:00:00Z", fingerprint: "other" },
  ] as const;
  const view = importPlanView(planImport(existing, contents), contents.writtenAt, false, words);
  return {
    place: null,
    body: <ImportPlanScreen view={view} onChoose={nothing} />,
    actions: <FormActions save={view.do} cancel={view.cancel} onSave={nothing} onCancel={nothing} />,
  };
};

const card =
  (profile: DietProfile, language: Parameters<typeof kitchenCardView>[1]): Page =>
  (words) =>
    on(<KitchenCardScreen view={kitchenCardView(profile, language, words)} calls={noCalls()} />);

const firstRun =
  (step: FirstRunStep): Page =>
  (words) => {
    const view = firstRunView(step, true, words);
    return {
      place: null,
      body: <FirstRunScreen view={view} />,
      actions: <FirstRunActions view={view} onAction={nothing} />,
    };
  };

const settings = {
  jurisdiction: "EU",
  list: ALLERGEN_LISTS.EU,
  theme: "system",
  language: null,
  vibration: true,
} as const;

export const YOU_PAGES: Readonly<Record<string, Page>> = {
  "you-filled": home(PROFILE),
  "you-empty": home(emptyProfile("EU")),
  "you-lost": home(emptyProfile("EU"), true),
  "you-diet": (words) =>
    on(<DietFormScreen view={dietFormView(PROFILE, "suet", ["meat", "egg"], words)} calls={noCalls()} />),
  "you-intolerances": (words) =>
    on(<IntoleranceFormScreen view={intoleranceFormView(PROFILE, "", words)} calls={noCalls()} />),
  "you-allergies": allergies(PROFILE),
  "you-allergies-none": allergies(emptyProfile("EU")),
  "you-allergy-form": allergyForm({}),
  "you-allergy-own": allergyForm({ choice: "own", isNew: false }),
  "you-settings": (words) => on(<SettingsScreen view={settingsView(settings, words)} calls={noCalls()} />),
  "you-miss-rate": (words) =>
    on(
      <MissRateScreen
        view={missRateView(0.05, NOSE.report.groups, words)}
        onBack={nothing}
        onRate={nothing}
      />,
    ),
  "you-data": data({}),
  "you-data-fault": data({
    fault: { way: "in", cause: { kind: "damaged" } },
    setAside: 2,
    hasDemo: false,
    persisted: true,
  }),
  "you-data-erase": data({ erase: { sure: false } }),
  "you-import": plan,
  "you-card-en": card(PROFILE, "en"),
  "you-card-ja": card(PROFILE, "ja"),
  "you-card-empty": card(emptyProfile("EU"), "en"),
  "you-about": (words) => on(<AboutScreen view={aboutView("0.1.0", words)} onBack={nothing} />),
  "you-install": (words) =>
    on(
      <InstallScreen
        view={installView(true, "http://localhost:4173/", words)}
        onBack={nothing}
        onInstall={nothing}
      />,
    ),
  "you-glossary": (words) => on(<GlossaryScreen view={glossaryView(words)} onBack={nothing} />),
  "first-what": firstRun("what"),
  "first-who": firstRun("who"),
  "first-start": firstRun("start"),
  "shell-error": (words) => on(<ErrorScreen view={brokenView("RangeError: example", "#/plate", words)} />),
  "shell-loading": (words) =>
    on(<LoadingScreen view={loadView({ kind: "loading" }, words)} onRetry={nothing} />),
  "shell-failed": (words) =>
    on(
      <LoadingScreen
        view={loadView({ kind: "failed", why: words.text.trouble.kinds.quota }, words)}
        onRetry={nothing}
      />,
    ),
};
