import type { FitnessView } from "../views/fitnessView.js";
import { Button } from "./parts/Button.js";
import { Empty } from "./parts/Empty.js";
import { Facts } from "./parts/Facts.js";
import { PageHead } from "./parts/PageHead.js";

export interface FitnessCalls {
  readonly onBack: () => void;
  readonly onCheckJar: () => void;
}

/** The sniffer's fitness. */
export function FitnessScreen({ view, calls }: { readonly view: FitnessView; readonly calls: FitnessCalls }) {
  return (
    <div class="stack stack--wide">
      <PageHead title={view.title} back={{ label: view.back, onBack: calls.onBack }} />
      {view.empty !== null && <Empty icon="sniffer" title={view.empty.title} text={view.empty.text} />}
      {view.items.length > 0 && (
        <ul class="fits">
          {view.items.map((item) => (
            <li key={item.id} data-fit={item.fit}>
              <div class="row row--apart">
                <h2>{item.title}</h2>
                <span class="small">{item.word}</span>
              </div>
              <p>{item.sentence}</p>
              {item.remedy !== null && <p>{item.remedy}</p>}
            </li>
          ))}
        </ul>
      )}
      {view.parts.map((part) => (
        <section key={part.title} class="stack stack--tight">
          <h2>{part.title}</h2>
          <Facts items={part.facts} />
        </section>
      ))}
      <JarPart view={view.jar} onSniff={calls.onCheckJar} canSniff={view.empty === null} />
    </div>
  );
}

function JarPart({
  view,
  onSniff,
  canSniff,
}: {
  readonly view: FitnessView["jar"];
  readonly onSniff: () => void;
  readonly canSniff: boolean;
}) {
  return (
    <section class="stack" aria-labelledby="jar-title">
      <h2 id="jar-title">{view.title}</h2>
      <p class="quiet">{view.text}</p>
      <p>
        <strong>{view.word}</strong>
      </p>
      {view.chart !== null && (
        <figure class="chart stack stack--tight">
          <figcaption class="small">{view.chart.caption}</figcaption>
          <svg viewBox="-4 -4 108 108" aria-hidden="true" focusable="false">
            <path class="chart__frame" d="M0 0V100H100" />
            {view.chart.limitY !== null && <path class="chart__ideal" d={`M0 ${view.chart.limitY}H100`} />}
            <polyline class="chart__line" points={view.chart.points} />
          </svg>
        </figure>
      )}
      <ul class="small numbers">
        {view.rows.map((row) => (
          <li key={row}>{row}</li>
        ))}
      </ul>
      {canSniff && <Button onClick={onSniff}>{view.sniff}</Button>}
    </section>
  );
}
