import { useSignal } from "@preact/signals";
import { TeachActions, TeachScreen } from "../../screens/TeachScreen.js";
import { shortDayText } from "../../text/formats.js";
import { teachView } from "../../views/teachView.js";
import type { AppModel } from "../appModel.js";
import { Frame } from "../places/Frame.js";
import { nowIso } from "../ports.js";

/** Teaching a nose, with the person's word at the end. */
export function TeachPage({ app }: { readonly app: AppModel }) {
  const { value: words } = app.preferences.words;
  const name = useSignal(shortDayText(nowIso(app.ports), words.formats));
  const samples = app.samples.samples.value;
  const { noses } = app;
  const view = teachView(
    {
      teaching: noses.teaching.value,
      samples: samples.length,
      plates: new Set(samples.map(({ plate }) => plate)).size,
      name: name.value,
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
    onStart: () => void noses.teach(name.value.trim() || shortDayText(nowIso(app.ports), words.formats)),
    onStop: noses.cancelTeaching,
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
