import type { TeachPageView, TeachView } from "../views/teachView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { OfferBody } from "./OfferBody.js";
import { Button } from "./parts/Button.js";
import { Choices } from "./parts/Choices.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";
import { Plume } from "./parts/Plume.js";
import { Progress } from "./parts/Progress.js";
import { TextField } from "./parts/TextField.js";

export interface TeachCalls {
  readonly onBack: () => void;
  readonly onName: (name: string) => void;
  readonly onHow: (how: string) => void;
  readonly onStart: () => void;
  readonly onStop: () => void;
  readonly onSkipChecks: () => void;
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
          {view.how !== null && (
            <Choices
              name="how"
              legend={view.how.label}
              options={view.how.options}
              onChoose={calls.onHow}
              hint={view.how.hint ?? undefined}
              rows
            />
          )}
          {view.refreshNone !== null && <p class="small quiet">{view.refreshNone}</p>}
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
    case "comparing":
      return (
        <div class="stage" role="status">
          <Plume />
          <p class="check__count">{view.running}</p>
        </div>
      );
    case "proposed":
      return <OfferBody view={view} />;
    case "problem":
      return (
        <Notice title={view.problemTitle} strong live>
          <p>{view.problemText}</p>
        </Notice>
      );
  }
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
          <Button
            big
            wide
            blocked={view.stopping}
            onClick={view.stops === "checks" ? calls.onSkipChecks : calls.onStop}
          >
            {view.stop}
          </Button>
        </ActionBar>
      );
    case "comparing":
      return null;
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
