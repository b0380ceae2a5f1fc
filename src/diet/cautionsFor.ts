import type { Caution, ClaimNote, Trigger } from "./caution.js";
import { claimsApart, claimsIn, type Claim } from "./claimsIn.js";
import { PAIR_RULES } from "./data/dietRules.js";
import type { QuestionId } from "./data/questions.js";
import type { SubstanceId } from "./data/substances.js";
import { findMentions, type Mention } from "./findMentions.js";
import type { KnowledgeRow } from "./knowledgeRow.js";
import { levelRank, weakerLevel, type Level } from "./level.js";
import { LEXICON } from "./lexicon.js";
import { ownMentions } from "./ownMentions.js";
import type { DietProfile } from "./profile.js";
import { profileItems, type ItemKind, type ProfileItem, type Touch } from "./profileItems.js";
import { isKindOf, questionOf } from "./substanceTree.js";
import { wordsOf, type Word } from "./wordsOf.js";

/** What to look at: a dish name, words of a menu or a pasted list of ingredients, German or English. */
export interface CautionQuery {
  readonly text: string;
  /** Claims given apart from the text, such as "vegan" beside a symbol. */
  readonly claims?: readonly string[];
  readonly profile: DietProfile;
}

/** One substance that one place in the text speaks for. */
interface Fact {
  readonly row: KnowledgeRow;
  readonly mention: Mention;
  readonly substance: SubstanceId;
  readonly level: Level;
}

const BY_LEVEL = [
  ["contains", "contains"],
  ["often", "oftenContains"],
  ["may", "mayContain"],
  ["unclear", "originUnclear"],
] as const;

const limitOf = (mention: Mention): Level =>
  mention.namesake
    ? "originUnclear"
    : mention.negated || mention.trace || mention.readAs !== null
      ? "mayContain"
      : "contains";

function factsOf(mention: Mention): Fact[] {
  const row = LEXICON.rows.get(mention.rowId);
  if (row === undefined) return [];
  return BY_LEVEL.flatMap(([list, level]) =>
    row[list].map((substance) => ({ row, mention, substance, level: weakerLevel(level, limitOf(mention)) })),
  );
}

const inScope = (claim: Claim, first: number): boolean =>
  claim.scope === null || (first >= claim.scope.first && first <= claim.scope.last);

function speaksTo(claim: Claim, item: ProfileItem, substance: SubstanceId | null): boolean {
  if (claim.onlyForDiet !== null && item.value !== claim.onlyForDiet) return false;
  const covered = substance !== null && claim.covers.some((cover) => isKindOf(substance, cover));
  return covered || item.about.some((about) => claim.covers.some((cover) => isKindOf(about, cover)));
}

const unique = <T>(list: readonly T[], keyOf: (value: T) => string): T[] => [
  ...new Map(list.map((value) => [keyOf(value), value])).values(),
];

const claimKey = ({ id, word, start }: ClaimNote): string => `${id} ${word} ${String(start)}`;

const noteOf = ({ id, word, start, end }: Claim): ClaimNote => ({ id, word, start, end });

/** Nothing weakens an allergy or coeliac disease; elsewhere a claim turns "contains" into "may contain". */
const claimed = (level: Level, claims: readonly Claim[], item: ProfileItem): Level =>
  !item.strict && claims.some((claim) => claim.weakens) ? weakerLevel(level, "mayContain") : level;

const ROW_MAY_ASK = new Set<QuestionId>(["meat", "fish", "seafood", "fat", "stock"]);

/** A row's own question is the better one for hidden animal sources, and a shared fryer concerns everything. */
function askFor(fact: Fact, item: ProfileItem, touch: Touch): QuestionId {
  const own = questionOf(fact.substance);
  if (item.value === "halal" || item.value === "kosher") {
    if (touch.cap === "originUnclear" && isKindOf(fact.substance, "meat")) return "slaughter";
  }
  const ask = fact.row.ask;
  return ask !== null && (ask === "fryer" || ROW_MAY_ASK.has(own)) ? ask : own;
}

const triggerOf = (words: readonly Word[], first: number, last: number): Trigger => {
  const start = words[first]?.start ?? 0;
  const end = words[last]?.end ?? start;
  return {
    word: words
      .slice(first, last + 1)
      .map((word) => word.raw)
      .join(" "),
    start,
    end,
  };
};

function cautionOf(
  fact: Fact,
  item: ProfileItem,
  words: readonly Word[],
  claims: readonly Claim[],
): Caution[] {
  const touch = item.touch(fact.substance);
  if (touch === null) return [];
  const about = claims.filter(
    (claim) => inScope(claim, fact.mention.first) && speaksTo(claim, item, fact.substance),
  );
  const level = touch.cap === null ? fact.level : weakerLevel(fact.level, touch.cap);
  const { id, note, source, mark } = fact.row;
  return [
    {
      id: `${item.key}/${fact.substance}/${id}`,
      item: { key: item.key, kind: item.kind, value: item.value },
      level: claimed(level, about, item),
      substance: fact.substance,
      triggers: [triggerOf(words, fact.mention.first, fact.mention.last)],
      row: { id, note, source, mark },
      basis: { source: touch.source, mark: touch.mark, legal: touch.legal },
      claims: unique(about.map(noteOf), claimKey),
      namesake: fact.mention.namesake,
      readAs: fact.mention.readAs,
      ask: askFor(fact, item, touch),
    },
  ];
}

