import type { MealDetailView } from "../views/mealDetailView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { Button } from "./parts/Button.js";
import { Cautions } from "./parts/Cautions.js";
import { Facts } from "./parts/Facts.js";
import { FindingCard } from "./parts/FindingCard.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";
import { Suggestions } from "./parts/Suggestions.js";

export interface MealDetailCalls {
  readonly onBack: () => void;
  readonly onTruth: () => void;
  readonly onReaction: () => void;
  readonly onKeepSample: () => void;
  readonly onEdit: () => void;
  readonly onDelete: () => void;
}

interface Props {
  readonly view: MealDetailView;
  readonly calls: MealDetailCalls;
  readonly photoUrlOf: (photoId: string) => string | undefined;
  readonly hrefOf: (mealId: string) => string;
}

/** One meal. */
export function MealDetailScreen({ view, calls, photoUrlOf, hrefOf }: Props) {
  return (
    <div class="stack stack--wide">
      <div class="stack meal-head">
        <PageHead title={view.title} back={{ label: view.back, onBack: calls.onBack }} />
        {view.demo !== null && <span class="mark-demo">{view.demo}</span>}
        {view.photos.map((photo) => (
          <img key={photo.id} class="photo" src={photoUrlOf(photo.id)} alt={photo.label} />
        ))}
        <Facts items={view.facts} />
        {view.claims !== null && (
          <div>
            <h2>{view.claims.label}</h2>
            <ul>
              {view.claims.items.map((claim) => (
                <li key={claim}>{claim}</li>
              ))}
            </ul>
          </div>
        )}
        {view.note !== null && (
          <div>
            <h2>{view.note.label}</h2>
            <p class="own-words">{view.note.text}</p>
          </div>
        )}
      </div>
      <Told part={view.truth} onTap={calls.onTruth} />
      {view.sample !== null && (
        <Notice>
          {view.sample.reason !== null && <p>{view.sample.reason}</p>}
          <p>{view.sample.text}</p>
          {view.sample.action !== null && (
            <div class="row">
              <Button onClick={calls.onKeepSample}>{view.sample.action}</Button>
            </div>
          )}
        </Notice>
      )}
      {view.suggestions !== null && <Suggestions view={view.suggestions} hrefOf={hrefOf} />}
      <section class="stack" aria-labelledby="finding-title">
        <h2 id="finding-title">{view.finding.title}</h2>
        {view.finding.cards.map((card) => (
          <FindingCard key={card.group} view={card} />
        ))}
        <p class="small quiet">{view.finding.note}</p>
      </section>
      <Cautions view={view.cautions} id="meal-cautions" />
      <Told part={view.reaction} onTap={calls.onReaction} />
    </div>
  );
}

function Told({ part, onTap }: { readonly part: MealDetailView["truth"]; readonly onTap: () => void }) {
  return (
    <section class="card">
      <h2>{part.title}</h2>
      {part.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <div class="row">
        <Button onClick={onTap}>{part.action}</Button>
      </div>
    </section>
  );
}

/** Edit and delete, in reach of the thumb. */
export function MealDetailActions({
  view,
  calls,
}: {
  readonly view: MealDetailView;
  readonly calls: MealDetailCalls;
}) {
  return (
    <ActionBar>
      <div class="actions__pair">
        <Button onClick={calls.onEdit}>{view.labels.edit}</Button>
        <Button look="quiet" onClick={calls.onDelete}>
          {view.labels.remove}
        </Button>
      </div>
    </ActionBar>
  );
}
