import type { PlateHomeView } from "../views/plateHomeView.js";
import type { SnifferAction } from "../views/snifferView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { Below } from "./parts/Below.js";
import { Button } from "./parts/Button.js";
import { Cautions } from "./parts/Cautions.js";
import { Choices } from "./parts/Choices.js";
import { Fold } from "./parts/Fold.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";
import { SelectField } from "./parts/SelectField.js";
import { SnifferStrip } from "./parts/SnifferStrip.js";
import { TextField } from "./parts/TextField.js";

export interface PlateHomeCalls {
  readonly onSniffer: (action: SnifferAction, value?: string) => void;
  readonly onDish: (dish: string) => void;
  readonly onSuggestion: (dish: string) => void;
  readonly onClaim: (claim: string, chosen: boolean) => void;
  readonly onKitchenCard: () => void;
  readonly onOpenYou: () => void;
  readonly onPracticeDish: (id: string) => void;
  readonly onBelief: (group: string, belief: string) => void;
  readonly onDraft: (what: "use" | "drop") => void;
  readonly onCheck: () => void;
}

/** Plate before a check: the sniffer, the dish with its cautions and questions, the belief. */
export function PlateHomeScreen({
  view,
  calls,
}: {
  readonly view: PlateHomeView;
  readonly calls: PlateHomeCalls;
}) {
  return (
    <div class="stack stack--wide">
      {view.draft !== null && (
        <Notice title={view.draft.title} strong>
          <p>{view.draft.text}</p>
          <div class="row">
            <Button onClick={() => calls.onDraft("use")}>{view.draft.use}</Button>
            <Button look="quiet" onClick={() => calls.onDraft("drop")}>
              {view.draft.drop}
            </Button>
          </div>
        </Notice>
      )}
      <SnifferStrip view={view.sniffer} onAction={calls.onSniffer} />
      <div class="stack">
        <PageHead title={view.title} />
        <DishField view={view.dish} calls={calls} />
        <Below>
          <Choices
            name="claims"
            legend={view.claims.label}
            options={view.claims.options}
            onChoose={calls.onClaim}
            many
          />
        </Below>
      </div>
      <Below>
        <Cautions view={view.cautions} id="cautions-title">
          {view.cautions.openYou !== null && (
            <Button look="quiet" onClick={calls.onOpenYou}>
              {view.cautions.openYou}
            </Button>
          )}
        </Cautions>
        {view.questions !== null && (
          <section class="stack" aria-labelledby="questions-title">
            <h2 id="questions-title">{view.questions.title}</h2>
            <ol class="questions">
              {view.questions.items.map((question) => (
                <li key={question}>{question}</li>
              ))}
            </ol>
          </section>
        )}
        <Button wide onClick={calls.onKitchenCard}>
          {view.kitchenCard}
        </Button>
        {view.standing !== null && (
          <div class="stack stack--tight">
            {view.standing.emergency !== null && <Notice strong>{view.standing.emergency}</Notice>}
            <Fold title={view.standing.title}>
              {view.standing.lines.map(({ id, text }) => (
                <p key={id}>{text}</p>
              ))}
            </Fold>
          </div>
        )}
        {view.practice !== null && <Practice view={view.practice} onDish={calls.onPracticeDish} />}
        {view.belief !== null && <BeliefFold view={view.belief} onBelief={calls.onBelief} />}
      </Below>
    </div>
  );
}

function DishField({
  view,
  calls,
}: {
  readonly view: PlateHomeView["dish"];
  readonly calls: PlateHomeCalls;
}) {
  return (
    <div>
      <TextField
        id="dish"
        label={view.label}
        hint={view.hint}
        value={view.value}
        onInput={calls.onDish}
        maxLength={4000}
      />
      {view.suggestions.length > 0 && (
        <ul class="suggestions" aria-label={view.suggestionsLabel}>
          {view.suggestions.map((dish) => (
            <li key={dish}>
              <button type="button" onClick={() => calls.onSuggestion(dish)}>
                {dish}
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Practice({
  view,
  onDish,
}: {
  readonly view: NonNullable<PlateHomeView["practice"]>;
  readonly onDish: PlateHomeCalls["onPracticeDish"];
}) {
  return (
    <section class="card" aria-labelledby="practice-title">
      <h2 id="practice-title">{view.title}</h2>
      <p class="quiet">{view.hint}</p>
      <SelectField id="practice-dish" label={view.label} options={view.options} onChoose={onDish} />
    </section>
  );
}

function BeliefFold({
  view,
  onBelief,
}: {
  readonly view: NonNullable<PlateHomeView["belief"]>;
  readonly onBelief: PlateHomeCalls["onBelief"];
}) {
  return (
    <Fold title={view.title}>
      <p class="quiet">{view.hint}</p>
      {view.groups.map(({ group, name, options }) => (
        <Choices
          key={group}
          name={`belief-${group}`}
          legend={name}
          options={options}
          onChoose={(belief) => onBelief(group, belief)}
        />
      ))}
    </Fold>
  );
}

/** The one big button, for the frame's action bar. */
export function PlateHomeActions({
  view,
  clearing,
  onCheck,
}: {
  readonly view: PlateHomeView["check"];
  /** Is the sniffer still on its way back, and what that costs said in a bar above? */
  readonly clearing: boolean;
  readonly onCheck: () => void;
}) {
  return (
    <ActionBar>
      <p class="small quiet actions__note" id="check-note">
        {view.note}
      </p>
      <Button
        look="main"
        big
        wide
        blocked={!view.enabled}
        describedBy={clearing ? "check-note again-cost" : "check-note"}
        onClick={onCheck}
      >
        {view.label}
      </Button>
    </ActionBar>
  );
}
