/** What the person chose, out of what the store kept: every part is checked, and a part that is missing has a default. */
import * as v from "valibot";
import { JURISDICTIONS } from "../diet/jurisdiction.js";
import { DIETS, SEVERITIES } from "../diet/profile.js";
import { FOOD_GROUPS } from "../kernel/groups.js";
import { DEFAULT_PREFERENCES, THEMES, USUAL_ACCEPTED_MISS_RATE, type Preferences } from "./preferences.js";

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
  vibration: v.fallback(v.nullable(v.boolean()), null),
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
      profile: profile.success ? profile.output : DEFAULT_PREFERENCES.profile,
    },
    profileLost: settings.diet !== undefined && !profile.success,
  };
}
