import { ok, type Result } from "../kernel/result.js";
import type { Store } from "../store/store.js";
import type { StoreError } from "../store/storeError.js";
import type { SniffNote, SniffQuery } from "../store/storeTypes.js";

/** Read at once without a tap having to wait. */
const PAGE = 100;

/** What is noted of all kept sniffs, or of the samples alone: newest first, read page by page. */
export async function sniffNotes(
  store: Pick<Store, "listSniffs">,
  which: Pick<SniffQuery, "samplesOnly"> = {},
): Promise<Result<SniffNote[], StoreError>> {
  const notes: SniffNote[] = [];
  let page = await store.listSniffs({ ...which, limit: PAGE });
  while (page.ok) {
    notes.push(...page.value.items);
    if (page.value.next === null) return ok(notes);
    page = await store.listSniffs({ ...which, limit: PAGE, after: page.value.next });
  }
  return page;
}
