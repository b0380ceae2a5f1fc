import { useEffect } from "preact/hooks";
import { FitnessScreen } from "../../screens/FitnessScreen.js";
import { fitnessView } from "../../views/fitnessView.js";
import type { AppModel } from "../appModel.js";
import { Frame } from "../places/Frame.js";

/** The sniffer's fitness, and its check jar. */
export function FitnessPage({ app }: { readonly app: AppModel }) {
  const { jar } = app;
  const sniffer = app.sniffers.state.value;
  useEffect(() => void jar.load(), [sniffer.kind]);
  const { distances, limit, inControl } = jar.verdict.value;
  const watched = jar.readings.value.slice(jar.readings.value.length - distances.length);
  const view = fitnessView(
    {
      sniffer,
      cleanAirAt: app.cleanAirAt.value,
      jar: {
        readings: distances.map((score, i) => ({ at: watched[i]?.at ?? "", score })),
        inControl,
        limit,
      },
      nowMs: app.ports.nowMs(),
    },
    app.preferences.words.value,
  );
  return (
    <Frame app={app}>
      <FitnessScreen
        view={view}
        calls={{
          onBack: () => app.router.go("nose"),
          onCheckJar: () => {
            app.beginJarCheck();
            app.router.go("plate");
          },
        }}
      />
    </Frame>
  );
}
