/** Runs one check: feeds events to the flow and carries its effects out. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { PlateFinding } from "../finding/finding.js";
import { checkFlow, IDLE } from "../flows/checkFlow.js";
import type { CheckEffect, CheckEvent, CheckState, CheckSubject } from "../flows/checkState.js";
import type { Sniff } from "../sniff/sniff.js";
import { buzz, createWakeKeeper } from "./attention.js";
import type { ReleaseControl } from "./releaseControl.js";
import type { SnifferControl } from "./snifferControl.js";

/** No sweep for so long after the start, or between two, is a fault (five sweeps, and at least five seconds). */
const QUIET_SWEEPS = 5;
const QUIET_MIN_MS = 5_000;

/** Time to bring the hand over the plate; the sniffer's own sweep takes about as long. Common practice. */
export const COUNT_DOWN_S = 3;

/** A finding of the sniff so far, and whether more sweeps would still change it. */
export interface Assessment {
  readonly finding: PlateFinding;
  readonly settled: boolean;
}

export interface CheckParts {
  readonly sniffers: SnifferControl;
  readonly release: ReleaseControl;
  readonly assess: (sniff: Sniff) => Assessment;
  readonly saveDraft: (sniff: Sniff) => void;
  readonly onPhase: (phase: CheckState["phase"]) => void;
  /** Does the person want the phone to buzz when a phase changes? */
  readonly buzzes: () => boolean;
}

export interface CheckControl {
  readonly state: ReadonlySignal<CheckState>;
  /** Seconds until the sniff over the plate begins; null where no count-down runs. */
  readonly countdown: ReadonlySignal<number | null>;
  begin(subject: CheckSubject): void;
  send(event: CheckEvent): void;
}

export function createCheckControl(parts: CheckParts): CheckControl {
  const { sniffers, release } = parts;
  const state = signal<CheckState>(IDLE);
  const wake = createWakeKeeper();
  const countdown = signal<number | null>(null);
  let counting: ReturnType<typeof setTimeout> | undefined;
  let quiet: ReturnType<typeof setTimeout> | undefined;

  function send(event: CheckEvent): void {
    if (event.kind === "sweep" || event.kind === "linkBack") watchForSilence();
    const step = checkFlow(state.value, event);
    state.value = step.state;
    if (countdown.value !== null && step.state.phase !== "overPlate") endCountDown();
    step.effects.forEach(carryOut);
  }

  function endCountDown(): void {
    clearTimeout(counting);
    countdown.value = null;
  }

  function watchForSilence(): void {
    clearTimeout(quiet);
    const sniffer = sniffers.state.value;
    if (sniffer.kind !== "ready") return;
    const limitMs = Math.max(QUIET_MIN_MS, QUIET_SWEEPS * sniffer.sniffer.layout.sweepPeriodMs);
    quiet = setTimeout(() => {
      if (isSweeping(state.value)) send({ kind: "interrupted", cause: "noSweeps" });
    }, limitMs);
  }

  async function start(): Promise<void> {
    const outcome = await sniffers.startSweeps();
    if (outcome === "refused") send({ kind: "interrupted", cause: "commandRefused" });
    // Where the link went, the loss itself is told.
    if (outcome === "taken") watchForSilence();
  }

  function countDown(secondsLeft: number): void {
    const { value } = state;
    const goesOn = value.phase === "overPlate" && value.countingDown;
    countdown.value = goesOn && secondsLeft > 0 ? secondsLeft : null;
    if (!goesOn) return;
    if (secondsLeft === 0) return send({ kind: "overPlateNow" });
    counting = setTimeout(() => countDown(secondsLeft - 1), 1000);
  }

  function carryOut(effect: CheckEffect): void {
    switch (effect.kind) {
      case "startSweeps":
        release.end();
        return void start();
      case "stopSweeps":
        clearTimeout(quiet);
        return void sniffers.stopSweeps();
      case "countDown":
        return countDown(COUNT_DOWN_S);
      case "purge":
        clearTimeout(quiet);
        return release.purge(state.value.phase === "done" ? state.value.sniff.cleanAir : undefined);
      case "assess": {
        const { finding, settled } = parts.assess(effect.sniff);
        return send({ kind: "assessed", sniff: effect.sniff, finding, settled, last: effect.last });
      }
      case "saveDraft":
        return parts.saveDraft(effect.sniff);
      case "announce":
        if (parts.buzzes()) buzz(effect.phase);
        return parts.onPhase(effect.phase);
      case "keepAwake":
        return void wake.keep(effect.on);
    }
  }

  sniffers.onCheckEvent(send);
  return {
    state,
    countdown,
    send,
    begin: (subject) => {
      send({ kind: "begin", subject });
      const sniffer = sniffers.state.value;
      const leftMs = sniffer.kind === "ready" ? sniffer.sniffer.status?.warmUpLeftMs : undefined;
      if (leftMs !== undefined) send({ kind: "warmUp", leftMs });
    },
  };
}

/** A cold sniffer may send nothing while it warms up. */
function isSweeping(state: CheckState): boolean {
  return state.phase === "cleanAir" || state.phase === "overPlate" || state.phase === "headspace";
}
