import type { FindingCardView } from "../../views/findingCardView.js";
import { Band } from "./Band.js";
import { Fold } from "./Fold.js";
import { Notice } from "./Notice.js";
import { VerdictMark } from "./VerdictMark.js";

/** The finding for one group. Each word arrives finished. */
export function FindingCard({ view }: { readonly view: FindingCardView }) {
  return (
    <article class={`finding finding--${view.tone}`} aria-label={view.spoken} data-group={view.group}>
      <div class="finding__body">
        <div class="finding__head">
          <VerdictMark tone={view.tone} />
          <div>
            <h2 class="finding__group">{view.name}</h2>
            <p class="finding__verdict" data-tone={view.tone}>
              {view.verdict}
            </p>
            {view.addition !== null && <span class="finding__addition">{view.addition}</span>}
          </div>
        </div>
        {view.allergyNote !== null && <strong>{view.allergyNote}</strong>}
        <div>
          <p class="finding__chance numbers">{view.chance}</p>
          {view.interval !== null && <p class="quiet numbers">{view.interval}</p>}
        </div>
        <Band view={view.band} />
        {view.reasons !== null && <Reasons reasons={view.reasons} />}
        {view.belief !== null && (
          <Notice title={view.belief.title}>
            <p>{view.belief.text}</p>
            <p class="small">{view.belief.ratio}</p>
          </Notice>
        )}
        {view.basis !== null && (
          <Fold title={view.basis.title}>
            <ul class="stack stack--tight small numbers">
              {view.basis.lines.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
            <a href={view.basis.glossary.href}>{view.basis.glossary.label}</a>
          </Fold>
        )}
      </div>
    </article>
  );
}

function Reasons({ reasons }: { readonly reasons: NonNullable<FindingCardView["reasons"]> }) {
  return (
    <div class="stack stack--tight">
      <h3>{reasons.title}</h3>
      <ul class="reasons">
        {reasons.items.map((reason) => (
          <li key={reason.kind} data-reason={reason.kind}>
            <p>{reason.sentence}</p>
            <p class="reasons__remedy">{reason.remedy}</p>
          </li>
        ))}
      </ul>
    </div>
  );
}
