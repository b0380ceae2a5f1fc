/** What the person chose, out of what the store kept: every part is checked, and a part that is missing has a default. */
import * as v from "valibot";
import { JURISDICTIONS } from "../diet/jurisdiction.js";
import { DIETS, emptyProfile, SEVERITIES, type DietProfile } from "../diet/profile.js";
import { FOOD_GROUPS } from "../kernel/groups.js";

/** How often, at most, a present group may be called *not smelled*, unless the person says otherwise. */
export const USUAL_ACCEPTED_MISS_RATE = 0.1;
/** What can be chosen: 29, 59 and 299 plates without a miss would show them (Clopper-Pearson, one-sided 95 %). */
export const ACCEPTED_MISS_RATES = [0.1, 0.05, 0.01] as const;

export const THEMES = ["system", "light", "dark"] as const;
export type Theme = (typeof THEMES)[number];

export interface Preferences {
  readonly profile: DietProfile;
  readonly acceptedMissRate: number;
  readonly theme: Theme;
  /** BCP 47 tag; null: as the browser prefers. */
  readonly language: string | null;
  /** The demo data was taken away: it is not put in place again. */
  readonly demoDropped: boolean;
}

/** Strict on purpose: what is there and cannot be read is told, never passed over. What is not there was never said. */
const profileSchema = v.object({
  diets: v.optional(v.array(v.picklist(DIETS)), []),
  avoidedGroups: v.optional(v.array(v.picklist(FOOD_GROUPS)), []),
  allergies: v.array(
    v.object({
      allergen: v.string(),
      severity: v.fallback(v.picklist(SEVERITIES), "unknown"),
      note: v.fallback(v.string(), ""),
    }),
  ),
  intolerances: v.optional(v.array(v.string()), []),
  coeliac: v.optional(v.boolean(), false),
  ownWords: v.optional(v.array(v.string()), []),
  jurisdiction: v.fallback(v.picklist(JURISDICTIONS), "EU"),
});

const preferencesSchema = v.object({
  acceptedMissRate: v.fallback(v.pipe(v.number(), v.gtValue(0), v.ltValue(1)), USUAL_ACCEPTED_MISS_RATE),
  theme: v.fallback(v.picklist(THEMES), "system"),
  language: v.fallback(v.nullable(v.string()), null),
  demoDropped: v.fallback(v.boolean(), false),
});

/** What was kept, and whether the diet in it could not be read: a lost allergy must be told, never passed over. */
export interface ReadPreferences {
  readonly preferences: Preferences;
  readonly profileLost: boolean;
}

/** Reads kept settings, whatever they are. Never throws. */
export function readPreferences(settings: { readonly diet?: unknown }): ReadPreferences {
  const profile = v.safeParse(profileSchema, settings.diet);
  return {
    preferences: {
      ...v.parse(preferencesSchema, settings),
      profile: profile.success ? profile.output : emptyProfile("EU"),
    },
    profileLost: settings.diet !== undefined && !profile.success,
  };
}
