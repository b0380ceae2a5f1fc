import type { TransferView } from "../views/transferView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { Button } from "./parts/Button.js";
import { Facts } from "./parts/Facts.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";

interface Props {
  readonly view: TransferView;
  readonly onBack: () => void;
}

/** A nose moved to another sniffer: what pairs there are, what is missing, what it brings. */
export function TransferScreen({ view, onBack }: Props) {
  return (
    <div class="stack stack--wide">
      <PageHead title={view.title} back={{ label: view.back, onBack }} />
      <p>{view.text}</p>
      <Facts items={view.facts} />
      <Notice
        {...(view.outcome.title === null ? {} : { title: view.outcome.title })}
        strong={!view.outcome.good}
        live
      >
        {view.outcome.lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </Notice>
      <section class="stack stack--tight" aria-labelledby="how-title">
        <h2 id="how-title">{view.how.title}</h2>
        <ol class="stack stack--tight">
          {view.how.steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      </section>
      <section class="stack stack--tight" aria-labelledby="pairs-title">
        <h2 id="pairs-title">{view.pairs.title}</h2>
        <p class="numbers">{view.pairs.count}</p>
        {view.pairs.none !== null && <p class="quiet">{view.pairs.none}</p>}
        <ul class="known">
          {view.pairs.rows.map((row) => (
            <li key={row.key}>
              <div>
                <strong>{row.dish}</strong>
                <p class="small quiet">{row.on}</p>
              </div>
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
}

/** What is tapped once the gain was shown; nothing before. */
export function TransferActions({
  view,
  onAccept,
}: {
  readonly view: TransferView;
  readonly onAccept: () => void;
}) {
  if (view.accept === null) return null;
  return (
    <ActionBar>
      <Button look="main" big wide onClick={onAccept}>
        {view.accept}
      </Button>
    </ActionBar>
  );
}
