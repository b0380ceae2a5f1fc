import { PracticeActions, PracticeScreen } from "../../screens/PracticeScreen.js";
import { practiceView } from "../../views/practiceView.js";
import type { AppModel } from "../appModel.js";
import { Frame } from "../places/Frame.js";
import { snifferCalls, snifferContext } from "../snifferCalls.js";
import { chooseFault } from "./practiceFaults.js";

/** Faults of the virtual sniffer, for practice. */
export function PracticePage({ app }: { readonly app: AppModel }) {
  const view = practiceView(
    { ...snifferContext(app), sniffer: app.sniffers.state.value, chosen: app.kitchen.faults.value },
    app.preferences.words.value,
  );
  return (
    <Frame
      app={app}
      actions={<PracticeActions label={view.toPlate} onPlate={() => app.router.go("plate")} />}
    >
      <PracticeScreen
        view={view}
        calls={{
          onBack: () => app.router.go("nose"),
          onSniffer: snifferCalls(app),
          onFault: (id, on) => chooseFault(app, id, on),
        }}
      />
    </Frame>
  );
}