function ownCautions(item: ProfileItem, words: readonly Word[], mentions: readonly Mention[]): Caution[] {
  if (item.ownWords === null) return [];
  const negated = new Set(mentions.filter((mention) => mention.negated).map((mention) => mention.first));
  return ownMentions(words, item.ownWords).map(({ first, last }) => ({
    id: `${item.key}/own`,
    item: { key: item.key, kind: item.kind, value: item.value },
    level: negated.has(first) ? "mayContain" : "contains",
    substance: null,
    triggers: [triggerOf(words, first, last)],
    row: null,
    basis: { source: "the user's own word", mark: "common practice", legal: null },
    claims: [],
    namesake: false,
    readAs: null,
    ask: "ownWord",
  }));
}

/** Two things a diet keeps apart, met in one text. */
function pairCautions(
  items: readonly ProfileItem[],
  facts: readonly Fact[],
  words: readonly Word[],
): Caution[] {
  return PAIR_RULES.filter((pair) => items.some((item) => item.key === `diet:${pair.diet}`)).flatMap(
    (pair) => {
      const strongest = pair.substances.map((substance) =>
        facts
          .filter((fact) => isKindOf(fact.substance, substance))
          .sort((a, b) => levelRank(a.level) - levelRank(b.level))
          .at(0),
      );
      const [left, right] = strongest;
      if (left === undefined || right === undefined) return [];
      const weaker = levelRank(left.level) > levelRank(right.level) ? left : right;
      const { id, note, source, mark } = weaker.row;
      const triggers = [left, right].map((fact) => triggerOf(words, fact.mention.first, fact.mention.last));
      return [
        {
          id: `diet:${pair.diet}/${pair.id}`,
          item: { key: `diet:${pair.diet}`, kind: "diet" as const, value: pair.diet },
          level: weaker.level,
          substance: weaker.substance,
          triggers,
          row: { id, note, source, mark },
          basis: { source: pair.source, mark: pair.mark, legal: null },
          claims: [],
          namesake: weaker.mention.namesake,
          readAs: weaker.mention.readAs,
          ask: questionOf(weaker.substance),
        },
      ];
    },
  );
}

function merge(left: Caution, right: Caution): Caution {
  const [strong, weak] = levelRank(right.level) < levelRank(left.level) ? [right, left] : [left, right];
  return {
    ...strong,
    triggers: unique(
      [...strong.triggers, ...weak.triggers],
      (trigger) => `${String(trigger.start)}-${String(trigger.end)}`,
    ),
    claims: unique([...strong.claims, ...weak.claims], claimKey),
    namesake: strong.namesake && weak.namesake,
    readAs: strong.readAs === null || weak.readAs === null ? null : strong.readAs,
  };
}

const KIND_ORDER: readonly ItemKind[] = ["allergy", "coeliac", "intolerance", "diet", "group", "own"];

const byGravity = (a: Caution, b: Caution): number =>
  KIND_ORDER.indexOf(a.item.kind) - KIND_ORDER.indexOf(b.item.kind) ||
  levelRank(a.level) - levelRank(b.level) ||
  (a.triggers[0]?.start ?? 0) - (b.triggers[0]?.start ?? 0) ||
  a.id.localeCompare(b.id, "en");

/**
 * What to know about a dish before eating it, gravest first: allergies, then the rest, each by level.
 *
 * One way only: more words, more ingredients or more possible dishes never take an `id` off the list, and on a new
 * line they never lower a level. A claim ("vegan", "without nuts") is noted as claimed; it lowers a level only where
 * no allergy and no coeliac disease is at stake. An empty list means that no word was recognised, nothing else.
 */
export function cautionsFor({ text, claims = [], profile }: CautionQuery): Caution[] {
  const words = wordsOf(text);
  const mentions = findMentions(words);
  const facts = mentions.flatMap(factsOf);
  const said = [...claimsIn(words, mentions), ...claimsApart(claims)];
  const items = profileItems(profile);
  const all = [
    ...items.flatMap((item) => facts.flatMap((fact) => cautionOf(fact, item, words, said))),
    ...items.flatMap((item) => ownCautions(item, words, mentions)),
    ...pairCautions(items, facts, words),
  ];
  const merged = new Map<string, Caution>();
  for (const caution of all) {
    const known = merged.get(caution.id);
    merged.set(caution.id, known === undefined ? caution : merge(known, caution));
  }
  return [...merged.values()].sort(byGravity);
}
