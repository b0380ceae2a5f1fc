import type { Jurisdiction, JurisdictionId } from "../diet/jurisdiction.js";
import { JURISDICTIONS } from "../diet/jurisdiction.js";
import { ACCEPTED_MISS_RATES, THEMES, type Theme } from "../flows/preferences.js";
import type { GroupReport } from "../nose/report.js";
import { clopperPearsonUpper, trialsToShow } from "../stats/proportionInterval.js";
import { LANGUAGES, type Words } from "../text/catalogue.js";
import { numberText, percentText, shortDayText } from "../text/formats.js";
import { groupName } from "./groupName.js";
import type { OptionView } from "./plateHomeView.js";
import { sourceText } from "./sourceText.js";

/** Legal list, appearance, language. */
export interface SettingsView {
  readonly title: string;
  readonly back: string;
  readonly jurisdiction: {
    readonly label: string;
    readonly hint: string;
    readonly options: readonly OptionView[];
    readonly source: readonly string[];
  };
  readonly theme: { readonly label: string; readonly options: readonly OptionView[] };
  readonly language: { readonly label: string; readonly options: readonly OptionView[] };
  readonly vibration: { readonly label: string; readonly hint: string; readonly on: boolean };
}

/** The language option that follows the browser. */
export const AUTO_LANGUAGE = "auto";

export interface SettingsState {
  readonly jurisdiction: JurisdictionId;
  /** The list itself, once the tables are loaded. */
  readonly list: Jurisdiction | null;
  readonly theme: Theme;
  /** BCP 47 tag; null: as the browser prefers. */
  readonly language: string | null;
  /** Does the phone buzz when a phase of a check changes? */
  readonly vibration: boolean;
}

/** Words of the settings page. */
export function settingsView(state: SettingsState, words: Words<"you">): SettingsView {
  const { you: text } = words.text;
  const { list } = state;
  const inWords = (source: string) => sourceText(source, words.formats);
  return {
    title: text.settingsTitle,
    back: text.back,
    jurisdiction: {
      label: text.jurisdictionTitle,
      hint: text.jurisdictionText,
      options: JURISDICTIONS.map((id) => ({
        id,
        label: text.jurisdictions[id],
        chosen: id === state.jurisdiction,
      })),
      source:
        list === null
          ? []
          : [
              text.jurisdictionSource(inWords(list.instrument), inWords(list.date)),
              text.jurisdictionChecked(shortDayText(list.checkedOn, { ...words.formats, timeZone: "UTC" })),
            ],
    },
    theme: {
      label: text.appearanceTitle,
      options: THEMES.map((id) => ({ id, label: text.themes[id], chosen: id === state.theme })),
    },
    vibration: { label: text.vibration, hint: text.vibrationHint, on: state.vibration },
    language: {
      label: text.languageTitle,
      options: [
        { id: AUTO_LANGUAGE, label: text.languageAuto, chosen: state.language === null },
        ...LANGUAGES.map(({ id, name }) => ({ id, label: name, chosen: id === state.language })),
      ],
    },
  };
}

/** The accepted miss rate, with what each takes and what the nose has shown. */
export interface MissRateView {
  readonly title: string;
  readonly back: string;
  readonly text: string;
  readonly options: readonly OptionView[];
  readonly shown: readonly string[];
}

/** Words of the miss rate page. `groups` is the report of the nose in use; empty without one. */
export function missRateView(
  acceptedMissRate: number,
  groups: readonly GroupReport[],
  words: Words<"common" | "you">,
): MissRateView {
  const { you: text } = words.text;
  const whole = (value: number) => numberText(value, words.formats);
  const percent = (fraction: number) => percentText(fraction, words.formats, 1);
  const rates = [...new Set([...ACCEPTED_MISS_RATES, acceptedMissRate])].sort((a, b) => b - a);
  return {
    title: text.missRateTitle,
    back: text.back,
    text: text.missRateText,
    options: rates.map((rate) => ({
      id: String(rate),
      label: text.missRateOption(percent(rate), whole(trialsToShow(rate))),
      chosen: rate === acceptedMissRate,
    })),
    shown: groups.flatMap(({ group, sensitivity }) => {
      if (sensitivity === null || sensitivity.trials === 0) return [];
      const misses = sensitivity.trials - sensitivity.events;
      const upper = clopperPearsonUpper(misses, sensitivity.trials);
      return [
        text.missRateShown(groupName(group, words), whole(misses), whole(sensitivity.trials), percent(upper)),
      ];
    }),
  };
}
