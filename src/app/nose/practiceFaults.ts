/** What is chosen to go wrong with the virtual sniffer, and nothing of it for a real one. */
import { effect } from "@preact/signals";
import { PRACTICE_FAULTS, type PracticeFault } from "../../kernel/practiceFault.js";
import { isReal } from "../../views/practiceView.js";
import type { AppModel } from "../appModel.js";

type Parts = Pick<AppModel, "kitchen" | "sniffers">;

/** Turns one on or off. Another unit is another sniffer: the virtual one in hand is exchanged for it. */
export function chooseFault({ kitchen, sniffers }: Parts, id: string, on: boolean): void {
  const fault = PRACTICE_FAULTS.find((known) => known === id);
  if (fault === undefined) return;
  const others = kitchen.faults.value.filter((known) => known !== fault);
  setFaults({ kitchen, sniffers }, on ? [...others, fault] : others);
}

export const allFaultsOff = (parts: Parts): void => setFaults(parts, []);

function setFaults({ kitchen, sniffers }: Parts, chosen: readonly PracticeFault[]): void {
  const isOther = chosen.includes("spread") !== kitchen.faults.value.includes("spread");
  kitchen.faults.value = chosen;
  const { value } = sniffers.state;
  const isInHand = (value.kind === "ready" || value.kind === "lost") && value.sniffer.virtual;
  if (isOther && isInHand) void sniffers.pair(kitchen.source());
}

/** Ends the practice when a real sniffer comes to hand. @returns ends the watch */
export function endWithRealSniffer(parts: Parts): () => void {
  return effect(() => {
    if (isReal(parts.sniffers.state.value)) parts.kitchen.faults.value = [];
  });
}
