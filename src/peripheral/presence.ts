/** Is a phone connected? BlueZ does not say it outright; it is pieced together from what BlueZ does say. */

export interface Presence {
  /** Devices that read or wrote here and are still connected, by their D-Bus paths. */
  readonly devices: ReadonlySet<string>;
  /** Somebody is subscribed, of whom no device is known. */
  readonly listening: boolean;
  /** Since when nobody is there, in milliseconds; null while somebody is. */
  readonly aloneSinceMs: number | null;
}

export type PresenceEvent =
  | { readonly kind: "asked"; readonly device: string | null } // it read or wrote; null: BlueZ did not say who
  | { readonly kind: "listening"; readonly on: boolean } // it subscribed to sweeps, or the last subscriber went
  | { readonly kind: "disconnected"; readonly device: string }
  | { readonly kind: "adapterGone" };

/** How long a run goes on without a connection. PROFILE.md section 2. */
export const RUN_OUTLIVES_MS = 60_000;

export const NOBODY: Presence = { devices: new Set(), listening: false, aloneSinceMs: 0 };

export function stepPresence(presence: Presence, nowMs: number, event: PresenceEvent): Presence {
  const next = apply(presence, event);
  const alone = next.devices.size === 0 && !next.listening;
  return { ...next, aloneSinceMs: alone ? (presence.aloneSinceMs ?? nowMs) : null };
}

/** Has nobody been there for longer than a run outlives its connection? */
export function isAbandoned({ aloneSinceMs }: Presence, nowMs: number): boolean {
  return aloneSinceMs !== null && nowMs - aloneSinceMs >= RUN_OUTLIVES_MS;
}

function apply(presence: Presence, event: PresenceEvent): Presence {
  switch (event.kind) {
    case "asked":
      if (event.device === null) return presence;
      return { ...presence, devices: new Set([...presence.devices, event.device]) };
    case "listening":
      return { ...presence, listening: event.on };
    case "disconnected": {
      if (!presence.devices.has(event.device)) return presence;
      const devices = new Set([...presence.devices].filter((device) => device !== event.device));
      // A bonded phone stays subscribed in BlueZ's books after it left; with the last one gone, nobody listens.
      return { ...presence, devices, listening: presence.listening && devices.size > 0 };
    }
    case "adapterGone":
      return { ...presence, devices: new Set(), listening: false };
  }
}
