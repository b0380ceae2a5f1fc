import type { AppModel } from "../appModel.js";
import { Frame } from "./Frame.js";

export function NosePlace({ app }: { readonly app: AppModel }) {
  return <Frame app={app}>{null}</Frame>;
}
