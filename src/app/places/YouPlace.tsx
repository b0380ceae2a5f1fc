import type { AppModel } from "../appModel.js";
import { Frame } from "./Frame.js";

export function YouPlace({ app }: { readonly app: AppModel }) {
  return <Frame app={app}>{null}</Frame>;
}
