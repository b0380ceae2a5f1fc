import type { ComparedView } from "../views/comparisonView.js";
import type { OfferView } from "../views/offerView.js";
import { Notice } from "./parts/Notice.js";

/** A nose that awaits the person's word, beside the one in use. */
export function OfferBody({ view }: { readonly view: OfferView }) {
  return (
    <section class="stack" aria-labelledby="proposed-title">
      <h2 id="proposed-title">{view.proposedTitle}</h2>
      {view.suits !== null && <Notice strong>{view.suits}</Notice>}
      <p>{view.proposedText}</p>
      {view.loses.map((line) => (
        <Notice key={line} strong>
          {line}
        </Notice>
      ))}
      {view.summary.length > 0 && (
        <Notice>
          <ul class="stack stack--tight">
            {view.summary.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </Notice>
      )}
      {view.groups.map((group) => (
        <article key={group.group} class="card">
          <h3>{group.name}</h3>
          <p class="small quiet numbers">{group.plates}</p>
          {group.rows.map((row) => (
            <ComparedRow key={row.label} row={row} before={view.before} after={view.after} />
          ))}
        </article>
      ))}
      {view.notes.map((note) => (
        <p key={note} class="small quiet">
          {note}
        </p>
      ))}
      <p class="quiet">{view.kept}</p>
    </section>
  );
}

function ComparedRow({
  row,
  before,
  after,
}: {
  readonly row: ComparedView;
  readonly before: string;
  readonly after: string;
}) {
  return (
    <div class="compared">
      <p>
        <strong>{row.label}</strong>
      </p>
      <div class="compared__pair">
        <div>
          <p class="small quiet">{before}</p>
          <p class="rate__percent numbers">{row.before}</p>
          <p class="small quiet numbers">{row.beforeText}</p>
        </div>
        <div>
          <p class="small quiet">{after}</p>
          <p class="rate__percent numbers">{row.after}</p>
          <p class="small quiet numbers">{row.afterText}</p>
        </div>
      </div>
      <p class="small">{row.change}</p>
    </div>
  );
}
