import type { ComponentChildren } from "preact";
import { useEffect } from "preact/hooks";
import { AppFrame } from "../../screens/AppFrame.js";
import { shellView } from "../../views/shellView.js";
import type { AppModel } from "../appModel.js";
import { fetched } from "../fetched.js";
import { isSomethingInHand } from "../inHand.js";
import { isPieceMissing } from "../pieces.js";
import { hashOf } from "../router.js";
import { useHeadingFocus } from "../useHeadingFocus.js";
import { watchInstallOffer } from "../you/installOffer.js";

const FrameNotices = fetched(
  async () => (await import("./FrameNotices.js")).FrameNotices,
  () => null,
);

interface Props {
  readonly app: AppModel;
  readonly children: ComponentChildren;
  readonly actions?: ComponentChildren;
  readonly note?: ComponentChildren;
}

/** The frame around every place, drawn from the app's signals. */
export function Frame({ app, children, actions, note }: Props) {
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
      kept: app.kept.value,
      pieceMissing: isPieceMissing.value,
      toast: toast === null ? null : { text: toast.text, undoable: toast.undo !== null },
    },
    app.preferences.firstWords.value,
  );
  const hasNotices =
    app.ports.storeTrouble.value !== null ||
    app.ports.storeSilent.value ||
    app.lost.shown.value ||
    app.kitchen.faults.value.length > 0;
  return (
    <AppFrame
      view={view}
      actions={actions}
      note={note}
      onUpdate={app.updates.apply}
      onUpdateLater={app.updates.later}
      onUndo={app.toasts.undo}
    >
      {hasNotices && <FrameNotices app={app} />}
      {children}
    </AppFrame>
  );
}
