import type { SuggestionsView } from "../../views/suggestionsView.js";

interface Props {
  readonly view: SuggestionsView;
  readonly hrefOf: (mealId: string) => string;
}

/** What would help the nose most, each with its reason. */
export function Suggestions({ view, hrefOf }: Props) {
  return (
    <section class="stack stack--tight" aria-labelledby="suggestions-title">
      <h2 id="suggestions-title">{view.title}</h2>
      {view.note !== null && <p class="small quiet">{view.note}</p>}
      <ul class="suggested">
        {view.items.map(({ id, text, reason, mealId }) => (
          <li key={id}>
            {mealId === null ? <span>{text}</span> : <a href={hrefOf(mealId)}>{text}</a>}
            <span class="small quiet">{reason}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
