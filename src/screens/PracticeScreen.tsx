import type { FaultsOnView, PracticeView } from "../views/practiceView.js";
import type { SnifferAction } from "../views/snifferView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { Button } from "./parts/Button.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";
import { SnifferStrip } from "./parts/SnifferStrip.js";
import { Switch } from "./parts/Switch.js";

export interface PracticeCalls {
  readonly onBack: () => void;
  readonly onSniffer: (action: SnifferAction, value?: string) => void;
  readonly onFault: (id: string, on: boolean) => void;
}

/** What can go wrong with the virtual sniffer, one switch each. */
export function PracticeScreen({
  view,
  calls,
}: {
  readonly view: PracticeView;
  readonly calls: PracticeCalls;
}) {
  return (
    <div class="stack stack--wide">
      <PageHead title={view.title} text={view.text} back={{ label: view.back, onBack: calls.onBack }} />
      <SnifferStrip view={view.sniffer} onAction={calls.onSniffer} />
      {view.real !== null && <Notice strong>{view.real}</Notice>}
      {view.faults.length > 0 && (
        <section class="stack" aria-labelledby="faults-title">
          <h2 id="faults-title">{view.faultsTitle}</h2>
          {view.faults.map(({ id, label, hint, on }) => (
            <Switch
              key={id}
              id={`fault-${id}`}
              label={label}
              hint={hint}
              on={on}
              onChange={(next) => calls.onFault(id, next)}
            />
          ))}
        </section>
      )}
    </div>
  );
}

/** On to a check. */
export function PracticeActions({
  label,
  onPlate,
}: {
  readonly label: string;
  readonly onPlate: () => void;
}) {
  return (
    <ActionBar>
      <Button look="main" big wide onClick={onPlate}>
        {label}
      </Button>
    </ActionBar>
  );
}

/** Above every page while faults are on. */
export function FaultsOn({ view, onAllOff }: { readonly view: FaultsOnView; readonly onAllOff: () => void }) {
  return (
    <Notice title={view.title} live>
      <p class="small">{view.text}</p>
      {view.allOff !== null && (
        <div class="row">
          <Button look="quiet" onClick={onAllOff}>
            {view.allOff}
          </Button>
        </div>
      )}
    </Notice>
  );
}
