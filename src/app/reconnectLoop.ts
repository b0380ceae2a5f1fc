/** Gets a lost sniffer back by itself: the clock, the dice, the page's visibility and the radio around `reconnectFlow`. */
import { computed, effect, signal, untracked, type ReadonlySignal } from "@preact/signals";
import { reconnectFlow, TRY_LIMIT_MS, type ReconnectEvent } from "../flows/reconnectFlow.js";
import type { ReconnectState } from "../flows/reconnectState.js";
import type { SnifferFailure } from "../flows/snifferState.js";
import type { RandomSource } from "../kernel/random.js";
import type { Availability } from "../radio/watchAvailability.js";
import type { SnifferControl } from "./snifferControl.js";

export interface ReconnectParts {
  readonly sniffers: Pick<SnifferControl, "state" | "reconnect">;
  readonly availability: ReadonlySignal<Availability | null>;
  readonly random: RandomSource;
  /** Is the page in sight? Told again at each change. */
  readonly inSight: ReadonlySignal<boolean>;
}

export interface ReconnectLoop {
  readonly state: ReadonlySignal<ReconnectState>;
  /** Until the next try, whole seconds rounded up; null where none is due. */
  readonly secondsLeft: ReadonlySignal<number | null>;
  tryNow(): void;
  giveUp(): void;
}

const COUNT_EVERY_MS = 250;

export function createReconnectLoop(parts: ReconnectParts): ReconnectLoop {
  const { sniffers } = parts;
  const state = signal<ReconnectState>({ kind: "off" });
  const secondsLeft = signal<number | null>(null);
  let counting: ReturnType<typeof setInterval> | undefined;
  let underWay: AbortController | null = null;

  function send(event: ReconnectEvent): void {
    const step = reconnectFlow(state.value, event, performance.now(), parts.random);
    if (step.effect === "breakOff") breakOff();
    state.value = step.state;
    count();
    if (step.effect === "connect") void connect();
  }

  function breakOff(): void {
    const broken = underWay;
    underWay = null;
    broken?.abort();
  }

  function count(): void {
    clearInterval(counting);
    const waiting = state.value;
    if (waiting.kind !== "waiting") {
      secondsLeft.value = null;
      return;
    }
    const look = () => {
      const leftMs = waiting.dueAtMs - performance.now();
      if (leftMs <= 0) return send({ kind: "due" });
      secondsLeft.value = Math.ceil(leftMs / 1000);
    };
    counting = setInterval(look, COUNT_EVERY_MS);
    look();
  }

  async function connect(): Promise<void> {
    const mine = new AbortController();
    underWay = mine;
    const limit = setTimeout(() => mine.abort(), TRY_LIMIT_MS);
    await sniffers.reconnect(mine.signal);
    clearTimeout(limit);
    if (underWay !== mine) return; // broken off
    underWay = null;
    const { value } = sniffers.state;
    if (value.kind === "lost") send({ kind: "failed", mendable: isMendable(value.failure) });
  }

  const needsRadio = computed(() => {
    const { value } = sniffers.state;
    return value.kind === "lost" && !value.sniffer.virtual;
  });
  const hindrance = () => {
    if (!parts.inSight.value) return "hidden";
    return needsRadio.value && parts.availability.value === "unavailable" ? "radioOff" : null;
  };

  const news = computed(() => {
    const { kind } = sniffers.state.value;
    return kind === "lost" ? "lost" : kind === "ready" ? "back" : "over";
  });
  effect(() => {
    const what = news.value;
    const cause = hindrance();
    untracked(() => {
      send({ kind: what });
      send(cause === null ? { kind: "unhindered" } : { kind: "hindered", cause });
    });
  });
  return {
    state,
    secondsLeft,
    tryNow: () => send({ kind: "tryNow" }),
    giveUp: () => send({ kind: "giveUp" }),
  };
}

/** Another try helps where the sniffer did not answer, not where it answered that it is none. */
function isMendable(failure: SnifferFailure | null): boolean {
  return failure === null || failure.kind === "unreachable" || failure.kind === "unexpected";
}
