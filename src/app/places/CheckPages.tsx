import { CheckActions, CheckScreen } from "../../screens/CheckScreen.js";
import { FindingActions, FindingScreen } from "../../screens/FindingScreen.js";
import { announcementView } from "../../views/announcementView.js";
import { checkView } from "../../views/checkView.js";
import { findingView } from "../../views/findingView.js";
import type { AppModel } from "../appModel.js";
import { COUNT_DOWN_S } from "../checkControl.js";
import { PRACTICE_SPEED } from "../practice.js";
import { reconnectingOf } from "../snifferCalls.js";
import { Frame } from "./Frame.js";
import { ReleaseBar } from "./ReleaseBar.js";

/** A running check. */
export function DuringCheck({ app }: { readonly app: AppModel }) {
  const sniffer = app.sniffers.state.value;
  const view = checkView(
    app.check.state.value,
    {
      practice: app.served.value !== null,
      isJar: app.purpose.value === "jar",
      practiceSpeed: PRACTICE_SPEED,
      hasAllergy: app.diet.hasAllergy.value,
      likelyMs: app.purpose.value === "plate" ? app.likelyMs.value : null,
      acceptedMissRate: app.preferences.preferences.value.acceptedMissRate,
      snifferLost: sniffer.kind === "lost",
      reconnecting: reconnectingOf(app),
      countdown: app.check.countdown.value,
    },
    app.preferences.words.value,
  );
  if (view === null) return null;
  const { send } = app.check;
  const calls = {
    // The first tap counts down while the hand is on its way; a second one does not wait for it.
    onOverPlate: () => send({ kind: app.check.countdown.value === null ? "getReady" : "overPlateNow" }),
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

/** A finished check: the finding and what to do with it. */
export function AfterCheck({ app }: { readonly app: AppModel }) {
  const state = app.check.state.value;
  if (state.phase !== "done") return null;
  const served = app.served.value;
  const view = findingView(
    state.finding,
    {
      dish: state.sniff.dish,
      allergyGroups: app.diet.allergyGroups.value,
      cautions: app.diet.cautions.value,
      hasProfile: app.diet.hasProfile.value,
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
    <Frame
      app={app}
      actions={<FindingActions labels={view.labels} clearing={app.release.clearing.value} calls={calls} />}
      note={<ReleaseBar app={app} />}
    >
      <FindingScreen view={view} />
    </Frame>
  );
}

/** What is read out of the check: words alone, for the live region that outlives its pages. */
export function CheckAnnouncement({ app }: { readonly app: AppModel }) {
  const context = { isJar: app.purpose.value === "jar", countDownS: COUNT_DOWN_S };
  return <>{announcementView(app.check.state.value, context, app.preferences.words.value)}</>;
}
