import "../screens/styles/index.css";
import { render } from "preact";
import { answerFirst } from "./answerFirst.js";
import { App } from "./App.js";
import { createAppModel } from "./appModel.js";
import { browserPorts } from "./browserPorts.js";
import { keepFocus } from "./keepFocus.js";
import { keepLook, keptLook } from "./firstLook.js";
import { forgottenIn, reachable } from "./snifferCalls.js";
import { keepFinishedSniffs } from "./meals/keepFinishedSniffs.js";

/** Draws the first screen as it looked last, while the store is being opened, and then reads what is kept. */
export async function startApp(root: HTMLElement): Promise<void> {
  const look = keptLook();
  const app = createAppModel(browserPorts());
  await app.preferences.wear(look);
  answerFirst();
  render(<App app={app} look={look} />, root);
  keepFocus(root);
  keepFinishedSniffs(app);
  await app.open();
  keepLook(() => ({
    theme: app.preferences.preferences.value.theme,
    language: app.preferences.preferences.value.language,
    hasProfile: app.diet.hasProfile.value,
    draftAt: app.drafts.sniff.value?.takenAt ?? null,
    known: reachable(app) ?? [],
    forgotten: forgottenIn(app),
    radioOff: app.reach.radioOff.value ?? look.radioOff,
  }));
}
