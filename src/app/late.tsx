import type { ComponentType } from "preact";
import type { AppModel } from "./appModel.js";
import { fetched } from "./fetched.js";
import { Frame } from "./places/Frame.js";

/** A page in a piece of its own, fetched when it is first opened. The frame stands meanwhile. */
export const late = <P extends { readonly app: AppModel }>(load: () => Promise<ComponentType<P>>) =>
  fetched(load, ({ app }) => <Frame app={app}>{null}</Frame>);
