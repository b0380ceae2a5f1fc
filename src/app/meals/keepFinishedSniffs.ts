/** Keeps the sniff of each check when its finding appears: raw sweeps are never lost to a finding nobody saved. */
import { effect, untracked } from "@preact/signals";
import type { Sniff } from "../../sniff/sniff.js";
import type { AppModel } from "../appModel.js";
import { isPractice } from "../practice.js";

type KeepingParts = Pick<AppModel, "check" | "purpose" | "ports" | "tellStoreError">;

/** Follows the checks of plates until the answer is called. A sniff that the phone cannot keep is told at once. */
export function keepFinishedSniffs(app: KeepingParts): () => void {
  let lastId: string | null = null;
  return effect(() => {
    const state = app.check.state.value;
    if (state.phase !== "done" || state.sniff.id === lastId) return;
    lastId = state.sniff.id;
    const { sniff } = state;
    untracked(() => {
      if (app.purpose.value === "plate") void keepSniff(app, sniff);
    });
  });
}

async function keepSniff({ ports, tellStoreError }: KeepingParts, sniff: Sniff): Promise<void> {
  const kept = await ports.store.save({ sniffs: [sniff], demo: isPractice(sniff) });
  if (!kept.ok) tellStoreError(kept.error);
}
