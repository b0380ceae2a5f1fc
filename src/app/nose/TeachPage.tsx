import { useSignal } from "@preact/signals";
import { TeachActions, TeachScreen } from "../../screens/TeachScreen.js";
import { shortDayText } from "../../text/formats.js";
import { teachView, type TeachHow } from "../../views/teachView.js";
import type { AppModel } from "../appModel.js";
import { Frame } from "../places/Frame.js";
import { nowIso } from "../ports.js";
import { refreshNeedOf } from "./refreshNeedOf.js";
import { LEAST_FRESH_PLATES } from "../../views/refreshView.js";

/** Teaching a nose, with the person's word at the end. */
export function TeachPage({ app, start }: { readonly app: AppModel; readonly start: TeachHow }) {
  const { value: words } = app.preferences.words;
  const name = useSignal(shortDayText(nowIso(app.ports), words.formats));
  const samples = app.samples.samples.value;
  const how = useSignal<TeachHow>(start);
  const { noses } = app;
  const sniffer = app.sniffers.state.value;
  const refresh = refreshNeedOf(app);
  const view = teachView(
    {
      teaching: noses.teaching.value,
      samples: samples.length,
      plates: new Set(samples.map(({ plate }) => plate)).size,
      name: name.value,
      refresh,
      how: how.value,
      acceptedMissRate: app.preferences.preferences.value.acceptedMissRate,
      connectedSniffer: sniffer.kind === "ready" ? sniffer.sniffer.layout.snifferId : null,
    },
    words,
  );

  async function decide(accept: boolean): Promise<void> {
    const decided = await noses.decide(accept);
    if (decided.ok) app.router.go("nose");
    else app.tellStoreError(decided.error);
  }

  const calls = {
    onBack: () => app.router.go("nose"),
    onName: (value: string) => {
      name.value = value;
    },
    onHow: (id: string) => {
      how.value = id === "refresh" ? "refresh" : "anew";
    },
    onStart: () => {
      const canRefresh = refresh !== null && refresh.freshPlates >= LEAST_FRESH_PLATES;
      const given = name.value.trim() || shortDayText(nowIso(app.ports), words.formats);
      void noses.teach(given, canRefresh ? how.value : "anew");
    },
    onStop: noses.cancelTeaching,
    onSkipChecks: noses.skipChecks,
    onAccept: () => void decide(true),
    onReject: () => void decide(false),
    onDismiss: noses.dismissProblem,
  };
  return (
    <Frame app={app} actions={<TeachActions view={view.body} calls={calls} />}>
      <TeachScreen view={view} calls={calls} />
    </Frame>
  );
}
