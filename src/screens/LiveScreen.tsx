import type { LiveView } from "../views/liveView.js";
import type { SnifferAction } from "../views/snifferView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { Button } from "./parts/Button.js";
import { Choices } from "./parts/Choices.js";
import { PageHead } from "./parts/PageHead.js";
import { SnifferStrip } from "./parts/SnifferStrip.js";
import { Table } from "./parts/Table.js";
import { TraceCanvas } from "./parts/TraceCanvas.js";

export interface LiveCalls {
  readonly onBack: () => void;
  readonly onSniffer: (action: SnifferAction, value?: string) => void;
  readonly onWindow: (lengthMs: string) => void;
  /** Draws the traces from now on; the answer ends it. */
  readonly onCanvas: (canvas: HTMLCanvasElement) => () => void;
}

/** The channels as they move now, as a picture and as numbers. */
export function LiveScreen({ view, calls }: { readonly view: LiveView; readonly calls: LiveCalls }) {
  const { chart, table } = view;
  return (
    <div class="stack stack--wide">
      <PageHead title={view.title} text={view.text} back={{ label: view.back, onBack: calls.onBack }} />
      <SnifferStrip view={view.sniffer} onAction={calls.onSniffer} />
      <Choices
        name="trace-window"
        legend={view.windows.label}
        options={view.windows.options}
        onChoose={calls.onWindow}
      />
      {view.empty !== null && <p class="quiet">{view.empty}</p>}
      {chart !== null && (
        <figure class="live">
          <p class="small quiet numbers" aria-hidden="true">
            {chart.top}
          </p>
          <TraceCanvas label={chart.label} start={calls.onCanvas} />
          <p class="small quiet numbers" aria-hidden="true">
            {chart.bottom}
          </p>
          <p class="row row--apart small quiet numbers" aria-hidden="true">
            <span>{chart.from}</span>
            <span>{chart.to}</span>
          </p>
        </figure>
      )}
      {table.rows.length > 0 && <Table {...table} />}
    </div>
  );
}

/** Begins or ends listening. */
export function LiveActions({
  view,
  onListen,
}: {
  readonly view: LiveView["listen"];
  readonly onListen: () => void;
}) {
  if (view === null) return null;
  return (
    <ActionBar>
      <Button look={view.on ? "plain" : "main"} big wide onClick={onListen}>
        {view.label}
      </Button>
    </ActionBar>
  );
}
