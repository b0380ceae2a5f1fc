import type { AppModel } from "./appModel.js";

type Parts = Pick<AppModel, "check" | "plate" | "noses" | "router">;

/**
 * Would something be lost if the page were loaded anew? A check or its finding, what was said of the plate, a nose that
 * is being taught or awaits a word, or a page of a place, which may be a form. No newer app is offered meanwhile.
 */
export function isSomethingInHand({ check, plate, noses, router }: Parts): boolean {
  return (
    check.state.value.phase !== "idle" ||
    plate.dish.value !== "" ||
    plate.claims.value.length > 0 ||
    Object.keys(plate.beliefs.value).length > 0 ||
    noses.teaching.value.kind !== "idle" ||
    router.route.value.page.length > 0
  );
}
