import type { AppModel } from "../appModel.js";
import type { PreferencesEditor } from "./preferencesEditor.js";

/** What every page of You is given. */
export interface YouPageProps {
  readonly app: AppModel;
  readonly editor: PreferencesEditor;
  /** To the start of You. */
  readonly onBack: () => void;
}
