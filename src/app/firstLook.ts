/**
 * What the first screen looked like last. It is kept apart from the data, so that the next start draws the same screen
 * before the store is open, and nothing on it moves or changes when the store's own word comes.
 */
import { effect } from "@preact/signals";
import { THEMES } from "../flows/preferences.js";
import { inStorage } from "./inStorage.js";
import type { Look } from "./preferencesControl.js";

const KEY = "nidor-first-look";

export interface FirstLook extends Look {
  /** The person has said what they avoid. */
  readonly hasProfile: boolean;
  /** ISO 8601 instant of a sniff that was cut short; null if there is none. */
  readonly draftAt: string | null;
  /** Sniffers that could be connected to without the chooser. */
  readonly known: readonly { readonly deviceId: string; readonly name: string }[];
  /** Name of the sniffer used last, where the browser has forgotten it. */
  readonly forgotten: string | null;
  /** The browser said that its radio is off, missing or forbidden. */
  readonly radioOff: boolean;
}

export function keptLook(): FirstLook {
  const kept = readKept();
  const theme = THEMES.find((known) => known === kept["theme"]) ?? "system";
  return {
    theme,
    language: textOrNull(kept["language"]),
    hasProfile: kept["hasProfile"] !== false,
    draftAt: textOrNull(kept["draftAt"]),
    known: knownIn(kept["known"]),
    forgotten: textOrNull(kept["forgotten"]),
    radioOff: kept["radioOff"] === true,
  };
}

/** Keeps the look whenever it changes. */
export function keepLook(look: () => FirstLook): () => void {
  return effect(() => {
    const text = JSON.stringify(look());
    inStorage((storage) => storage.setItem(KEY, text));
  });
}

export const forgetLook = (): void => void inStorage((storage) => storage.removeItem(KEY));

function readKept(): Readonly<Record<string, unknown>> {
  try {
    const kept: unknown = JSON.parse(inStorage((storage) => storage.getItem(KEY)) ?? "{}");
    return typeof kept === "object" && kept !== null ? (kept as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

const textOrNull = (value: unknown) => (typeof value === "string" ? value : null);

function knownIn(kept: unknown): FirstLook["known"] {
  if (!Array.isArray(kept)) return [];
  return kept.flatMap((one: Partial<Record<string, unknown>> | null) => {
    const { deviceId, name } = one ?? {};
    return typeof deviceId === "string" && typeof name === "string" ? [{ deviceId, name }] : [];
  });
}
