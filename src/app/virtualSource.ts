import type { ReadonlySignal } from "@preact/signals";
import type { PracticeFault } from "../kernel/practiceFault.js";
import { ok } from "../kernel/result.js";
import type { SnifferSource } from "./snifferControl.js";
import type { VirtualTable } from "./virtualTable.js";
import { untilHere } from "./pieces.js";

/** The practice sniffer. Its physics are loaded only when somebody practises. */
export function virtualSource(
  name: string,
  seed: number,
  faults: ReadonlySignal<readonly PracticeFault[]>,
  onLaid: (table: VirtualTable) => void,
): SnifferSource {
  let table: VirtualTable | null = null;
  return {
    virtual: true,
    choose: () =>
      Promise.resolve(
        ok({
          name,
          deviceId: null,
          dial: async () => {
            const { layVirtualTable } = await untilHere(() => import("./virtualTable.js"));
            table ??= layVirtualTable(name, seed, faults);
            onLaid(table);
            return ok(table.open());
          },
        }),
      ),
  };
}
