import type { FirstRunAction, FirstRunView } from "../views/firstRunView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { BrandMark } from "./parts/BrandMark.js";
import { Button } from "./parts/Button.js";

/** One page of the first run. */
export function FirstRunScreen({ view }: { readonly view: FirstRunView }) {
  return (
    <section class="first-run">
      <BrandMark />
      <p class="small quiet numbers">{view.count}</p>
      <h1 tabIndex={-1}>{view.title}</h1>
      <p class="first-run__text">{view.text}</p>
    </section>
  );
}

/** What can be done on it. */
export function FirstRunActions({
  view,
  onAction,
}: {
  readonly view: FirstRunView;
  readonly onAction: (action: FirstRunAction) => void;
}) {
  return (
    <ActionBar last>
      {view.actions.map((action) => (
        <Button
          key={action.id}
          look={action.look}
          big={action.look === "main"}
          wide
          onClick={() => onAction(action.id)}
        >
          {action.label}
        </Button>
      ))}
    </ActionBar>
  );
}
