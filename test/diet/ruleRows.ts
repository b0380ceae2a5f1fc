import {
  COELIAC_RULES,
  DIET_RULES,
  GROUP_RULES,
  INTOLERANCE_RULES,
  PAIR_RULES,
} from "../../src/diet/data/dietRules.js";
import type { Provenance } from "../../src/diet/provenance.js";

/** Every row of the rules of diets, intolerances and groups, with something to find it by. */
export const RULE_ROWS: readonly (readonly [string, Provenance])[] = [
  ...Object.entries(DIET_RULES).flatMap(([id, rules]) => rules.map((rule) => [`diet ${id}`, rule] as const)),
  ...Object.entries(INTOLERANCE_RULES).flatMap(([id, rules]) =>
    rules.map((rule) => [`intolerance ${id}`, rule] as const),
  ),
  ...Object.entries(GROUP_RULES).flatMap(([id, rules]) =>
    rules.map((rule) => [`group ${id}`, rule] as const),
  ),
  ...COELIAC_RULES.map((rule) => ["coeliac", rule] as const),
  ...PAIR_RULES.map((rule) => [`pair ${rule.id}`, rule] as const),
];
