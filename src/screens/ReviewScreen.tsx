import type { ComponentChildren } from "preact";
import type { FieldGroupView, ReviewView } from "../views/reviewView.js";
import { Button } from "./parts/Button.js";
import { CountBar } from "./parts/CountBar.js";
import { Empty } from "./parts/Empty.js";
import { MealRow } from "./parts/MealRow.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";
import { RateLine } from "./parts/RateLine.js";
import { ReliabilityChart } from "./parts/ReliabilityChart.js";
import { SplitBar } from "./parts/SplitBar.js";

export interface ReviewCalls {
  readonly onBack: () => void;
  readonly onPrint: () => void;
  readonly onCsv: () => void;
}

interface Props {
  readonly view: ReviewView;
  readonly calls: ReviewCalls;
  readonly hrefOf: (mealId: string) => string;
  /** Which days are looked at. */
  readonly children?: ComponentChildren;
}

/** What months of meals add up to. */
export function ReviewScreen({ view, calls, hrefOf, children }: Props) {
  const head = (
    <div class="stack">
      <PageHead title={view.title} text={view.text} back={{ label: view.back, onBack: calls.onBack }} />
      {children}
    </div>
  );
  if (view.empty !== null) {
    return (
      <div class="stack">
        {head}
        <Empty icon="meals" title={view.empty.title} text={view.empty.text} />
      </div>
    );
  }
  return (
    <div class="stack stack--wide">
      {head}
      <section class="stack" aria-labelledby="field-title">
        <h2 id="field-title">{view.field.title}</h2>
        <p class="quiet small">{view.field.text}</p>
        {view.field.groups.map((group) => (
          <FieldGroup key={group.group} view={group} />
        ))}
      </section>
      <section class="stack stack--tight" aria-labelledby="ask-title">
        <h2 id="ask-title">{view.ask.title}</h2>
        <p class="quiet">{view.ask.text}</p>
        <ul class="day">
          {view.ask.meals.map((meal) => (
            <li key={meal.id}>
              <MealRow view={meal} href={hrefOf(meal.id)} />
            </li>
          ))}
        </ul>
      </section>
      {view.surprises.map((part) => (
        <section key={part.title} class="stack stack--tight">
          <h2>{part.title}</h2>
          {part.none !== null && <p class="quiet">{part.none}</p>}
          {part.items.map((item) => (
            <div key={item.name} class="card">
              <h3>{item.name}</h3>
              <p>{item.text}</p>
              <ul class="small">
                {item.kinds.map((kind) => (
                  <li key={kind}>{kind}</li>
                ))}
              </ul>
            </div>
          ))}
        </section>
      ))}
      <ReactionPart view={view.reaction} />
      <section class="stack stack--tight">
        <h2>{view.out.title}</h2>
        <div class="row">
          <Button onClick={calls.onPrint}>{view.out.print}</Button>
          <Button onClick={calls.onCsv}>{view.out.csv}</Button>
        </div>
      </section>
    </div>
  );
}

function FieldGroup({ view }: { readonly view: FieldGroupView }) {
  return (
    <article class="card">
      <h3>{view.name}</h3>
      {view.said !== null && <SplitBar parts={view.said} />}
      {view.rates.map((rate) => (
        <RateLine key={rate.label} {...rate} />
      ))}
      {view.lines.map((line) => (
        <p key={line} class="small numbers">
          {line}
        </p>
      ))}
      {view.reliability !== null && <ReliabilityChart view={view.reliability} />}
    </article>
  );
}

function ReactionPart({ view }: { readonly view: ReviewView["reaction"] }) {
  return (
    <section class="stack" aria-labelledby="before-reaction">
      <h2 id="before-reaction">{view.title}</h2>
      <p class="numbers">{view.text}</p>
      <p class="small quiet numbers">{view.nothing}</p>
      {view.none !== null && <p>{view.none}</p>}
      {view.hints.map((hint) => (
        <div key={hint.food} class="card numbers">
          <h3>{hint.food}</h3>
          {hint.bars.map((bar) => (
            <CountBar key={bar.label} {...bar} />
          ))}
          {hint.lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      ))}
      <Notice>{view.doctor}</Notice>
    </section>
  );
}
