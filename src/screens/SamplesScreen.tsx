import type { SampleCountView, SampleRowView, SamplesView } from "../views/samplesView.js";
import { Button } from "./parts/Button.js";
import { CountBar } from "./parts/CountBar.js";
import { Empty } from "./parts/Empty.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";
import { ShowMore } from "./parts/ShowMore.js";
import { Suggestions } from "./parts/Suggestions.js";

export interface SamplesCalls {
  readonly onBack: () => void;
  readonly onRemove: (sniffId: string) => void;
  readonly onDropDemo: () => void;
  readonly onBringInDemo: () => void;
  readonly onMore: () => void;
}

interface Props {
  readonly view: SamplesView;
  readonly calls: SamplesCalls;
  readonly hrefOf: (mealId: string) => string;
}

/** The samples, how many of which there are, and how many more it takes. */
export function SamplesScreen({ view, calls, hrefOf }: Props) {
  return (
    <div class="stack stack--wide">
      <PageHead title={view.title} text={view.text} back={{ label: view.back, onBack: calls.onBack }} />
      <section class="stack" aria-labelledby="counts-title">
        <h2 id="counts-title">{view.countsTitle}</h2>
        <p class="small quiet">{view.neededText}</p>
        {view.counts.map((count) => (
          <CountPart key={count.group} count={count} view={view} />
        ))}
      </section>
      {view.suggestions !== null && <Suggestions view={view.suggestions} hrefOf={hrefOf} />}
      <Notice title={view.plan.title}>
        <p>{view.plan.text}</p>
      </Notice>
      {view.empty !== null && <Empty icon="jar" title={view.empty.title} text={view.empty.text} />}
      {view.rows.length > 0 && (
        <section class="day" aria-labelledby="samples-title">
          <h2 id="samples-title">{view.listTitle}</h2>
          <ul>
            {view.rows.map((row) => (
              <SampleRow key={row.id} row={row} remove={view.remove} onRemove={calls.onRemove} />
            ))}
          </ul>
        </section>
      )}
      {view.more !== null && <ShowMore label={view.more} onMore={calls.onMore} />}
      {view.dropDemo !== null && <Button onClick={calls.onDropDemo}>{view.dropDemo}</Button>}
      {view.bringInDemo !== null && <Button onClick={calls.onBringInDemo}>{view.bringInDemo}</Button>}
    </div>
  );
}

function CountPart({ count, view }: { readonly count: SampleCountView; readonly view: SamplesView }) {
  return (
    <div class="count">
      <div class="row row--apart">
        <h3>{count.name}</h3>
        <span class="small numbers">{count.needed}</span>
      </div>
      <CountBar label={view.presentLabel} value={count.present} share={count.presentShare} />
      <CountBar label={view.absentLabel} value={count.absent} share={count.absentShare} open />
    </div>
  );
}

function SampleRow({
  row,
  remove,
  onRemove,
}: {
  readonly row: SampleRowView;
  readonly remove: string;
  readonly onRemove: (id: string) => void;
}) {
  return (
    <li class="sample-row">
      <div>
        <p class="meal-row__dish">
          {row.dish} {row.demo !== null && <span class="mark-demo">{row.demo}</span>}
        </p>
        <p class="small quiet numbers">{row.when}</p>
        <p class="small">{row.groups}</p>
      </div>
      <Button look="quiet" label={row.removeLabel} onClick={() => onRemove(row.id)}>
        {remove}
      </Button>
    </li>
  );
}
