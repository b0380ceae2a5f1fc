import { useSignal } from "@preact/signals";
import { SamplesScreen } from "../../screens/SamplesScreen.js";
import { isDemoSample } from "../../virtual/demoSampleId.js";
import { samplesView } from "../../views/samplesView.js";
import type { AppModel } from "../appModel.js";
import { suggestionsOf } from "../meals/suggestionsOf.js";
import { hashOf } from "../router.js";
import { Frame } from "../places/Frame.js";

const AT_ONCE = 30;

/** The samples: counts by group, what is still needed, the list. */
export function SamplesPage({ app }: { readonly app: AppModel }) {
  const shown = useSignal(AT_ONCE);
  const { value: words } = app.preferences.words;
  const samples = app.samples.samples.value;
  const named = samples.flatMap(({ groups }) => Object.keys(groups));
  const view = samplesView(
    {
      samples,
      demoIsIn: samples.some(({ sniffId }) => isDemoSample(sniffId)),
      shown: shown.value,
      groups: [...new Set([...app.groups.value, ...named])],
      acceptedMissRate: app.preferences.preferences.value.acceptedMissRate,
      suggestions: suggestionsOf(app).value,
    },
    words,
  );

  async function release(sniffId: string): Promise<void> {
    const released = await app.samples.release(sniffId);
    if (released.ok) app.toasts.show(words.text.nose.samples.removed);
    else app.tellStoreError(released.error);
  }

  async function dropDemo(): Promise<void> {
    const dropped = await app.dropDemo();
    if (!dropped.ok) app.tellStoreError(dropped.error);
  }

  async function bringInDemo(): Promise<void> {
    const brought = await app.samples.bringInDemo();
    if (!brought.ok && brought.error.kind !== "tooLarge") app.tellStoreError(brought.error);
  }

  return (
    <Frame app={app}>
      <SamplesScreen
        view={view}
        hrefOf={(mealId) => hashOf("meals", mealId)}
        calls={{
          onBack: () => app.router.go("nose"),
          onRemove: (sniffId) => void release(sniffId),
          onDropDemo: () => void dropDemo(),
          onBringInDemo: () => void bringInDemo(),
          onMore: () => {
            shown.value += AT_ONCE;
          },
        }}
      />
    </Frame>
  );
}
