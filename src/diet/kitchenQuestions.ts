import type { Caution } from "./caution.js";
import type { QuestionId } from "./data/questions.js";
import type { Level } from "./level.js";
import type { ItemKind } from "./profileItems.js";

/** A table has patience for two or three questions. */
const MOST_QUESTIONS = 3;

const KIND_WEIGHT: Readonly<Record<ItemKind, number>> = {
  allergy: 100,
  coeliac: 80,
  intolerance: 10,
  diet: 6,
  group: 5,
  own: 5,
};

/** An answer is worth most where the word leaves it open; what is in by name needs no question. */
const LEVEL_WEIGHT: Readonly<Record<Level, number>> = {
  contains: 1,
  oftenContains: 4,
  mayContain: 3,
  originUnclear: 2,
};

/**
 * The two or three questions that would tell most about these cautions, best first. With an allergy or coeliac
 * disease among them, cross-contact and the written list are asked for beside the gravest ingredient.
 */
export function kitchenQuestions(cautions: readonly Caution[], limit: number = MOST_QUESTIONS): QuestionId[] {
  const weights = new Map<QuestionId, number>();
  for (const { ask, item, level, namesake } of cautions) {
    const weight = KIND_WEIGHT[item.kind] * LEVEL_WEIGHT[level] * (namesake ? 0.1 : 1);
    weights.set(ask, (weights.get(ask) ?? 0) + weight);
  }
  const ranked = [...weights].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([ask]) => ask);
  const grave = cautions.some(({ item }) => item.kind === "allergy" || item.kind === "coeliac");
  const standing: readonly QuestionId[] = grave ? ["label", "crossContact"] : [];
  const [first, ...rest] = ranked;
  const order = first === undefined ? [] : [first, ...standing, ...rest];
  return [...new Set(order)].slice(0, Math.max(0, limit));
}
