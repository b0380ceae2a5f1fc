import type { BrokenView } from "../views/brokenView.js";
import { Fold } from "./parts/Fold.js";

/** What stands in for a screen that broke. */
export function ErrorScreen({ view }: { readonly view: BrokenView }) {
  return (
    <section class="stack" role="alert">
      <h1 tabIndex={-1}>{view.title}</h1>
      <p>{view.text}</p>
      <a class="button button--main" href={view.href}>
        {view.startPage}
      </a>
      <Fold title={view.detailsTitle}>
        <pre class="details-text">{view.details}</pre>
      </Fold>
    </section>
  );
}
