/** What the person can choose, and what holds until they have. */
import { emptyProfile, type DietProfile } from "../diet/profile.js";

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
  /** Buzz when a phase of a check changes; null: as the phone's wish for motion says. */
  readonly vibration: boolean | null;
  /** The demo data was taken away: it is not put in place again. */
  readonly demoDropped: boolean;
}

export const DEFAULT_PREFERENCES: Preferences = {
  profile: emptyProfile("EU"),
  acceptedMissRate: USUAL_ACCEPTED_MISS_RATE,
  theme: "system",
  language: null,
  vibration: null,
  demoDropped: false,
};
