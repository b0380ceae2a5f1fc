/** Changes to what the person chose: shown at once, kept in order, and taken back on the screen if the phone refuses. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import type { DietProfile } from "../../diet/profile.js";
import type { Preferences } from "../../flows/preferences.js";
import type { StoreError } from "../../store/storeError.js";
import type { PreferencesControl } from "../preferencesControl.js";

export interface PreferencesEditor {
  /** What is kept, with what is on its way to be kept. */
  readonly shown: ReadonlySignal<Preferences>;
  /** true once this change is kept; false if it was refused, and then nothing of it is shown any more. */
  edit(patch: Partial<Preferences>): Promise<boolean>;
  /** As `edit`, from the profile as it is shown: two quick changes never lose one another. */
  editProfile(change: (profile: DietProfile) => DietProfile): Promise<boolean>;
}

export function createPreferencesEditor(
  preferences: Pick<PreferencesControl, "preferences" | "change">,
  onRefused: (error: StoreError) => void,
): PreferencesEditor {
  const pending = signal<Partial<Preferences> | null>(null);
  const shown = computed(() => ({ ...preferences.preferences.value, ...pending.value }));
  let writing: Promise<boolean> | null = null;

  /** One write at a time; what was changed meanwhile goes with the next. */
  async function writeAll(): Promise<boolean> {
    while (pending.value !== null) {
      const wanted = pending.value;
      const kept = await preferences.change(wanted);
      if (!kept.ok) {
        pending.value = null;
        onRefused(kept.error);
        return false;
      }
      if (pending.value === wanted) pending.value = null;
    }
    return true;
  }

  function edit(patch: Partial<Preferences>): Promise<boolean> {
    pending.value = { ...pending.value, ...patch };
    writing ??= writeAll().finally(() => {
      writing = null;
    });
    return writing;
  }

  return {
    shown,
    edit,
    editProfile: (change) => edit({ profile: change(shown.value.profile) }),
  };
}
