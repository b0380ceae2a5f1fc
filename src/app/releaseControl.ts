/** Purges the sniffer after a plate and follows it back to clean air. No finding waits for it or knows of it. */
import { computed, effect, signal, type ReadonlySignal } from "@preact/signals";
import { releaseFlow, type ReleaseEvent } from "../flows/releaseFlow.js";
import { isClearing, NOT_FOLLOWING, type ReleaseState } from "../flows/releaseState.js";
import type { CheckEvent } from "../flows/checkState.js";
import type { SniffPhase } from "../sniff/sniff.js";
import type { SnifferControl } from "./snifferControl.js";

/** Clean air keeps so long (the age at which a baseline is too old); then "back" says nothing any more. */
const BACK_SHOWN_MS = 120_000;

export interface ReleaseControl {
  /** Changes with each sweep. */
  readonly state: ReadonlySignal<ReleaseState>;
  /** Is the sniffer known, or thought, not to be back in clean air? */
  readonly clearing: ReadonlySignal<boolean>;
  /** Begins the purge; `cleanAir` is what the release is held against. */
  purge(cleanAir: SniffPhase | undefined): void;
  /** Lets go of the sniffer: a check needs its sweeps. */
  end(): void;
}

export function createReleaseControl(sniffers: SnifferControl): ReleaseControl {
  const state = signal<ReleaseState>(NOT_FOLLOWING);
  /** The run that was begun here; null where none is on. */
  let run: number | null = null;
  let fading: ReturnType<typeof setTimeout> | undefined;

  function send(event: ReleaseEvent): void {
    const step = releaseFlow(state.peek(), event);
    if (step.state !== state.peek()) {
      clearTimeout(fading);
      if (step.state.kind === "back") fading = setTimeout(() => send({ kind: "end" }), BACK_SHOWN_MS);
    }
    state.value = step.state;
    if (step.effect === "startSweeps") void start();
    if (step.effect === "stopSweeps") stop();
  }

  async function purge(): Promise<void> {
    if ((await sniffers.purge()) === "refused") send({ kind: "noPurge" });
  }

  async function start(): Promise<void> {
    const outcome = await sniffers.startSweeps();
    if (outcome !== "taken") return send({ kind: "end" });
    run = runNow();
  }

  /** Not where a run of somebody else's is on by now. */
  function stop(): void {
    if (run !== null && run === runNow()) void sniffers.stopSweeps();
    run = null;
  }

  function runNow(): number | null {
    const sniffer = sniffers.state.peek();
    return sniffer.kind === "ready" ? sniffer.sniffer.lastRun : null;
  }

  function listen(event: CheckEvent): void {
    if (event.kind === "sweep") return send(event);
    if (event.kind === "interrupted") return send({ kind: "end" });
    // The run that the loss cut off is still on, and nobody listens to it.
    if (event.kind === "linkBack") return stop();
    const sniffer = sniffers.state.peek();
    if (event.kind !== "warmUp" || sniffer.kind !== "ready" || sniffer.sniffer.status === null) return;
    send({ kind: "status", state: sniffer.sniffer.status.state });
  }

  sniffers.onCheckEvent(listen);
  effect(() => {
    const { kind } = sniffers.state.value;
    if (kind === "none") run = null;
    if (kind !== "ready") send({ kind: "end" });
  });
  return {
    state,
    clearing: computed(() => isClearing(state.value)),
    purge: (cleanAir) => {
      send({ kind: "purge", cleanAir });
      void purge();
    },
    end: () => {
      run = null;
      send({ kind: "end" });
    },
  };
}
