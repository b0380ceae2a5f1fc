import type { ReleaseView } from "../../views/releaseView.js";

/** Small, beside what matters: how far the sniffer is on its way back to clean air. */
export function ReleaseNote({ view }: { readonly view: ReleaseView }) {
  return (
    <p class="small numbers release" data-release>
      {!view.isNews && view.text}
      <span role="status">{view.isNews && view.text}</span>
    </p>
  );
}
