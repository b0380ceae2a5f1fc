import type { AppModel } from "../appModel.js";

/**
 * Says each phase of a check once to a screen reader; outside a check nothing is said. It stands beside the pages and
 * outlives them: a live region that comes with its words in it is not read, or read again with each page.
 */
export function Announcer({ app }: { readonly app: AppModel }) {
  const { phase } = app.check.state.value;
  return (
    <p class="unseen" role="status">
      {phase === "idle" ? "" : app.preferences.words.value.text.check.announce[phase]}
    </p>
  );
}
