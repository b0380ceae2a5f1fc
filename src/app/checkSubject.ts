import type { CheckSubject } from "../flows/checkState.js";
import type { ConnectedSniffer } from "../flows/snifferState.js";
import type { Nose } from "../nose/nose.js";
import { nowIso, type Ports } from "./ports.js";

/** Time limit over the plate while there is no nose to set one. */
const USUAL_HEADSPACE_MS = 90_000;

/** A fresh plate under the connected sniffer; an occasion is one calendar day. */
export function checkSubject(
  ports: Ports,
  sniffer: ConnectedSniffer,
  dish: string,
  nose: Nose | null,
): CheckSubject {
  const takenAt = nowIso(ports);
  return {
    sniffId: ports.newId(),
    plate: ports.newId(),
    occasion: takenAt.slice(0, 10),
    dish: dish.trim(),
    takenAt,
    snifferId: sniffer.layout.snifferId,
    channels: sniffer.layout.channels,
    headspaceLimitMs: nose?.horizons.at(-1)?.fromMs ?? USUAL_HEADSPACE_MS,
  };
}
