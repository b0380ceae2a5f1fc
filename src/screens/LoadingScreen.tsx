import type { LoadView } from "../views/loadView.js";
import { Button } from "./parts/Button.js";

/** Something that is not there yet, or could not be had. */
export function LoadingScreen({ view, onRetry }: { readonly view: LoadView; readonly onRetry: () => void }) {
  if (view.kind === "loading") {
    return (
      <div role="status">
        <h1 tabIndex={-1}>{view.text}</h1>
      </div>
    );
  }
  return (
    <section class="stack" role="alert">
      <h1 tabIndex={-1}>{view.title}</h1>
      <p>{view.text}</p>
      {view.retry !== null && <Button onClick={onRetry}>{view.retry}</Button>}
    </section>
  );
}
