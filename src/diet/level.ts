/** How strongly a word speaks for a substance, strongest first. */
export const LEVELS = ["contains", "oftenContains", "mayContain", "originUnclear"] as const;
export type Level = (typeof LEVELS)[number];

/** 0 is the strongest. */
export const levelRank = (level: Level): number => LEVELS.indexOf(level);

/** The weaker of the two: a limit never raises a level. */
export const weakerLevel = (left: Level, right: Level): Level =>
  levelRank(left) >= levelRank(right) ? left : right;
