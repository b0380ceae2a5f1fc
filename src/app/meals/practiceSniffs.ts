import { ok, type Result } from "../../kernel/result.js";
import type { Store } from "../../store/store.js";
import type { StoreError } from "../../store/storeError.js";
import type { PageCursor } from "../../store/storeTypes.js";

/** Read at once without a tap having to wait. */
const PAGE = 100;

/** Ids of the sniffs that came from the practice kitchen or the demo data. */
export async function practiceSniffs(
  store: Pick<Store, "listSniffs">,
): Promise<Result<ReadonlySet<string>, StoreError>> {
  const ids = new Set<string>();
  let after: PageCursor | undefined;
  for (;;) {
    const page = await store.listSniffs({ limit: PAGE, ...(after === undefined ? {} : { after }) });
    if (!page.ok) return page;
    page.value.items.filter(({ demo }) => demo).forEach(({ sniffId }) => ids.add(sniffId));
    if (page.value.next === null) return ok(ids);
    after = page.value.next;
  }
}
