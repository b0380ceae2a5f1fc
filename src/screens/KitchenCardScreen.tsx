import type { KitchenCardView } from "../views/kitchenCardView.js";
import { Button } from "./parts/Button.js";
import { PageHead } from "./parts/PageHead.js";
import { SelectField } from "./parts/SelectField.js";

export interface KitchenCardCalls {
  readonly onBack: () => void;
  readonly onLanguage: (language: string) => void;
  readonly onPrint: () => void;
}

/** The card for the kitchen, in large type. */
export function KitchenCardScreen({
  view,
  calls,
}: {
  readonly view: KitchenCardView;
  readonly calls: KitchenCardCalls;
}) {
  return (
    <div class="stack">
      <div class="stack no-print">
        <PageHead title={view.heading} back={{ label: view.back, onBack: calls.onBack }} />
        <SelectField
          id="card-language"
          label={view.languages.label}
          options={view.languages.options}
          onChoose={calls.onLanguage}
        />
      </div>
      {view.empty !== null ? (
        <p>{view.empty}</p>
      ) : (
        <article class="kitchen-card" lang={view.lang}>
          <h2>{view.title}</h2>
          <ul>
            {view.lines.map((line) => (
              <li key={line.text} class={line.grave ? "kitchen-card__grave" : undefined}>
                {line.text}
              </li>
            ))}
          </ul>
          <p class="kitchen-card__note">{view.note}</p>
        </article>
      )}
      {view.empty === null && (
        <div class="no-print">
          <Button wide onClick={calls.onPrint}>
            {view.print}
          </Button>
        </div>
      )}
    </div>
  );
}
