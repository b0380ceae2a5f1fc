import { MissRateScreen } from "../../screens/SettingsScreen.js";
import { missRateView } from "../../views/settingsView.js";
import { Frame } from "../places/Frame.js";
import type { YouPageProps } from "./youPage.js";

/** The accepted miss rate, beside what the nose in use has shown. */
export function MissRatePage({ app, editor, onBack }: YouPageProps) {
  const active = app.noses.active.value;
  const groups = active.kind === "ready" ? active.nose.report.groups : [];
  const view = missRateView(editor.shown.value.acceptedMissRate, groups, app.preferences.words.value);
  const choose = (rate: string) => void editor.edit({ acceptedMissRate: Number(rate) });
  return (
    <Frame app={app}>
      <MissRateScreen view={view} onBack={onBack} onRate={choose} />
    </Frame>
  );
}
