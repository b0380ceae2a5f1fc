/** Teaching in the worker, and putting an offered nose beside the one in use. */
import type { ReadonlySignal, Signal } from "@preact/signals";
import type { OfferSource, TeachProblem, TeachState } from "../../flows/teachState.js";
import type { Nose } from "../../nose/nose.js";
import type { GroupComparison } from "../../nose/report.js";
import type { TeachFailure } from "../../worker/protocol.js";
import type { TeachClient } from "../../worker/teachClient.js";
import { nowIso, type Ports } from "../ports.js";

/** Reading noses and judging sniffs, in a piece that the first screen does not wait for. */

export interface Teaching {
  /** Teaches anew on all samples, or brings the nose in use up to date with the fresh ones. */
  teach(name: string, how: "anew" | "refresh"): Promise<void>;
  /** Offers a nose that is kept already, beside the one in use. A comparison that fails is left out. */
  offer(nose: Nose, source: OfferSource): Promise<void>;
  /** Offers a nose whose comparison is here already. */
  propose(nose: Nose, source: OfferSource, compared: readonly GroupComparison[]): void;
}

/** @param teaching - where it stands; written here, read by the pages */
export function createTeaching(
  ports: Ports,
  client: TeachClient,
  wasmPath: string,
  teaching: Signal<TeachState>,
  current: ReadonlySignal<Nose | null>,
): Teaching {
  const { store, newId } = ports;
  const problem = (value: TeachProblem) => {
    teaching.value = { kind: "problem", problem: value };
  };

  /** Stopped while the samples were still being read: the worker knows nothing of it yet. */
  const isCancelling = () => teaching.value.kind === "teaching" && teaching.value.cancelling;

  function notTaught(failure: TeachFailure): void {
    if (failure.kind === "cancelled") teaching.value = { kind: "idle" };
    else problem(failure);
  }

  async function teach(name: string, how: "anew" | "refresh"): Promise<void> {
    if (teaching.value.kind === "teaching" || teaching.value.kind === "comparing") return;
    const refresh = how === "refresh";
    teaching.value = { kind: "teaching", done: null, stage: "teaching", refresh, cancelling: false };
    const samples = await store.readSamples();
    if (!samples.ok) return problem({ kind: "storage", detail: samples.error.kind });
    if (isCancelling()) return notTaught({ kind: "cancelled" });
    const inUse = current.value;
    const job = { samples: samples.value.samples, seed: ports.nowMs() % 2 ** 32, noseId: newId(), name };
    const taught = await client.teach(
      { ...job, taughtAt: nowIso(ports), wasmPath, inUse, refresh },
      (progress) => {
        const { value } = teaching;
        if (value.kind === "teaching") teaching.value = { ...value, ...progress };
      },
    );
    if (!taught.ok) return notTaught(taught.error);
    const { nose, compared } = taught.value;
    const kept = await store.addNose(nose, newId(), nowIso(ports));
    if (!kept.ok) return problem({ kind: "storage", detail: kept.error.kind });
    propose(nose, refresh ? "refreshed" : "taught", compared);
  }

  function propose(nose: Nose, source: OfferSource, compared: readonly GroupComparison[]): void {
    teaching.value = { kind: "proposed", nose, before: current.value, source, compared };
  }

  async function offer(nose: Nose, source: OfferSource): Promise<void> {
    const before = current.value;
    if (before === null || before.id === nose.id) return propose(nose, source, []);
    teaching.value = { kind: "comparing" };
    const samples = await store.readSamples();
    const compared = await client.compare({
      older: before,
      newer: nose,
      samples: samples.ok ? samples.value.samples : [],
    });
    propose(nose, source, compared.ok ? compared.value : []);
  }

  return { teach, offer, propose };
}
