import { DIETS, INTOLERANCES, type DietProfile } from "../diet/profile.js";
import { FOOD_GROUPS } from "../kernel/groups.js";
import type { Words } from "../text/catalogue.js";
import { groupName, groupsInSentence } from "./groupName.js";
import type { OptionView } from "./plateHomeView.js";

/** Diets, groups to smell for, own words. */
export interface DietFormView {
  readonly title: string;
  readonly back: string;
  readonly text: string;
  readonly diets: { readonly label: string; readonly options: readonly OptionView[]; readonly note: string };
  readonly groups: { readonly label: string; readonly text: string; readonly options: readonly OptionView[] };
  readonly ownWords: { readonly label: string; readonly hint: string; readonly value: string };
}

/**
 * Words of the diet page.
 *
 * @param ownWords - text of the field while it is typed
 * @param smelledFor - groups that are judged for what the person named; empty where nothing was named
 */
export function dietFormView(
  profile: DietProfile,
  ownWords: string,
  smelledFor: readonly string[],
  words: Words<"common" | "you">,
): DietFormView {
  const { you: text } = words.text;
  return {
    title: text.dietTitle,
    back: text.back,
    text: text.dietText,
    diets: {
      label: text.dietTitle,
      options: DIETS.map((id) => ({
        id,
        label: text.dietNames[id],
        chosen: profile.diets.includes(id),
      })),
      note: text.dietNote,
    },
    groups: {
      label: text.groupsTitle,
      text: groupsText(profile, smelledFor, words),
      options: FOOD_GROUPS.map((id) => ({
        id,
        label: groupName(id, words),
        chosen: profile.avoidedGroups.includes(id),
      })),
    },
    ownWords: { label: text.ownWords, hint: text.ownWordsHint, value: ownWords },
  };
}

/** Which are smelled for without being chosen here, so that none looks as if it were left out. */
function groupsText(
  profile: DietProfile,
  smelledFor: readonly string[],
  words: Words<"common" | "you">,
): string {
  const { you: text } = words.text;
  const follow = smelledFor.filter((group) => !profile.avoidedGroups.some((chosen) => chosen === group));
  if (smelledFor.length === 0) return `${text.groupsText} ${text.groupsAll}`;
  if (follow.length === 0) return text.groupsText;
  return `${text.groupsText} ${text.groupsFollow(groupsInSentence(follow, words))}`;
}

/** Intolerances and coeliac disease, kept apart. */
export interface IntoleranceFormView {
  readonly title: string;
  readonly back: string;
  readonly coeliac: {
    readonly title: string;
    readonly text: string;
    readonly label: string;
    readonly on: boolean;
  };
  readonly known: { readonly label: string; readonly text: string; readonly options: readonly OptionView[] };
  readonly own: { readonly label: string; readonly hint: string; readonly value: string };
}

/** Words of that page. `own` is the text of the field while it is typed. */
export function intoleranceFormView(
  profile: DietProfile,
  own: string,
  { text }: Words<"you">,
): IntoleranceFormView {
  const { you } = text;
  return {
    title: you.links.intolerances,
    back: you.back,
    coeliac: {
      title: you.coeliacTitle,
      text: you.coeliacText,
      label: you.coeliac,
      on: profile.coeliac,
    },
    known: {
      label: you.intolerancesTitle,
      text: you.intolerancesText,
      options: INTOLERANCES.map((id) => ({
        id,
        label: you.intoleranceNames[id] ?? id,
        chosen: profile.intolerances.includes(id),
      })),
    },
    own: { label: you.intoleranceOwn, hint: you.intoleranceOwnHint, value: own },
  };
}

/** One entry a line, without empty ones and without repeats. */
export const linesOf = (typed: string): string[] => [
  ...new Set(
    typed
      .split("\n")
      .map((line) => line.trim())
      .filter((line) => line !== ""),
  ),
];
