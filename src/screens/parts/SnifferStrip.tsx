import type { SnifferAction, SnifferView } from "../../views/snifferView.js";
import { Button } from "./Button.js";
import { Notice } from "./Notice.js";

interface Props {
  readonly view: SnifferView;
  readonly onAction: (action: SnifferAction, value?: string) => void;
}

/** Which sniffer there is, how it does, and what can be done about it. */
export function SnifferStrip({ view, onAction }: Props) {
  return (
    <section
      class={`sniffer sniffer--${view.kind}${view.practice === null ? "" : " sniffer--practice"}`}
      aria-label={view.label}
      aria-busy={view.busy}
    >
      <div>
        <div role="status">
          <p class="sniffer__title">{view.title}</p>
          {view.text !== null && (
            <p class={view.urgent ? "small sniffer__text sniffer__text--urgent" : "small sniffer__text"}>
              {view.text}
            </p>
          )}
        </div>
        {view.countdown !== null && <p class="small numbers">{view.countdown}</p>}
      </div>
      {view.facts.length > 0 && (
        <dl class="sniffer__facts">
          {view.facts.map((fact) => (
            <div key={fact.label}>
              <dt>{fact.label}</dt>
              <dd>{fact.value}</dd>
            </div>
          ))}
        </dl>
      )}
      {view.practice !== null && <p class="small">{view.practice}</p>}
      {view.warning !== null && <Notice strong>{view.warning}</Notice>}
      {view.unsupported !== null && (
        <Notice title={view.unsupported.title}>
          <p class="small">{view.unsupported.text}</p>
          <p class="small">{view.unsupported.works}</p>
        </Notice>
      )}
      {view.actions.length > 0 && (
        <div class="row sniffer__actions">
          {view.actions.map((action) => (
            <Button
              key={`${action.id} ${action.value ?? ""}`}
              look={action.main ? "main" : view.kind === "ready" ? "quiet" : "plain"}
              onClick={() => onAction(action.id, action.value)}
            >
              {action.label}
            </Button>
          ))}
        </div>
      )}
    </section>
  );
}
