import { useMemo } from "preact/hooks";
import { YouHomeActions, YouHomeScreen } from "../../screens/YouHomeScreen.js";
import { youHomeView } from "../../views/youHomeView.js";
import type { AppModel } from "../appModel.js";
import { AboutPage, GlossaryPage, InstallPage } from "../you/AboutPages.js";
import { AllergiesPage } from "../you/AllergiesPage.js";
import { DataPage } from "../you/DataPage.js";
import { DietPage } from "../you/DietPage.js";
import { IntolerancesPage } from "../you/IntolerancesPage.js";
import { KitchenCardPage } from "../you/KitchenCardPage.js";
import { MissRatePage } from "../you/MissRatePage.js";
import { createPreferencesEditor } from "../you/preferencesEditor.js";
import { SettingsPage } from "../you/SettingsPage.js";
import { useTables } from "../you/useTables.js";
import type { YouPageProps } from "../you/youPage.js";
import { Frame } from "./Frame.js";

/** You: what the person avoids, how the app looks and speaks, and the data. */
export function YouPlace({ app }: { readonly app: AppModel }) {
  const editor = useMemo(() => createPreferencesEditor(app.preferences, app.tellStoreError), []);
  const shared: YouPageProps = { app, editor, onBack: () => app.router.go("you") };
  const [page, entry] = app.router.route.value.page;
  switch (page) {
    case "diet":
      return <DietPage {...shared} />;
    case "allergies":
      return <AllergiesPage {...shared} entry={entry} />;
    case "intolerances":
      return <IntolerancesPage {...shared} />;
    case "missRate":
      return <MissRatePage {...shared} />;
    case "settings":
      return <SettingsPage {...shared} />;
    case "card":
      return <KitchenCardPage app={app} place="you" />;
    case "data":
      return <DataPage {...shared} />;
    case "install":
      return <InstallPage {...shared} />;
    case "about":
      return <AboutPage {...shared} />;
    case "glossary":
      return <GlossaryPage {...shared} />;
    default:
      return <YouHome {...shared} />;
  }
}

function YouHome({ app, editor }: YouPageProps) {
  const tables = useTables();
  if (tables === null || !app.diet.ready.value || !app.noses.loaded.value)
    return <Frame app={app}>{null}</Frame>;
  const { profile, acceptedMissRate } = editor.shown.value;
  const words = app.preferences.words.value;
  const view = youHomeView(
    {
      profile,
      allergenNames: profile.allergies.map(({ allergen }) => tables.substanceName(allergen, words)),
      groups: app.groups.value,
      profileLost: app.preferences.profileLost.value,
      acceptedMissRate,
    },
    words,
  );
  // Whoever was sent here by the first run is led back to it.
  const next = app.firstRun.step.value === null ? null : words.text.firstRun.next;
  return (
    <Frame app={app} actions={<YouHomeActions next={next} onNext={() => app.router.go("plate")} />}>
      <YouHomeScreen view={view} onOpen={(page) => app.router.go("you", page)} />
    </Frame>
  );
}
