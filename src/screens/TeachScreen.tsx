import type { ComparedView, TeachPageView, TeachView } from "../views/teachView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { Button } from "./parts/Button.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";
import { Plume } from "./parts/Plume.js";
import { Progress } from "./parts/Progress.js";
import { TextField } from "./parts/TextField.js";

export interface TeachCalls {
  readonly onBack: () => void;
  readonly onName: (name: string) => void;
  readonly onStart: () => void;
  readonly onStop: () => void;
  readonly onAccept: () => void;
  readonly onReject: () => void;
  readonly onDismiss: () => void;
}

/** Teaching a new nose, and the person's word on it. */
export function TeachScreen({ view, calls }: { readonly view: TeachPageView; readonly calls: TeachCalls }) {
  return (
    <div class="stack">
      <PageHead title={view.title} text={view.text} back={{ label: view.back, onBack: calls.onBack }} />
      <Body view={view.body} calls={calls} />
    </div>
  );
}

function Body({ view, calls }: { readonly view: TeachView; readonly calls: TeachCalls }) {
  switch (view.kind) {
    case "idle":
      return (
        <>
          <p class="numbers">{view.samples}</p>
          <TextField id="nose-name" label={view.name.label} value={view.name.value} onInput={calls.onName} />
          {view.blocked !== null && <p id="teach-blocked">{view.blocked}</p>}
        </>
      );
    case "teaching":
      return (
        <div class="stack" role="status">
          <div class="stage">
            <Plume />
            <p class="check__count">{view.running}</p>
          </div>
          <Progress label={view.running} share={view.progress} text={view.progressText} />
          <p class="numbers">{view.progressText}</p>
          <p class="quiet">{view.stay}</p>
        </div>
      );
    case "proposed":
      return <Proposed view={view} />;
    case "problem":
      return (
        <Notice title={view.problemTitle} strong live>
          <p>{view.problemText}</p>
        </Notice>
      );
  }
}

function Proposed({ view }: { readonly view: Extract<TeachView, { kind: "proposed" }> }) {
  return (
    <section class="stack" aria-labelledby="proposed-title">
      <h2 id="proposed-title">{view.proposedTitle}</h2>
      <p>{view.proposedText}</p>
      {view.groups.map((group) => (
        <article key={group.group} class="card">
          <h3>{group.name}</h3>
          <p class="small quiet numbers">{group.plates}</p>
          {group.rows.map((row) => (
            <ComparedRow key={row.label} row={row} before={view.before} after={view.after} />
          ))}
        </article>
      ))}
      <p class="quiet">{view.kept}</p>
    </section>
  );
}

function ComparedRow({
  row,
  before,
  after,
}: {
  readonly row: ComparedView;
  readonly before: string;
  readonly after: string;
}) {
  return (
    <div class="compared">
      <p>
        <strong>{row.label}</strong>
      </p>
      <div class="compared__pair">
        <div>
          <p class="small quiet">{before}</p>
          <p class="rate__percent numbers">{row.before}</p>
          <p class="small quiet numbers">{row.beforeText}</p>
        </div>
        <div>
          <p class="small quiet">{after}</p>
          <p class="rate__percent numbers">{row.after}</p>
          <p class="small quiet numbers">{row.afterText}</p>
        </div>
      </div>
      <p class="small">{row.change}</p>
    </div>
  );
}

/** What can be done at each point of teaching. */
export function TeachActions({ view, calls }: { readonly view: TeachView; readonly calls: TeachCalls }) {
  switch (view.kind) {
    case "idle":
      return (
        <ActionBar>
          <Button look="main" big wide blocked={view.blocked !== null} onClick={calls.onStart}>
            {view.start}
          </Button>
        </ActionBar>
      );
    case "teaching":
      return (
        <ActionBar>
          <Button big wide blocked={view.stopping} onClick={calls.onStop}>
            {view.stop}
          </Button>
        </ActionBar>
      );
    case "proposed":
      return (
        <ActionBar>
          <Button look="main" big wide onClick={calls.onAccept}>
            {view.accept}
          </Button>
          <Button wide onClick={calls.onReject}>
            {view.reject}
          </Button>
        </ActionBar>
      );
    case "problem":
      return (
        <ActionBar>
          <Button big wide onClick={calls.onDismiss}>
            {view.dismiss}
          </Button>
        </ActionBar>
      );
  }
}
