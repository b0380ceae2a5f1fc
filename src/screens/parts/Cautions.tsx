import type { ComponentChildren } from "preact";
import type { CautionsView } from "../../views/cautionsView.js";

interface Props {
  readonly view: CautionsView;
  readonly id: string;
  readonly children?: ComponentChildren;
}

/** Cautions, as heavy as a finding. */
export function Cautions({ view, id, children }: Props) {
  const none = view.items.length === 0;
  return (
    <section class={none ? "cautions cautions--quiet" : "cautions"} aria-labelledby={id}>
      <h2 id={id}>{view.title}</h2>
      {none ? (
        <p>{view.empty}</p>
      ) : (
        <ul class="cautions__list">
          {view.items.map((caution) => (
            <li key={caution.id}>
              <span class="cautions__text">{caution.text}</span>
              {caution.because !== null && <span class="small quiet">{caution.because}</span>}
            </li>
          ))}
        </ul>
      )}
      {children}
    </section>
  );
}
