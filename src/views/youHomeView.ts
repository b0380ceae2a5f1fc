import type { DietProfile } from "../diet/profile.js";
import type { Words } from "../text/catalogue.js";
import { listText, percentText } from "../text/formats.js";
import { groupsInSentence } from "./groupName.js";

export const YOU_PAGES = [
  "diet",
  "allergies",
  "intolerances",
  "missRate",
  "settings",
  "card",
  "data",
  "install",
  "about",
  "glossary",
] as const;
export type YouPage = (typeof YOU_PAGES)[number];

/** The You place: who you are in a few lines, and the pages behind. */
export interface YouHomeView {
  readonly title: string;
  readonly text: string;
  readonly profileLost: string | null;
  readonly links: readonly { readonly id: YouPage; readonly label: string; readonly text: string }[];
}

export interface YouHomeState {
  readonly profile: DietProfile;
  /** Names of the allergens, in the person's language. */
  readonly allergenNames: readonly string[];
  /** Groups that are judged. */
  readonly groups: readonly string[];
  readonly profileLost: boolean;
  readonly acceptedMissRate: number;
}

type YouWords = Words<"common" | "you" | "trouble">;

/** Words of the You place. */
export function youHomeView(state: YouHomeState, words: YouWords): YouHomeView {
  const { you: text } = words.text;
  return {
    title: text.title,
    text: text.text,
    profileLost: state.profileLost ? words.text.trouble.profileLost : null,
    links: YOU_PAGES.map((id) => ({ id, label: text.links[id], text: linkText(id, state, words) })),
  };
}

function linkText(page: YouPage, state: YouHomeState, words: YouWords): string {
  const { you: text } = words.text;
  const { profile } = state;
  const list = (items: readonly string[]) =>
    items.length === 0 ? text.none : listText(items, words.formats);
  switch (page) {
    case "diet":
      return dietLine(state, words);
    case "allergies":
      return list(state.allergenNames);
    case "intolerances":
      return list([
        ...(profile.coeliac ? [text.coeliacTitle] : []),
        ...profile.intolerances.map((name) => text.intoleranceNames[name] ?? name),
      ]);
    case "missRate":
      return percentText(state.acceptedMissRate, words.formats, 1);
    case "settings":
      return text.jurisdictions[profile.jurisdiction];
    default:
      return text.linkTexts[page];
  }
}

function dietLine({ profile, groups }: YouHomeState, words: YouWords): string {
  const { you: text } = words.text;
  const diets = profile.diets.map((diet) => text.dietNames[diet]);
  const smelled = groups.length === 0 ? [] : [text.smelledFor(groupsInSentence(groups, words))];
  const parts = [...diets, ...smelled];
  return parts.length === 0 ? text.none : parts.join(" · ");
}
