import type { Words } from "../text/catalogue.js";

/** Something that has to be read first. */
export type Load<T> =
  | { readonly kind: "loading" }
  | { readonly kind: "ready"; readonly value: T }
  | { readonly kind: "unavailable"; readonly why: string }
  | { readonly kind: "failed"; readonly why: string };

/** What is shown instead of what is not there. */
export type LoadView =
  | { readonly kind: "loading"; readonly text: string }
  | { readonly kind: "failed"; readonly title: string; readonly text: string; readonly retry: string | null };

/** Words for all but `ready`; trying again makes sense only for what failed. */
export function loadView(
  load: Exclude<Load<unknown>, { kind: "ready" }>,
  { text }: Words<"common">,
): LoadView {
  const { common } = text;
  if (load.kind === "loading") return { kind: "loading", text: common.loading };
  return {
    kind: "failed",
    title: common.failedTitle,
    text: load.why,
    retry: load.kind === "failed" ? common.tryAgain : null,
  };
}
