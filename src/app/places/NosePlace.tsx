import { useEffect } from "preact/hooks";
import { NoseHomeActions, NoseHomeScreen } from "../../screens/NoseHomeScreen.js";
import { NoseReportScreen } from "../../screens/NoseReportScreen.js";
import { noseHomeView } from "../../views/noseHomeView.js";
import { noseReportView } from "../../views/noseReportView.js";
import type { AppModel } from "../appModel.js";
import { FitnessPage } from "../nose/FitnessPage.js";
import { refreshNeedOf } from "../nose/refreshNeedOf.js";
import { KeepSamplePage } from "../nose/KeepSamplePage.js";
import { KnownSniffersPage } from "../nose/KnownSniffersPage.js";
import { LivePage } from "../nose/LivePage.js";
import { SamplesPage } from "../nose/SamplesPage.js";
import { TeachPage } from "../nose/TeachPage.js";
import { TransferPage } from "../nose/TransferPage.js";
import { VersionsPage } from "../nose/VersionsPage.js";
import { late } from "../late.js";
import { Frame } from "./Frame.js";

const PracticePage = late(async () => (await import("../nose/PracticePage.js")).PracticePage);

/** Nose: the model in use, its samples and versions, and the sniffer's fitness. */
export function NosePlace({ app }: { readonly app: AppModel }) {
  useEffect(() => {
    void app.samples.load();
    return app.ports.store.subscribe(["sniffs"], () => void app.samples.load());
  }, []);
  const [page, id] = app.router.route.value.page;
  if (!app.noses.loaded.value) return <Frame app={app}>{null}</Frame>;
  switch (page) {
    case "keep":
      return <KeepSamplePage app={app} sniffId={id ?? ""} />;
    case "samples":
      return <SamplesPage app={app} />;
    case "teach":
      return <TeachPage app={app} start={id === "refresh" ? "refresh" : "anew"} />;
    case "versions":
      return <VersionsPage app={app} />;
    case "fitness":
      return <FitnessPage app={app} />;
    case "live":
      return <LivePage app={app} />;
    case "sniffers":
      return <KnownSniffersPage app={app} />;
    case "practice":
      return <PracticePage app={app} />;
    case "transfer":
      return <TransferPage app={app} />;
    case "report":
      return <ReportPage app={app} />;
    default:
      return <NoseHome app={app} />;
  }
}

function NoseHome({ app }: { readonly app: AppModel }) {
  const active = app.noses.active.value;
  useEffect(() => void app.jar.load(), [app.sniffers.state.value.kind]);
  const view = noseHomeView(
    {
      active,
      samples: app.samples.samples.value.length,
      acceptedMissRate: app.preferences.preferences.value.acceptedMissRate,
      groups: app.groups.value,
      nowMs: app.ports.nowMs(),
      shown:
        active.kind === "ready"
          ? (app.noses.judging.value?.shownMisses(
              active.nose,
              app.preferences.preferences.value.acceptedMissRate,
            ) ?? [])
          : [],
      refresh: active.kind === "ready" && active.demo ? null : refreshNeedOf(app),
    },
    app.preferences.words.value,
  );
  return (
    <Frame
      app={app}
      actions={<NoseHomeActions label={view.teach} onTeach={() => app.router.go("nose", "teach")} />}
    >
      <NoseHomeScreen
        view={view}
        onOpen={(page) => (page === "glossary" ? app.router.go("you", page) : app.router.go("nose", page))}
        onRefresh={() => app.router.go("nose", "teach", "refresh")}
      />
    </Frame>
  );
}

function ReportPage({ app }: { readonly app: AppModel }) {
  const active = app.noses.active.value;
  if (active.kind !== "ready") return <NoseHome app={app} />;
  const view = noseReportView(active.nose, app.preferences.words.value);
  return (
    <Frame app={app}>
      <NoseReportScreen view={view} onBack={() => app.router.go("nose")} />
    </Frame>
  );
}
