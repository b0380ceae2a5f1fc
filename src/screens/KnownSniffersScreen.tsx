import type { KnownSniffersView } from "../views/knownSniffersView.js";
import type { SnifferAction } from "../views/snifferView.js";
import { Button } from "./parts/Button.js";
import { PageHead } from "./parts/PageHead.js";
import { SnifferStrip } from "./parts/SnifferStrip.js";

export interface KnownSniffersCalls {
  readonly onBack: () => void;
  readonly onSniffer: (action: SnifferAction, value?: string) => void;
  readonly onForget: (key: string) => void;
}

/** Sniffers met before: connect without the chooser, or forget. */
export function KnownSniffersScreen({
  view,
  calls,
}: {
  readonly view: KnownSniffersView;
  readonly calls: KnownSniffersCalls;
}) {
  return (
    <div class="stack stack--wide">
      <PageHead title={view.title} back={{ label: view.back, onBack: calls.onBack }} />
      <SnifferStrip view={view.sniffer} onAction={calls.onSniffer} />
      <section class="stack stack--tight" aria-labelledby="known-title">
        <h2 id="known-title">{view.listTitle}</h2>
        {view.empty !== null && <p class="quiet">{view.empty}</p>}
        <ul class="known">
          {view.items.map((item) => {
            const { connect } = item;
            return (
              <li key={item.key}>
                <div>
                  <strong>{item.name}</strong>
                  <p class="small quiet">{item.seen}</p>
                </div>
                <div class="row">
                  {connect !== null && (
                    <Button
                      onClick={() =>
                        calls.onSniffer(connect.deviceId === null ? "pair" : "known", connect.deviceId ?? "")
                      }
                    >
                      {connect.label}
                    </Button>
                  )}
                  <Button look="quiet" label={item.forgetLabel} onClick={() => calls.onForget(item.key)}>
                    {item.forget}
                  </Button>
                </div>
              </li>
            );
          })}
        </ul>
        {view.items.length > 0 && <p class="small quiet">{view.note}</p>}
      </section>
    </div>
  );
}
