import { refreshNeed, type RefreshNeed } from "../../nose/refreshNeed.js";
import type { AppModel } from "../appModel.js";
import { nowIso } from "../ports.js";

/** What there is to bring the nose in use up to date with; null without one. */
export function refreshNeedOf(app: AppModel): RefreshNeed | null {
  const nose = app.noses.current.value;
  if (nose === null) return null;
  const { inControl } = app.jar.verdict.value;
  return refreshNeed(nose, app.samples.samples.value, nowIso(app.ports), inControl ?? undefined);
}
