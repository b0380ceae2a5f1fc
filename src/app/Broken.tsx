import type { ComponentChildren } from "preact";
import { useErrorBoundary } from "preact/hooks";
import { ErrorScreen } from "../screens/ErrorScreen.js";
import { brokenView } from "../views/brokenView.js";
import type { AppModel } from "./appModel.js";
import { hashOf } from "./router.js";

/** Stands around the places: where one breaks or cannot be loaded, it says so and leads back to the start. */
export function Broken({ app, children }: { readonly app: AppModel; readonly children: ComponentChildren }) {
  const [cause] = useErrorBoundary() as [unknown, () => void];
  if (cause === undefined) return children;
  const details = cause instanceof Error ? (cause.stack ?? cause.message) : String(cause);
  return (
    <main class="app__main">
      <ErrorScreen view={brokenView(details, `./${hashOf("plate")}`, app.preferences.firstWords.value)} />
    </main>
  );
}
