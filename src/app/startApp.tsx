import "../screens/styles/index.css";
import { render } from "preact";
import { App } from "./App.js";
import { createAppModel } from "./appModel.js";
import { browserPorts } from "./browserPorts.js";
import { keepFinishedSniffs } from "./meals/keepFinishedSniffs.js";

/** Opens the store, puts the app together and draws it. */
export async function startApp(root: HTMLElement): Promise<void> {
  const app = createAppModel(await browserPorts());
  await app.preferences.load();
  keepFinishedSniffs(app);
  render(<App app={app} />, root);
  await Promise.all([app.diet.load(), app.noses.load(), app.drafts.load()]);
}
