import type { TransferView } from "../views/transferView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { Button } from "./parts/Button.js";
import { Facts } from "./parts/Facts.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";
import { Progress } from "./parts/Progress.js";

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
      {view.progress !== null && <Progress label={view.outcome.lines.join(" ")} {...view.progress} />}
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
        {view.pairs.jar !== null && <p>{view.pairs.jar}</p>}
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

export interface TransferCalls {
  readonly onAccept: () => void;
  readonly onStop: () => void;
  readonly onAgain: () => void;
}

/** What can be tapped: stop while it is worked out, a nose once the gain was shown. */
export function TransferActions({
  view,
  calls,
}: {
  readonly view: TransferView;
  readonly calls: TransferCalls;
}) {
  const { accept, stop, again } = view;
  if (accept === null && stop === null && again === null) return null;
  return (
    <ActionBar>
      {accept !== null && (
        <Button look="main" big wide onClick={calls.onAccept}>
          {accept}
        </Button>
      )}
      {stop !== null && (
        <Button big wide onClick={calls.onStop}>
          {stop}
        </Button>
      )}
      {again !== null && (
        <Button big wide onClick={calls.onAgain}>
          {again}
        </Button>
      )}
    </ActionBar>
  );
}
