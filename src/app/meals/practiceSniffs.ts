import { ok, type Result } from "../../kernel/result.js";
import type { Store } from "../../store/store.js";
import type { StoreError } from "../../store/storeError.js";
import { sniffNotes } from "../sniffNotes.js";

/** Ids of the sniffs that came from the practice kitchen or the demo data. */
export async function practiceSniffs(
  store: Pick<Store, "listSniffs">,
): Promise<Result<ReadonlySet<string>, StoreError>> {
  const notes = await sniffNotes(store);
  return notes.ok ? ok(new Set(notes.value.filter(({ demo }) => demo).map(({ sniffId }) => sniffId))) : notes;
}
