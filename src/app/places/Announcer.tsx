import type { AppModel } from "../appModel.js";
import { fetched } from "../fetched.js";

const CheckAnnouncement = fetched(
  async () => (await import("./CheckPages.js")).CheckAnnouncement,
  () => null,
);

/**
 * Says the phases, the count-down and the finding of a check once each to a screen reader; outside a check nothing is
 * said. It stands beside the pages and outlives them: a live region that comes with its words in it is not read, or read
 * again with each page.
 */
export function Announcer({ app }: { readonly app: AppModel }) {
  return (
    <p class="unseen" role="status">
      {app.check.state.value.phase !== "idle" && <CheckAnnouncement app={app} />}
    </p>
  );
}
