import { Suspense, lazy } from "preact/compat";
import type { AppModel } from "./appModel.js";
import { Broken } from "./Broken.js";
import { FirstRunPage } from "./places/FirstRunPage.js";
import { PlatePlace } from "./places/PlatePlace.js";

const MealsPlace = lazy(async () => ({ default: (await import("./places/MealsPlace.js")).MealsPlace }));
const NosePlace = lazy(async () => ({ default: (await import("./places/NosePlace.js")).NosePlace }));
const YouPlace = lazy(async () => ({ default: (await import("./places/YouPlace.js")).YouPlace }));

/** The whole app: the place that the address names. All but Plate are loaded when first opened. */
export function App({ app }: { readonly app: AppModel }) {
  return (
    <Broken key={app.router.route.value.place} app={app}>
      <Suspense fallback={null}>{placeOf(app)}</Suspense>
    </Broken>
  );
}

function placeOf(app: AppModel) {
  switch (app.router.route.value.place) {
    case "plate": {
      const step = app.firstRun.step.value;
      return step === null ? <PlatePlace app={app} /> : <FirstRunPage app={app} step={step} />;
    }
    case "meals":
      return <MealsPlace app={app} />;
    case "nose":
      return <NosePlace app={app} />;
    case "you":
      return <YouPlace app={app} />;
  }
}
