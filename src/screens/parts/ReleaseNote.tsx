import type { ReleaseView } from "../../views/releaseView.js";

/** A bar over the actions: how far the sniffer is on its way back to clean air. It comes and goes by itself. */
export function ReleaseNote({ view }: { readonly view: ReleaseView }) {
  return (
    <div class="bar small">
      <div>
        {view.cost !== null && (
          <p class="quiet" id="again-cost">
            {view.cost}
          </p>
        )}
        <p class="numbers" data-release>
          {!view.isNews && view.text}
          <span role="status">{view.isNews && view.text}</span>
        </p>
      </div>
    </div>
  );
}
