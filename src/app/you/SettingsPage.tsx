import { JURISDICTIONS } from "../../diet/jurisdiction.js";
import { THEMES } from "../../flows/preferences.js";
import { SettingsScreen } from "../../screens/SettingsScreen.js";
import { AUTO_LANGUAGE, settingsView } from "../../views/settingsView.js";
import { buzzesByDefault } from "../attention.js";
import { Frame } from "../places/Frame.js";
import { useTables } from "./useTables.js";
import type { YouPageProps } from "./youPage.js";

/** Legal list, appearance, language. Each change is kept at once. */
export function SettingsPage({ app, editor, onBack }: YouPageProps) {
  const tables = useTables();
  // What stands below the list's source would move when it comes.
  if (tables === null) {
    return (
      <Frame key="reading" app={app}>
        {null}
      </Frame>
    );
  }
  const { theme, language, profile } = editor.shown.value;
  const vibration = editor.shown.value.vibration ?? buzzesByDefault();
  const { jurisdiction } = profile;
  const list = tables.ALLERGEN_LISTS[jurisdiction];
  const view = settingsView({ jurisdiction, list, theme, language, vibration }, app.preferences.words.value);
  const calls = {
    onBack,
    onJurisdiction: (id: string) => {
      const chosen = JURISDICTIONS.find((known) => known === id) ?? jurisdiction;
      void editor.editProfile((now) => ({ ...now, jurisdiction: chosen }));
    },
    onVibration: (on: boolean) => void editor.edit({ vibration: on }),
    onTheme: (id: string) => void editor.edit({ theme: THEMES.find((known) => known === id) ?? theme }),
    onLanguage: (id: string) => void editor.edit({ language: id === AUTO_LANGUAGE ? null : id }),
  };
  return (
    <Frame key="read" app={app}>
      <SettingsScreen view={view} calls={calls} />
    </Frame>
  );
}
