import type { ComponentChildren } from "preact";
import { AppFrame } from "../../screens/AppFrame.js";
import { shellView } from "../../views/shellView.js";
import type { AppModel } from "../appModel.js";
import { hashOf } from "../router.js";

interface Props {
  readonly app: AppModel;
  readonly children: ComponentChildren;
  readonly actions?: ComponentChildren;
}

/** The frame around every place, drawn from the app's signals. */
export function Frame({ app, children, actions }: Props) {
  const toast = app.toasts.toast.value;
  const view = shellView(
    {
      place: app.router.route.value.place,
      hrefOf: (place) => hashOf(place),
      checkRunning: app.checkRunning.value,
      updateWaiting: app.updates.waiting.value,
      online: app.online.value,
      toast: toast === null ? null : { text: toast.text, undoable: toast.undo !== null },
      announcement: announcementOf(app),
    },
    app.preferences.words.value,
  );
  return (
    <AppFrame
      view={view}
      actions={actions}
      onUpdate={app.updates.apply}
      onUpdateLater={app.updates.later}
      onUndo={app.toasts.undo}
    >
      {children}
    </AppFrame>
  );
}

/** Each phase is said once to a screen reader; outside a check nothing is. */
function announcementOf(app: AppModel): string {
  const { phase } = app.check.state.value;
  return phase === "idle" ? "" : app.preferences.words.value.text.check.announce[phase];
}
