import type { PlateSuggestion } from "../meals/plateSuggestions.js";
import type { Words } from "../text/catalogue.js";
import { numberText, percentText, shortDayText } from "../text/formats.js";
import { groupsInSentence } from "./groupName.js";

/** What would help the nose most. */
export interface SuggestionsView {
  readonly title: string;
  /** What is left out of the counting; null where nothing is. */
  readonly note: string | null;
  readonly items: readonly SuggestionView[];
}

export interface SuggestionView {
  readonly id: string;
  readonly text: string;
  readonly reason: string;
  /** The meal to open; null where there is none. */
  readonly mealId: string | null;
}

type SuggestionWords = Words<"common" | "meals" | "nose">;

/** So many at once: more would be a list of duties. */
const AT_ONCE = 4;

/**
 * Words of the suggestions; null where there is nothing to suggest.
 *
 * @param hasPractice - there are practice samples, which are not counted here
 */
export function suggestionsView(
  suggestions: readonly PlateSuggestion[],
  hasPractice: boolean,
  words: SuggestionWords,
  atOnce = AT_ONCE,
): SuggestionsView | null {
  if (suggestions.length === 0) return null;
  return {
    title: words.text.nose.suggest.title,
    note: hasPractice ? words.text.nose.suggest.noPractice : null,
    items: suggestions.slice(0, atOnce).map((suggestion) => suggestionView(suggestion, words)),
  };
}

function suggestionView(suggestion: PlateSuggestion, words: SuggestionWords): SuggestionView {
  const id = JSON.stringify(suggestion);
  const mealId = "mealId" in suggestion ? suggestion.mealId : null;
  return { id, mealId, ...wordsOf(suggestion, words) };
}

function wordsOf(suggestion: PlateSuggestion, words: SuggestionWords): { text: string; reason: string } {
  const { suggest: text } = words.text.nose;
  const whole = (value: number) => numberText(value, words.formats);
  const group = (name: string) => groupsInSentence([name], words);
  switch (suggestion.kind) {
    case "keepMeal":
      return { text: text.keepMeal(mealName(suggestion, words)), reason: text.worth[suggestion.worth] };
    case "askMeal":
      return {
        text: text.askMeal(mealName(suggestion, words)),
        reason: text.nearEven(group(suggestion.group), percentText(suggestion.probability, words.formats)),
      };
    case "missRate":
      return {
        text: text.missRate(whole(suggestion.more), group(suggestion.group)),
        reason: text.missed(whole(suggestion.misses), whole(suggestion.trials)),
      };
    case "present":
    case "absent":
      return {
        text: text[suggestion.kind](whole(suggestion.more), group(suggestion.group)),
        reason: text.have(whole(suggestion.have)),
      };
    case "occasions":
      return {
        text: text.occasions(whole(suggestion.more)),
        reason: text.fewOccasions(whole(suggestion.have)),
      };
    case "newDish":
      return { text: text.newDish(suggestion.dish), reason: text.eaten(whole(suggestion.meals)) };
  }
}

function mealName(meal: { readonly dish: string; readonly at: string }, words: SuggestionWords): string {
  const day = shortDayText(meal.at, words.formats);
  return words.text.nose.suggest.meal(meal.dish === "" ? words.text.meals.noDish : meal.dish, day);
}
