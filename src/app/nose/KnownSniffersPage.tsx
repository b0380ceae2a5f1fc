import { useEffect } from "preact/hooks";
import { KnownSniffersScreen } from "../../screens/KnownSniffersScreen.js";
import { knownSniffersView } from "../../views/knownSniffersView.js";
import type { AppModel } from "../appModel.js";
import { Frame } from "../places/Frame.js";
import { snifferCalls, snifferContext } from "../snifferCalls.js";

/** Sniffers met before. */
export function KnownSniffersPage({ app }: { readonly app: AppModel }) {
  const { reach } = app;
  useEffect(() => void reach.load(), []);
  const all = reach.known.value ?? [];
  const view = knownSniffersView(
    { ...snifferContext(app), sniffer: app.sniffers.state.value, all, nowMs: app.ports.nowMs() },
    app.preferences.words.value,
  );
  const keyed = view.items.map(({ key }, i) => ({ key, sniffer: all[i] }));
  return (
    <Frame app={app}>
      <KnownSniffersScreen
        view={view}
        calls={{
          onBack: () => app.router.go("nose"),
          onSniffer: snifferCalls(app),
          onForget: (wanted) => {
            const sniffer = keyed.find(({ key }) => key === wanted)?.sniffer;
            if (sniffer !== undefined) void reach.forget(sniffer);
          },
        }}
      />
    </Frame>
  );
}
