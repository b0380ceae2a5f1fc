import type { CheckView } from "../views/checkView.js";
import type { InterruptedAction } from "../views/interruptedView.js";
import { CleanAirBody } from "./CleanAirBody.js";
import { HeadspaceBody } from "./HeadspaceBody.js";
import { ActionBar } from "./parts/ActionBar.js";
import { Button } from "./parts/Button.js";
import { Notice } from "./parts/Notice.js";
import { Guide } from "./parts/Guide.js";
import { Plume } from "./parts/Plume.js";
import { Pose } from "./parts/Pose.js";
import { Progress } from "./parts/Progress.js";
import { Steps } from "./parts/Steps.js";

export interface CheckCalls {
  readonly onOverPlate: () => void;
  readonly onFinish: () => void;
  readonly onInterrupted: (action: InterruptedAction) => void;
  readonly onStop: () => void;
}

/** A running check: where it stands, what to do with the hand, what the air says. */
export function CheckScreen({ view }: { readonly view: CheckView }) {
  const { body } = view;
  return (
    <div class="stack" data-phase={body.phase}>
      <Steps view={view.steps} />
      <div class="stack stack--tight">
        {view.practice !== null && <p class="small quiet">{view.practice}</p>}
        {view.dish !== "" && <p class="quiet">{view.dish}</p>}
        <h1 class="check__title" id="check-title" tabIndex={-1}>
          {body.title}
        </h1>
      </div>
      <CheckBody body={body} />
    </div>
  );
}

function CheckBody({ body }: { readonly body: CheckView["body"] }) {
  switch (body.phase) {
    case "warming":
      return (
        <>
          <p>{body.text}</p>
          <div class="stage">
            <Plume rises />
            <p class="check__count">{body.left}</p>
          </div>
          <Progress label={body.progressLabel} share={body.progress} text={body.left} />
        </>
      );
    case "cleanAir":
      return <CleanAirBody view={body} />;
    case "overPlate":
      return (
        <>
          <p class="check__lead">{body.text}</p>
          {body.steam !== null && <Notice strong>{body.steam}</Notice>}
          {body.countdown === null ? (
            <Guide view={body.guide} />
          ) : (
            <div class="stage">
              <Pose pose="overPlate" />
              <p class="check__count" role="timer">
                {body.countdown}
              </p>
            </div>
          )}
          <p>{body.note}</p>
        </>
      );
    case "headspace":
      return <HeadspaceBody view={body} />;
    case "interrupted":
      return (
        <>
          <p>{body.what}</p>
          <Notice strong live>
            <p>{body.remedy}</p>
          </Notice>
          {body.countdown !== null && <p class="numbers">{body.countdown}</p>}
          <p>{body.kept}</p>
          {body.note !== null && <p>{body.note}</p>}
          <p class="small quiet">{body.during}</p>
        </>
      );
  }
}

/** What is tapped in each phase, and before the air is steady what will be. Stopping is always there, as one and the same button: hence the keys. */
export function CheckActions({ view, calls }: { readonly view: CheckView; readonly calls: CheckCalls }) {
  const { body } = view;
  return (
    <ActionBar last>
      {(body.phase === "warming" || body.phase === "cleanAir") && (
        <Button
          key="overPlate"
          look="main"
          big
          wide
          blocked
          describedBy="check-title"
          onClick={calls.onOverPlate}
        >
          {view.overPlate}
        </Button>
      )}
      {body.phase === "overPlate" && (
        <Button key="overPlate" look="main" big wide onClick={calls.onOverPlate}>
          {body.button}
        </Button>
      )}
      {body.phase === "headspace" && (
        <Button key="finish" big wide onClick={calls.onFinish}>
          {body.finish}
        </Button>
      )}
      {body.phase === "interrupted" &&
        body.actions.map((action) => (
          <Button
            key={action.id}
            look={action.main ? "main" : "plain"}
            big={action.main}
            wide
            onClick={() => calls.onInterrupted(action.id)}
          >
            {action.label}
          </Button>
        ))}
      <Button key="stop" look="quiet" wide onClick={calls.onStop}>
        {view.stop}
      </Button>
    </ActionBar>
  );
}
