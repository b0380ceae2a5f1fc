/** Sniffers met before: what the phone keeps of them, joined with what the browser can connect to without its chooser. */

/** What the phone keeps of one. */
export interface SnifferNote {
  readonly id: string;
  readonly name: string;
  /** ISO 8601 instant. */
  readonly lastSeenAt: string;
}

/** What the browser remembers of one. */
export interface RememberedDevice {
  readonly id: string;
  readonly name: string;
}

export interface KnownSniffer {
  /** null: the browser remembers the device, but it was never opened. */
  readonly snifferId: string | null;
  /** null: the browser does not remember it; it must be chosen again. */
  readonly deviceId: string | null;
  readonly name: string;
  /** ISO 8601 instant; null if it was never opened. */
  readonly lastSeenAt: string | null;
}

/**
 * One list, last used first; those never opened come last.
 *
 * @param snifferIds - sniffer id by device id
 */
export function knownSniffers(
  notes: readonly SnifferNote[],
  devices: readonly RememberedDevice[],
  snifferIds: Readonly<Record<string, string>>,
): KnownSniffer[] {
  const byDevice = devices.map(({ id, name }): KnownSniffer => {
    const note = notes.find((known) => known.id === snifferIds[id]);
    const known = note?.name ?? name;
    return { snifferId: note?.id ?? null, deviceId: id, name: known, lastSeenAt: note?.lastSeenAt ?? null };
  });
  const rest = notes
    .filter(({ id }) => !byDevice.some(({ snifferId }) => snifferId === id))
    .map(({ id, name, lastSeenAt }): KnownSniffer => ({ snifferId: id, deviceId: null, name, lastSeenAt }));
  const usedAt = ({ lastSeenAt }: KnownSniffer) => (lastSeenAt === null ? 0 : Date.parse(lastSeenAt));
  return [...byDevice, ...rest].sort((one, other) => usedAt(other) - usedAt(one));
}
