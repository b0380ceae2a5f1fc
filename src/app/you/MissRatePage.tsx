import { MissRateScreen } from "../../screens/SettingsScreen.js";
import { missRateView } from "../../views/settingsView.js";
import { Frame } from "../places/Frame.js";
import type { YouPageProps } from "./youPage.js";

/** The accepted miss rate, beside what the nose in use has shown. */
export function MissRatePage({ app, editor, onBack }: YouPageProps) {
  const groups = app.noses.current.value?.report.groups ?? [];
  const view = missRateView(editor.shown.value.acceptedMissRate, groups, app.preferences.words.value);
  const choose = (rate: string) => void editor.edit({ acceptedMissRate: Number(rate) });
  return (
    <Frame app={app}>
      <MissRateScreen view={view} onBack={onBack} onRate={choose} />
    </Frame>
  );
}
