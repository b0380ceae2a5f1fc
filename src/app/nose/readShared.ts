/** What is kept of two sniffers that both sniffed: samples, and readings of the check jar. */
import type { Sniff } from "../../sniff/sniff.js";
import type { Store } from "../../store/store.js";
import { nearInTime } from "../../transfer/nearInTime.js";
import type { TransferPlate } from "../../views/transferView.js";

export interface Shared {
  readonly samples: readonly Sniff[];
  readonly plates: readonly TransferPlate[];
  /** Of both sniffers, those that lie near one another in time. */
  readonly jarSniffs: readonly Sniff[];
  /** How many of them the connected one took. */
  readonly jarReadings: number;
}

/** Samples and jar readings of both sniffers; null where the storage does not give them. */
export async function readShared(store: Store, first: string, second: string): Promise<Shared | null> {
  const kept = await store.readSamples();
  if (!kept.ok) return null;
  const { samples } = kept.value;
  if (second === first) return { samples, plates: [], jarSniffs: [], jarReadings: 0 };
  const [there, here] = [await store.listCheckJar(first), await store.listCheckJar(second)];
  if (!there.ok || !here.ok) return null;
  const near = nearInTime(there.value.items, here.value.items);
  const jarSniffs: Sniff[] = [];
  for (const { sniffId } of [...near.first, ...near.second]) {
    const sniff = await store.getSniff(sniffId);
    if (sniff.ok) jarSniffs.push(sniff.value);
  }
  const plates = platesOf(samples, first, second);
  const jarReadings = jarSniffs.filter(({ sniffer }) => sniffer.id === second).length;
  return { samples, plates, jarSniffs, jarReadings };
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
