import { KitchenCardScreen } from "../../screens/KitchenCardScreen.js";
import type { AppModel } from "../appModel.js";
import { printPage } from "../meals/printPage.js";
import { Frame } from "../places/Frame.js";
import { useTables } from "./useTables.js";

interface Props {
  readonly app: AppModel;
  /** Where it was opened, and where its way back leads. */
  readonly place: "plate" | "you";
}

/** The card for the kitchen. Its address names the kitchen's language: `#/plate/card/fr`. */
export function KitchenCardPage({ app, place }: Props) {
  const tables = useTables();
  if (tables === null) return <Frame app={app}>{null}</Frame>;
  const wanted = app.router.route.value.page[1] ?? app.preferences.language.value;
  const language = tables.CARD_LANGUAGES.find((known) => known === wanted) ?? "en";
  const { profile } = app.preferences.preferences.value;
  const view = tables.kitchenCardView(profile, language, app.preferences.words.value);
  const calls = {
    onBack: () => app.router.go(place),
    onLanguage: (chosen: string) => app.router.replace(place, "card", chosen),
    onPrint: () => {
      const restore = printPage(() => restore());
    },
  };
  return (
    <Frame app={app}>
      <KitchenCardScreen view={view} calls={calls} />
    </Frame>
  );
}
