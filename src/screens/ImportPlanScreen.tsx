import type { ImportPlanView } from "../views/dataView.js";
import { Choices } from "./parts/Choices.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";

interface Props {
  readonly view: ImportPlanView;
  readonly onChoose: (table: string, id: string, choice: string) => void;
}

/** What a backup would do, before anything is done; its actions are `FormActions`. */
export function ImportPlanScreen({ view, onChoose }: Props) {
  return (
    <div class="stack">
      <PageHead title={view.title} text={view.text} />
      <ul class="stack stack--tight numbers">
        {view.counts.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {view.allSame !== null && <Notice>{view.allSame}</Notice>}
      {view.differing.length > 0 && (
        <section class="stack">
          <h2>{view.differTitle}</h2>
          {view.differing.map((difference) => (
            <div key={difference.key} class="card">
              <ul class="small quiet numbers">
                {difference.dates.map((date) => (
                  <li key={date}>{date}</li>
                ))}
              </ul>
              <Choices
                name={`differ-${difference.key}`}
                legend={difference.name}
                options={difference.options}
                onChoose={(choice) => onChoose(difference.table, difference.id, choice)}
              />
            </div>
          ))}
          {view.more !== null && <p>{view.more}</p>}
        </section>
      )}
    </div>
  );
}
