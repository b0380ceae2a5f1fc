import { useEffect } from "preact/hooks";
import { Button } from "../../screens/parts/Button.js";
import { Notice } from "../../screens/parts/Notice.js";
import { FaultsOn } from "../../screens/PracticeScreen.js";
import type { StoreError } from "../../store/storeError.js";
import { faultsOnView } from "../../views/practiceView.js";
import type { AppModel } from "../appModel.js";
import { allFaultsOff, endWithRealSniffer } from "../nose/practiceFaults.js";

interface Props {
  readonly app: AppModel;
}

/** What stands above every page: trouble with the store, lost data, faults that are on for practice. */
export function FrameNotices({ app }: Props) {
  const trouble = app.ports.storeTrouble.value;
  return (
    <div class="stack frame-notices">
      {app.ports.storeSilent.value && (
        <Notice strong live>
          {app.preferences.firstWords.value.text.trouble.silent}
        </Notice>
      )}
      {trouble !== null && <Notice strong>{memoryOnly(app, trouble)}</Notice>}
      {app.lost.shown.value && !app.checkRunning.value && <LostData app={app} />}
      <Faults app={app} />
    </div>
  );
}

function Faults({ app }: Props) {
  useEffect(() => endWithRealSniffer(app), []);
  const chosen = app.kitchen.faults.value;
  if (chosen.length === 0) return null;
  const view = faultsOnView(chosen, app.checkRunning.value, app.preferences.words.value);
  return view && <FaultsOn view={view} onAllOff={() => allFaultsOff(app)} />;
}

/** Said in every place: what is entered here is gone with the page. */
function memoryOnly(app: AppModel, { kind }: StoreError): string {
  const { trouble } = app.preferences.firstWords.value.text;
  return trouble.memoryOnly(trouble.kinds[kind]);
}

/** What was here is gone, and the way to bring it back. */
function LostData({ app }: Props) {
  const { lost } = app.preferences.firstWords.value.text.trouble;
  return (
    <Notice title={lost.title} strong live>
      <p>{lost.text}</p>
      <div class="row">
        <Button onClick={() => app.router.go("you", "data")}>{lost.bringIn}</Button>
        <Button look="quiet" onClick={app.lost.settle}>
          {lost.later}
        </Button>
      </div>
    </Notice>
  );
}
