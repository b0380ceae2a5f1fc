/** Reads the tree of `data/substances.ts`: kinds, groups, questions. */
import type { FoodGroup } from "../kernel/groups.js";
import type { QuestionId } from "./data/questions.js";
import { SUBSTANCES, type SubstanceId } from "./data/substances.js";

interface Substance {
  readonly id: SubstanceId;
  readonly parent: SubstanceId | null;
  readonly group?: FoodGroup;
  readonly ask?: QuestionId;
  readonly allergen?: true;
  readonly en: string;
  readonly de: string;
}

const byId: ReadonlyMap<string, Substance> = new Map(
  SUBSTANCES.map((row): [string, Substance] => [row.id, row]),
);

/** The row of a substance, or undefined for a word that is none. */
export const substanceOf = (id: string): Substance | undefined => byId.get(id);

/** The substance, its parent and so on up, nearest first. */
export function lineageOf(id: SubstanceId): SubstanceId[] {
  const line: SubstanceId[] = [];
  for (
    let row = byId.get(id);
    row !== undefined;
    row = row.parent === null ? undefined : byId.get(row.parent)
  ) {
    line.push(row.id);
  }
  return line;
}

/** Is `id` the substance `ancestor`, or a kind of it? */
export const isKindOf = (id: SubstanceId, ancestor: SubstanceId): boolean => lineageOf(id).includes(ancestor);

const firstUp = <T>(id: SubstanceId, pick: (row: Substance) => T | undefined): T | undefined => {
  for (const step of lineageOf(id)) {
    const row = byId.get(step);
    const found = row === undefined ? undefined : pick(row);
    if (found !== undefined) return found;
  }
  return undefined;
};

/** The food group a sniff would be judged for, or undefined: most substances have no smell of their own. */
export const groupOf = (id: SubstanceId): FoodGroup | undefined => firstUp(id, (row) => row.group);

/** What to ask the kitchen about it. */
export const questionOf = (id: SubstanceId): QuestionId => firstUp(id, (row) => row.ask) ?? "label";
