import { FRESH_PLATES_PER_GROUP, STALE_AFTER_DAYS } from "../nose/refreshAdvice.js";
import type { RefreshNeed } from "../nose/refreshNeed.js";
import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";
import { groupName } from "./groupName.js";

/** Why fresh samples are worthwhile, and how many of which group are still missing. */
export interface RefreshView {
  readonly title: string;
  readonly why: string;
  readonly ask: string;
  readonly missing: readonly string[];
  /** null while there is too little to refresh with. */
  readonly go: string | null;
}

/** Fresh plates without which nothing can be held out. */
export const LEAST_FRESH_PLATES = 2;

/** Words of the advice; null where the nose is fresh enough. */
export function refreshView(need: RefreshNeed, words: Words<"common" | "offer">): RefreshView | null {
  const { advice } = need;
  if (advice.kind === "fresh") return null;
  const { due } = words.text.offer;
  const whole = (value: number) => numberText(value, words.formats);
  return {
    title: due.title,
    why: advice.why === "drift" ? due.drift : due.age(whole(STALE_AFTER_DAYS)),
    ask: due.ask(whole(advice.platesPerGroup)),
    missing: need.groups.map((group) => missingLine(group, words)),
    go: need.freshPlates >= LEAST_FRESH_PLATES ? due.go : null,
  };
}

function missingLine(
  { group, present, absent }: RefreshNeed["groups"][number],
  words: Words<"common" | "offer">,
): string {
  const { due } = words.text.offer;
  const name = groupName(group, words);
  const more = (count: number) => Math.max(0, FRESH_PLATES_PER_GROUP - count);
  const [with_, without] = [more(present), more(absent)];
  const whole = (value: number) => numberText(value, words.formats);
  if (with_ > 0 && without > 0) return due.both(name, whole(with_), whole(without));
  if (with_ > 0) return due.present(name, whole(with_));
  return without > 0 ? due.absent(name, whole(without)) : due.enough(name);
}
