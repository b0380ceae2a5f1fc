import type { NoseReportView, ReportGroupView } from "../views/noseReportView.js";
import { CurveChart } from "./parts/CurveChart.js";
import { Facts } from "./parts/Facts.js";
import { Fold } from "./parts/Fold.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";
import { RateLine } from "./parts/RateLine.js";
import { ReliabilityChart } from "./parts/ReliabilityChart.js";
import { Table } from "./parts/Table.js";

/** Everything that is known of how good a nose is. */
export function NoseReportScreen({
  view,
  onBack,
}: {
  readonly view: NoseReportView;
  readonly onBack: () => void;
}) {
  return (
    <div class="stack stack--wide">
      <PageHead title={view.title} text={view.text} back={{ label: view.back, onBack }} />
      <section class="stack stack--tight">
        <h2>{view.leak.title}</h2>
        <p class="small quiet">{view.leak.text}</p>
        {view.leak.none !== null && <p>{view.leak.none}</p>}
        {view.leak.rows.map((row) => (
          <div key={row.kind} class={row.leaks ? "notice notice--strong" : "notice"} data-leak={row.kind}>
            <strong>{row.text}</strong>
            {row.detail !== "" && <span class="small numbers">{row.detail}</span>}
          </div>
        ))}
        {view.leak.add !== null && (
          <Notice title={view.leak.add.title} strong>
            <p>{view.leak.add.text}</p>
            <ul class="stack stack--tight">
              {view.leak.add.lines.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </Notice>
        )}
      </section>
      <section class="stack stack--tight">
        <h2>{view.learning.title}</h2>
        {view.learning.none !== null && <p>{view.learning.none}</p>}
        {view.learning.curve !== null && <CurveChart view={view.learning.curve} />}
        {view.learning.more !== null && <p>{view.learning.more}</p>}
      </section>
      {view.occasionNone !== null && <p class="quiet">{view.occasionNone}</p>}
      {view.groups.map((group) => (
        <GroupPart key={group.group} group={group} view={view} />
      ))}
      <section class="stack stack--tight">
        <h2>{view.rivals.title}</h2>
        <p class="small quiet">{view.rivals.text}</p>
        <Table
          caption={view.rivals.title}
          captionHidden
          columns={view.rivals.columns}
          rows={view.rivals.rows}
        />
      </section>
      <section class="stack stack--tight">
        <h2>{view.horizons.title}</h2>
        <Facts items={view.horizons.rows} />
      </section>
      {view.leftOut !== null && (
        <section>
          <h2>{view.leftOut.title}</h2>
          <ul>
            {view.leftOut.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

function GroupPart({ group, view }: { readonly group: ReportGroupView; readonly view: NoseReportView }) {
  const { confusion, reliability, risk, coverage, occasion } = group;
  return (
    <section class="card card--report" aria-label={group.name}>
      <h2>{group.name}</h2>
      {confusion === null ? (
        <p>{group.none}</p>
      ) : (
        <>
          <h3>{view.confusionTitle}</h3>
          <Table
            caption={confusion.caption}
            columns={[confusion.truth, ...confusion.columns]}
            rows={confusion.rows}
          />
        </>
      )}
      {group.rates.map((rate) => (
        <RateLine key={rate.label} {...rate} />
      ))}
      {reliability !== null && (
        <>
          <h3>{reliability.title}</h3>
          <ReliabilityChart view={reliability.chart} />
        </>
      )}
      {risk !== null && (
        <>
          <h3>{risk.title}</h3>
          <CurveChart view={risk} />
        </>
      )}
      {occasion !== null && (
        <>
          <h3>{occasion.title}</h3>
          <p class="small quiet">{occasion.text}</p>
          {occasion.rates.map((rate) => (
            <RateLine key={rate.label} {...rate} />
          ))}
          {occasion.loss !== null && <p class="small numbers">{occasion.loss}</p>}
        </>
      )}
      {coverage !== null && (
        <>
          <h3>{coverage.title}</h3>
          <p class="small quiet">{coverage.text}</p>
          {coverage.rates.map((rate) => (
            <RateLine key={rate.label} {...rate} />
          ))}
        </>
      )}
      <Fold title={view.scoresTitle}>
        <Facts items={group.scores} />
        {group.notes.map((note) => (
          <p key={note} class="small numbers">
            {note}
          </p>
        ))}
      </Fold>
    </section>
  );
}
