import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Nose } from "../../nose/nose.js";
import { TransferActions, TransferScreen } from "../../screens/TransferScreen.js";
import type { Sniff } from "../../sniff/sniff.js";
import { transferView, type TransferOutcome, type TransferPlate } from "../../views/transferView.js";
import { VIRTUAL_SNIFFER_ID } from "../../virtual/virtualSnifferId.js";
import type { AppModel } from "../appModel.js";
import { Frame } from "../places/Frame.js";
import { nowIso } from "../ports.js";

interface WorkedOut {
  readonly outcome: TransferOutcome;
  readonly plates: readonly TransferPlate[];
  readonly moved: Nose | null;
}

const WORKING: WorkedOut = { outcome: { kind: "working" }, plates: [], moved: null };

/** Moves the nose in use to the connected sniffer, by samples of plates that both sniffed. */
export function TransferPage({ app }: { readonly app: AppModel }) {
  const worked = useSignal<WorkedOut>(WORKING);
  const nose = app.noses.current.value;
  const sniffer = snifferOf(app);
  useEffect(() => void app.reach.load(), []);
  useEffect(() => {
    let wanted = true;
    worked.value = WORKING;
    void workOut(app).then((done) => {
      if (wanted) worked.value = done;
    });
    return () => {
      wanted = false;
    };
  }, [nose?.id, sniffer?.id, app.samples.samples.value.length]);
  const view = transferView(
    {
      noseName: nose?.name ?? null,
      taughtOn: nose === null ? null : nameOf(nose.sniffer.id, app),
      connected: sniffer === null ? null : nameOf(sniffer.id, app),
      plates: worked.value.plates,
      outcome: worked.value.outcome,
    },
    app.preferences.words.value,
  );

  async function accept(): Promise<void> {
    const { moved } = worked.value;
    const { judging } = app.noses;
    if (moved === null || judging.value === null) return;
    const taken = await app.noses.importNose(judging.value.serialiseNose(moved), moved.sniffer.channels);
    if (taken.ok) app.router.go("nose", "teach");
    else app.tellStoreError({ kind: "unexpected", detail: taken.error.kind });
  }

  return (
    <Frame app={app} actions={<TransferActions view={view} onAccept={() => void accept()} />}>
      <TransferScreen view={view} onBack={() => app.router.go("nose")} />
    </Frame>
  );
}

function snifferOf(app: AppModel) {
  const { value } = app.sniffers.state;
  if (value.kind !== "ready") return null;
  const { snifferId, channels } = value.sniffer.layout;
  return { id: snifferId, channels };
}

/** As people know it; two of one name are told apart by their ids, and one that is not known goes by its id. */
function nameOf(snifferId: string, { reach, preferences }: AppModel): string {
  if (snifferId === VIRTUAL_SNIFFER_ID) return preferences.words.value.text.sniffer.virtualName;
  const known = reach.known.value ?? [];
  const name = known.find((one) => one.snifferId === snifferId)?.name ?? "";
  const alike = known.filter((one) => one.name === name).length > 1;
  return name === "" ? snifferId : alike ? `${name} (${snifferId})` : name;
}

async function workOut(app: AppModel): Promise<WorkedOut> {
  const nose = app.noses.current.value;
  const sniffer = snifferOf(app);
  if (nose === null) return { ...WORKING, outcome: { kind: "noNose" } };
  if (sniffer === null) return { ...WORKING, outcome: { kind: "noSniffer" } };
  const kept = await app.ports.store.readSamples();
  const samples = kept.ok ? kept.value.samples : [];
  if (!kept.ok) app.tellStoreError(kept.error);
  const plates = sniffer.id === nose.sniffer.id ? [] : platesOf(samples, nose.sniffer.id, sniffer.id);
  const { transferNose } = await import("../../transfer/transferNose.js");
  const done = transferNose(nose, samples, {
    id: app.ports.newId(),
    name: nose.name,
    transferredAt: nowIso(app.ports),
    sniffer,
  });
  if (!done.ok) return { outcome: done.error, plates, moved: null };
  const moved = done.value.nose;
  const { transfer, report } = moved;
  if (transfer === undefined) return { outcome: { kind: "alreadyMoved" }, plates, moved: null };
  return { outcome: { kind: "moved", gain: transfer.gain, evidencePlates: report.folds }, plates, moved };
}

/** Plates of the connected sniffer, and what the taught one sniffed since: older plates are eaten. */
function platesOf(samples: readonly Sniff[], first: string, second: string): TransferPlate[] {
  const here = samples.filter(({ sniffer }) => sniffer.id === second);
  const began = here.map(({ takenAt }) => takenAt).sort()[0];
  const there = samples.filter(({ sniffer }) => sniffer.id === first);
  const names = new Set(here.map(({ plate }) => plate));
  const alone = there.filter(
    ({ plate, takenAt }) => !names.has(plate) && began !== undefined && takenAt > began,
  );
  const twice = new Set(there.map(({ plate }) => plate));
  const rows = [
    ...here.map(
      ({ plate, dish }) => ({ plate, dish, on: twice.has(plate) ? "both" : "onlySecond" }) as const,
    ),
    ...alone.map(({ plate, dish }) => ({ plate, dish, on: "onlyFirst" }) as const),
  ];
  return [...new Map(rows.map((row) => [row.plate, row])).values()];
}
