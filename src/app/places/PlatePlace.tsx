import { useEffect } from "preact/hooks";
import { Notice } from "../../screens/parts/Notice.js";
import { PlateHomeActions, PlateHomeScreen } from "../../screens/PlateHomeScreen.js";
import { plateHomeView } from "../../views/plateHomeView.js";
import type { AppModel } from "../appModel.js";
import type { FirstLook } from "../firstLook.js";
import { late } from "../late.js";
import { layOutUnseen } from "../layOutUnseen.js";
import { plateHomeCalls } from "../plateHomeCalls.js";
import { snifferContext } from "../snifferCalls.js";
import { untilIdle } from "../untilIdle.js";
import { firstRunPage } from "./firstRunPage.js";
import { Frame } from "./Frame.js";
import { ReleaseBar } from "./ReleaseBar.js";

const DuringCheck = late(async () => (await import("./CheckPages.js")).DuringCheck);
const AfterCheck = late(async () => (await import("./CheckPages.js")).AfterCheck);
const KitchenCardPage = late(async () => (await import("../you/KitchenCardPage.js")).KitchenCardPage);

interface Props {
  readonly app: AppModel;
  readonly look: FirstLook;
}

/** Plate: the first run, then before, during and after a check; and the kitchen card, but for a running check. */
export function PlatePlace({ app, look }: Props) {
  const step = app.firstRun.step.value;
  // Plate is made ahead, unseen, on each page of the first run: making it is slow the first time, and tables come late.
  useEffect(() => {
    if (step !== null)
      void untilIdle().then(() => layOutUnseen(<PlateHomeScreen {...plateHome({ app, look })} />));
  }, [step]);
  if (step !== null) return firstRunPage(app, step);
  const { phase } = app.check.state.value;
  const [page] = app.router.route.value.page;
  const isOpen = app.opening.value.kind === "open";
  if (page === "card" && !isOpen) return <Frame app={app}>{null}</Frame>;
  if (page === "card" && !app.checkRunning.value) return <KitchenCardPage app={app} place="plate" />;
  if (phase === "idle") return beforeCheck({ app, look });
  return phase === "done" ? <AfterCheck app={app} /> : <DuringCheck app={app} />;
}

/** What Plate shows and does. Before what is kept is read, the screen stands as it looked last. */
function plateHome({ app, look }: Props) {
  const { plate, diet, drafts } = app;
  const isOpen = app.opening.value.kind === "open";
  const view = plateHomeView(
    {
      sniffer: app.sniffers.state.value,
      ...snifferContext(app, look),
      dish: plate.dish.value,
      suggestions: diet.suggestions.value,
      claims: plate.claims.value,
      cautions: diet.cautions.value,
      questions: diet.questions.value,
      standing: diet.standing.value,
      ready: diet.ready.value && app.noses.judging.value !== null,
      hasProfile: isOpen ? diet.hasProfile.value : look.hasProfile,
      groups: app.groups.value,
      beliefs: plate.beliefs.value,
      likelyMs: app.likelyMs.value,
      noseName: app.noses.current.value?.name ?? null,
      practiceDishes: app.kitchen.dishes.value,
      practiceDish: plate.practiceDish.value,
      draftAt: drafts.loaded.value ? (drafts.sniff.value?.takenAt ?? null) : look.draftAt,
      nowMs: app.ports.nowMs(),
    },
    app.preferences.firstWords.value,
  );
  return { view, calls: plateHomeCalls(app) };
}

/** A call, as the first run is: the frame stays. */
function beforeCheck({ app, look }: Props) {
  const { view, calls } = plateHome({ app, look });
  return (
    <Frame
      app={app}
      actions={
        <PlateHomeActions view={view.check} clearing={app.release.clearing.value} onCheck={calls.onCheck} />
      }
      note={<ReleaseBar app={app} />}
    >
      <div class="stack">
        {app.preferences.profileLost.value && (
          <Notice strong live>
            {app.preferences.firstWords.value.text.trouble.profileLost}
          </Notice>
        )}
        <PlateHomeScreen view={view} calls={calls} />
      </div>
    </Frame>
  );
}
