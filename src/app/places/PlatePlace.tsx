import { lazy } from "preact/compat";
import { CheckActions, CheckScreen } from "../../screens/CheckScreen.js";
import { FindingActions, FindingScreen } from "../../screens/FindingScreen.js";
import { Notice } from "../../screens/parts/Notice.js";
import { PlateHomeActions, PlateHomeScreen } from "../../screens/PlateHomeScreen.js";
import { checkView } from "../../views/checkView.js";
import { findingView } from "../../views/findingView.js";
import { plateHomeView } from "../../views/plateHomeView.js";
import type { AppModel } from "../appModel.js";
import { plateHomeCalls } from "../plateHomeCalls.js";
import { PRACTICE_SPEED } from "../practice.js";
import { Frame } from "./Frame.js";

const KitchenCardPage = lazy(async () => ({
  default: (await import("../you/KitchenCardPage.js")).KitchenCardPage,
}));

/** Plate: before, during and after a check; and the kitchen card, but for a running check. */
export function PlatePlace({ app }: { readonly app: AppModel }) {
  const { phase } = app.check.state.value;
  const [page] = app.router.route.value.page;
  if (page === "card" && !app.checkRunning.value) return <KitchenCardPage app={app} place="plate" />;
  if (phase === "idle") return <BeforeCheck app={app} />;
  return phase === "done" ? <AfterCheck app={app} /> : <DuringCheck app={app} />;
}

function BeforeCheck({ app }: { readonly app: AppModel }) {
  const { plate, diet } = app;
  const active = app.noses.active.value;
  const view = plateHomeView(
    {
      sniffer: app.sniffers.state.value,
      bluetooth: app.ports.bluetooth !== undefined,
      practiceSpeed: PRACTICE_SPEED,
      dish: plate.dish.value,
      suggestions: diet.suggestions.value,
      claims: plate.claims.value,
      cautions: diet.cautions.value,
      questions: diet.questions.value,
      hasProfile: diet.hasProfile.value,
      groups: app.groups.value,
      beliefs: plate.beliefs.value,
      noseName: active.kind === "ready" ? active.nose.name : null,
      practiceDishes: app.kitchen.dishes.value,
      practiceDish: plate.practiceDish.value,
      draftAt: app.drafts.sniff.value?.takenAt ?? null,
      nowMs: app.ports.nowMs(),
    },
    app.preferences.words.value,
  );
  const calls = plateHomeCalls(app);
  return (
    <Frame app={app} actions={<PlateHomeActions view={view.check} onCheck={calls.onCheck} />}>
      {app.preferences.profileLost.value && (
        <Notice strong live>
          {app.preferences.words.value.text.trouble.profileLost}
        </Notice>
      )}
      <PlateHomeScreen view={view} calls={calls} />
    </Frame>
  );
}

function DuringCheck({ app }: { readonly app: AppModel }) {
  const sniffer = app.sniffers.state.value;
  const view = checkView(
    app.check.state.value,
    {
      practice: app.served.value !== null,
      practiceSpeed: PRACTICE_SPEED,
      hasAllergy: app.diet.hasAllergy.value,
      acceptedMissRate: app.preferences.preferences.value.acceptedMissRate,
      snifferLost: sniffer.kind === "lost",
    },
    app.preferences.words.value,
  );
  if (view === null) return null;
  const { send } = app.check;
  const calls = {
    onOverPlate: () => send({ kind: "overPlateNow" }),
    onFinish: () => send({ kind: "finishNow" }),
    onStop: () => send({ kind: "cancel" }),
    onInterrupted: app.resolveInterruption,
  };
  return (
    <Frame app={app} actions={<CheckActions view={view} calls={calls} />}>
      <CheckScreen view={view} />
    </Frame>
  );
}

function AfterCheck({ app }: { readonly app: AppModel }) {
  const state = app.check.state.value;
  if (state.phase !== "done") return null;
  const served = app.served.value;
  const view = findingView(
    state.finding,
    {
      dish: state.sniff.dish,
      allergyGroups: app.diet.allergyGroups.value,
      cautions: app.diet.cautions.value,
      nowMs: app.ports.nowMs(),
      served: served === null ? null : { dishName: served.name, groups: served.groups },
    },
    app.preferences.words.value,
  );
  const calls = {
    onSave: () => app.router.go("meals", "new"),
    onKeep: () => app.router.go("nose", "keep", state.sniff.id),
    onAgain: app.beginCheck,
    onDone: app.leaveCheck,
  };
  return (
    <Frame app={app} actions={<FindingActions view={view} calls={calls} />}>
      <FindingScreen view={view} />
    </Frame>
  );
}
