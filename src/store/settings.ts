import * as v from "valibot";
import { instant, parseWith, type Parse } from "../meals/parseWith.js";

/** What the person chose. A key that is missing has never been set: the app's default holds. */
export interface Settings {
  /** From `diet/`; checked there. */
  readonly diet?: unknown;
  /** A fraction between 0 and 1. */
  readonly acceptedMissRate?: number | undefined;
  /** BCP 47 tag, such as "en"; null: as the browser prefers. */
  readonly language?: string | null | undefined;
  readonly theme?: "system" | "light" | "dark" | undefined;
  /** "virtual", or the id of a known sniffer. */
  readonly snifferId?: string | undefined;
  /** Such as "EU"; names the legal allergen list. */
  readonly jurisdiction?: string | undefined;
  /** ISO 8601 instant; null before the first change. */
  readonly changedAt: string | null;
  readonly [key: string]: unknown;
}

const settingsSchema = v.looseObject({
  diet: v.optional(v.unknown()),
  acceptedMissRate: v.optional(
    v.pipe(v.number(), v.gtValue(0, "must be between 0 and 1"), v.ltValue(1, "must be between 0 and 1")),
  ),
  language: v.optional(v.nullable(v.string())),
  theme: v.optional(v.picklist(["system", "light", "dark"])),
  snifferId: v.optional(v.string()),
  jurisdiction: v.optional(v.string()),
  changedAt: v.nullable(instant),
});

/** Before anything was chosen. */
export const NO_SETTINGS: Settings = { changedAt: null };

/** Checks a value that claims to be settings. */
export const parseSettings: Parse<Settings> = parseWith(settingsSchema);
