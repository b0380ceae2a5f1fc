import { ReleaseNote } from "../../screens/parts/ReleaseNote.js";
import { releaseView } from "../../views/releaseView.js";
import type { AppModel } from "../appModel.js";

/** How far the sniffer is on its way back to clean air; drawn by itself, because each sweep may change it. */
export function ReleaseBar({ app }: { readonly app: AppModel }) {
  const view = releaseView(app.release.state.value, app.preferences.firstWords.value);
  return view && <ReleaseNote view={view} />;
}
