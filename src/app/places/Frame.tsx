import type { ComponentChildren } from "preact";
import { useEffect } from "preact/hooks";
import { AppFrame } from "../../screens/AppFrame.js";
import { Button } from "../../screens/parts/Button.js";
import { Notice } from "../../screens/parts/Notice.js";
import type { StoreError } from "../../store/storeError.js";
import { shellView } from "../../views/shellView.js";
import type { AppModel } from "../appModel.js";
import { isSomethingInHand } from "../inHand.js";
import { hashOf } from "../router.js";
import { useHeadingFocus } from "../useHeadingFocus.js";
import { watchInstallOffer } from "../you/installOffer.js";

interface Props {
  readonly app: AppModel;
  readonly children: ComponentChildren;
  readonly actions?: ComponentChildren;
}

/** The frame around every place, drawn from the app's signals. */
export function Frame({ app, children, actions }: Props) {
  useEffect(watchInstallOffer, []);
  useHeadingFocus([location.hash, app.check.state.value.phase, app.firstRun.step.value].join(" "));
  const toast = app.toasts.toast.value;
  const view = shellView(
    {
      place: app.router.route.value.place,
      hrefOf: (place) => hashOf(place),
      checkRunning: app.checkRunning.value,
      updateWaiting: app.updates.waiting.value && !isSomethingInHand(app),
      online: app.online.value,
      toast: toast === null ? null : { text: toast.text, undoable: toast.undo !== null },
    },
    app.preferences.firstWords.value,
  );
  const trouble = app.ports.storeTrouble.value;
  const isLost = app.lost.shown.value && !app.checkRunning.value;
  return (
    <AppFrame
      view={view}
      actions={actions}
      onUpdate={app.updates.apply}
      onUpdateLater={app.updates.later}
      onUndo={app.toasts.undo}
    >
      {trouble === null && !isLost ? (
        children
      ) : (
        <div class="stack">
          {trouble !== null && <Notice strong>{memoryOnly(app, trouble)}</Notice>}
          {isLost && <LostData app={app} />}
          {children}
        </div>
      )}
    </AppFrame>
  );
}

/** Said in every place: what is entered here is gone with the page. */
function memoryOnly(app: AppModel, { kind }: StoreError): string {
  const { trouble } = app.preferences.firstWords.value.text;
  return trouble.memoryOnly(trouble.kinds[kind]);
}

/** What was here is gone, and the way to bring it back. */
function LostData({ app }: { readonly app: AppModel }) {
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
