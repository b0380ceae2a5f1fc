/** Traces of the connected sniffer, gathered from the first look at them until the app is closed. */
import type { SnifferLayout } from "../../profile/layout.js";
import { createTraceRing, type TraceRing } from "../../sniff/traceRing.js";
import type { SnifferControl } from "../snifferControl.js";

export interface Traces {
  ring(): TraceRing | null;
  layout(): SnifferLayout | null;
  /** Told of each sweep; the answer ends it. */
  onSweep(listener: () => void): () => void;
}

const gathered = new WeakMap<SnifferControl, Traces>();

export function tracesOf(sniffers: SnifferControl): Traces {
  const known = gathered.get(sniffers) ?? gather(sniffers);
  gathered.set(sniffers, known);
  return known;
}

function gather(sniffers: SnifferControl): Traces {
  const listeners = new Set<() => void>();
  let ring: TraceRing | null = null;
  let layout: SnifferLayout | null = null;
  sniffers.onCheckEvent((event) => {
    const { value } = sniffers.state;
    if (event.kind !== "sweep" || value.kind !== "ready") return;
    const now = value.sniffer.layout;
    if (ring === null || now.snifferId !== layout?.snifferId || ring.channels !== now.channels.length) {
      ring = createTraceRing(now.channels.length);
      layout = now;
    }
    ring.push(event.sweep.atMs, event.sweep.ohm);
    listeners.forEach((listen) => listen());
  });
  return {
    ring: () => ring,
    layout: () => layout,
    onSweep: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}
