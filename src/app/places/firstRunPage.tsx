import { FirstRunActions, FirstRunScreen } from "../../screens/FirstRunScreen.js";
import { firstRunView, type FirstRunAction, type FirstRunStep } from "../../views/firstRunView.js";
import type { AppModel } from "../appModel.js";
import { plateHomeCalls } from "../plateHomeCalls.js";
import { Frame } from "./Frame.js";

/**
 * What Nidor is, what it cannot do, who you are, and a first try. It can be left at each step. A call and no component:
 * so the frame stays when Plate follows.
 */
export function firstRunPage(app: AppModel, step: FirstRunStep) {
  const { firstRun } = app;
  const view = firstRunView(step, app.ports.bluetooth !== undefined, app.preferences.firstWords.value);
  const { onSniffer } = plateHomeCalls(app);
  const calls: Readonly<Record<FirstRunAction, () => void>> = {
    next: firstRun.next,
    skip: firstRun.finish,
    enterProfile: () => {
      // Coming back to Plate goes on with the last step.
      firstRun.next();
      app.router.go("you");
    },
    virtual: () => {
      firstRun.finish();
      onSniffer("useVirtual");
    },
    pair: () => {
      firstRun.finish();
      onSniffer("pair");
    },
  };
  return (
    <Frame app={app} actions={<FirstRunActions view={view} onAction={(action) => calls[action]()} />}>
      <FirstRunScreen view={view} />
    </Frame>
  );
}
