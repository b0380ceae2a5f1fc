import type { LoadView } from "../views/loadView.js";
import { Button } from "./parts/Button.js";
import { Empty } from "./parts/Empty.js";

/** Something that is not there yet, or could not be had. */
export function LoadingScreen({ view, onRetry }: { readonly view: LoadView; readonly onRetry: () => void }) {
  if (view.kind === "loading") {
    return (
      <p role="status" class="loading">
        {view.text}
      </p>
    );
  }
  return (
    <Empty icon="steam" title={view.title} text={view.text}>
      {view.retry !== null && <Button onClick={onRetry}>{view.retry}</Button>}
    </Empty>
  );
}
