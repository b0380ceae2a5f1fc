import type { AppModel } from "./appModel.js";
import { Broken } from "./Broken.js";
import type { FirstLook } from "./firstLook.js";
import { late } from "./late.js";
import { Announcer } from "./places/Announcer.js";
import { Frame } from "./places/Frame.js";
import { PlatePlace } from "./places/PlatePlace.js";

const MealsPlace = late(async () => (await import("./places/MealsPlace.js")).MealsPlace);
const NosePlace = late(async () => (await import("./places/NosePlace.js")).NosePlace);
const YouPlace = late(async () => (await import("./places/YouPlace.js")).YouPlace);

interface Props {
  readonly app: AppModel;
  readonly look: FirstLook;
}

/** The whole app: the place that the address names. All but Plate are loaded when first opened. */
export function App({ app, look }: Props) {
  return (
    <>
      <Broken key={app.router.route.value.place} app={app}>
        <Place app={app} look={look} />
      </Broken>
      <Announcer app={app} />
    </>
  );
}

function Place({ app, look }: Props) {
  const { place } = app.router.route.value;
  const opening = app.opening.value;
  if (opening.kind === "failed") throw opening.cause;
  if (place === "plate") return <PlatePlace app={app} look={look} />;
  if (opening.kind === "reading") return <Frame app={app}>{null}</Frame>;
  switch (place) {
    case "meals":
      return <MealsPlace app={app} />;
    case "nose":
      return <NosePlace app={app} />;
    case "you":
      return <YouPlace app={app} />;
  }
}
