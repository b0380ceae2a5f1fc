import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { FOOD_GROUPS, type GroupTruth, type GroupTruths } from "../../kernel/groups.js";
import { KeepSampleScreen } from "../../screens/KeepSampleScreen.js";
import { FormActions } from "../../screens/parts/FormActions.js";
import type { Sniff } from "../../sniff/sniff.js";
import { keepSampleView } from "../../views/keepSampleView.js";
import type { AppModel } from "../appModel.js";
import { isPractice } from "../practice.js";
import { Frame } from "../places/Frame.js";

/** A sniff under this id: of the check that just ended, or one that is kept. */
async function findSniff(app: AppModel, sniffId: string): Promise<Sniff | null> {
  const { value } = app.check.state;
  if (value.phase === "done" && value.sniff.id === sniffId) return value.sniff;
  const kept = await app.ports.store.getSniff(sniffId);
  return kept.ok ? kept.value : null;
}

/** Says what was on the plate of one sniff, and keeps it as a sample. */
export function KeepSamplePage({ app, sniffId }: { readonly app: AppModel; readonly sniffId: string }) {
  const sniff = useSignal<Sniff | null>(null);
  const dish = useSignal("");
  const truths = useSignal<GroupTruths>({});
  const samePlate = useSignal(false);
  const { value: words } = app.preferences.words;
  const before =
    app.samples.samples.value.find((sample) => sample.sniffId !== sniffId && !sample.demo) ?? null;

  useEffect(() => {
    void findSniff(app, sniffId).then((found) => {
      sniff.value = found;
      const served = app.served.value;
      dish.value = found?.dish || (served?.name ?? "");
      // In practice the cook is known to tell the truth.
      truths.value = served?.groups ?? found?.groups ?? {};
    });
  }, [sniffId]);

  const view = keepSampleView(
    {
      dish: dish.value,
      truths: truths.value,
      groups: FOOD_GROUPS,
      samePlate: before === null ? null : samePlate.value,
    },
    words,
  );

  async function keep(): Promise<void> {
    if (sniff.value === null) return;
    const plate = samePlate.value && before !== null ? before.plate : sniff.value.plate;
    const label = { dish: dish.value.trim(), plate, groups: truths.value };
    const kept = await app.samples.keep(sniff.value, label, isPractice(sniff.value));
    if (kept.ok) app.router.go("nose", "samples");
    else app.tellStoreError(kept.error);
  }

  return (
    <Frame
      app={app}
      actions={
        <FormActions
          save={view.save}
          cancel={view.cancel}
          blocked={view.blocked !== null || sniff.value === null}
          onSave={() => void keep()}
          onCancel={app.router.back}
        />
      }
    >
      <KeepSampleScreen
        view={view}
        calls={{
          onDish: (value) => {
            dish.value = value;
          },
          onGroup: (group, truth) => {
            truths.value = { ...truths.value, [group]: truth as GroupTruth };
          },
          onSamePlate: (on) => {
            samePlate.value = on;
          },
        }}
      />
    </Frame>
  );
}
