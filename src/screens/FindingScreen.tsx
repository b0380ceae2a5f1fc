import type { FindingView } from "../views/findingView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { Button } from "./parts/Button.js";
import { Cautions } from "./parts/Cautions.js";
import { FindingCard } from "./parts/FindingCard.js";
import { Notice } from "./parts/Notice.js";

export interface FindingCalls {
  readonly onSave: () => void;
  readonly onKeep: () => void;
  readonly onAgain: () => void;
  readonly onDone: () => void;
}

/** The finding of one plate. The cautions stand beside the first card, never at the far end. */
export function FindingScreen({ view }: { readonly view: FindingView }) {
  const [first, ...others] = view.cards;
  return (
    <div class="stack stack--wide">
      <header class="headline">
        {view.dish !== "" && <p class="quiet">{view.dish}</p>}
        <h1 tabIndex={-1}>{view.headline}</h1>
        <p>{view.advice}</p>
      </header>
      {view.steam !== null && <Notice strong>{view.steam}</Notice>}
      <div class="stack findings--pair">
        {first !== undefined && <FindingCard view={first} />}
        <Cautions view={view.cautions} id="finding-cautions" />
        {others.map((card) => (
          <FindingCard key={card.group} view={card} />
        ))}
      </div>
      {view.reveal !== null && (
        <Notice title={view.reveal.title}>
          <p>{view.reveal.text}</p>
          {view.reveal.lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </Notice>
      )}
      <p class="small quiet">
        {view.sniffed}. {view.limits}
      </p>
    </div>
  );
}

/** What can be done with a finding. */
export function FindingActions({
  labels,
  clearing,
  calls,
}: {
  readonly labels: FindingView["labels"];
  /** Is the sniffer still on its way back, and what that costs said in a bar above? */
  readonly clearing: boolean;
  readonly calls: FindingCalls;
}) {
  return (
    <ActionBar last>
      <Button look="main" big wide onClick={calls.onSave}>
        {labels.save}
      </Button>
      <div class="actions__three">
        <Button look="quiet" onClick={calls.onKeep}>
          {labels.keep}
        </Button>
        <Button look="quiet" {...(clearing ? { describedBy: "again-cost" } : {})} onClick={calls.onAgain}>
          {labels.again}
        </Button>
        <Button look="quiet" onClick={calls.onDone}>
          {labels.done}
        </Button>
      </div>
    </ActionBar>
  );
}
