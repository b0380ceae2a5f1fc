import type { ComponentChildren } from "preact";
import type { Words } from "../../../src/text/catalogue.js";
import type { PlaceId } from "../../../src/views/shellView.js";

/** One screen in one state, as the gallery shows it. */
export interface Shown {
  /** null: a check runs, and the places are hidden. */
  readonly place: PlaceId | null;
  readonly body: ComponentChildren;
  readonly actions?: ComponentChildren;
  /** A bar over the actions. */
  readonly note?: ComponentChildren;
}
export type Page = (words: Words) => Shown;
