/** The parts of a nose as plain numbers. All take the standardised feature vector of one horizon. */

/** One linear log-odds for each group: shrinkage discriminant or logistic regression. */
export interface LinearModel {
  /** Shape [groups, features]. */
  readonly weights: Float32Array;
  /** Shape [groups]. */
  readonly intercepts: Float32Array;
}

/** Nets of one hidden tanh layer each; their log-odds are averaged. */
export interface NetEnsemble {
  readonly members: number;
  readonly hidden: number;
  /** Shape [members, features, hidden]. */
  readonly inWeights: Float32Array;
  /** Shape [members, hidden]. */
  readonly inBias: Float32Array;
  /** Shape [members, hidden, groups]. */
  readonly outWeights: Float32Array;
  /** Shape [members, groups]. */
  readonly outBias: Float32Array;
}

/** Randomised trees that answer for all groups at once. Nodes of all trees lie in one list, each tree in preorder. */
export interface Forest {
  readonly trees: number;
  /** First node of each tree, shape [trees]. */
  readonly roots: Int32Array;
  /** Feature that a node asks for, or -1 for a leaf, shape [nodes]. */
  readonly feature: Int16Array;
  /** Go to the next node if the value is at or below it, else to `right`, shape [nodes]; 0 for a leaf. */
  readonly threshold: Float32Array;
  /** Node for larger values; for a leaf its place in `leaves`, shape [nodes]. */
  readonly right: Int32Array;
  /** Share of present plates in each leaf, in 255ths, shape [leaves, groups]. */
  readonly leaves: Uint8Array;
}

/** Taught sniffs to compare with, in a space where the spread within one dish is round. */
export interface NeighbourModel {
  /** Axes of that space. */
  readonly axes: number;
  /** Shape [axes, features]. */
  readonly whitening: Float32Array;
  /** Shape [sniffs, axes]. */
  readonly references: Float32Array;
  /** 1 present, 0 absent, -1 unknown, shape [sniffs, groups]. */
  readonly truths: Int16Array;
  /** Which plate each reference is of, so that two sniffs of one plate count once, shape [sniffs]. */
  readonly plates: Int16Array;
  /** Mean distance of each reference to its own nearest plates: how dense the taught plates lie there, shape [sniffs];
   * taken as 1 throughout if missing. */
  readonly localScale?: Float32Array | undefined;
}

/** A sum of bells around some of the taught sniffs, one sum for each group: ridge regression with a Gaussian kernel. */
export interface KernelModel {
  /** Falls of a bell, positive: it is the mean of exp(-width * mean squared difference of the features) over these. */
  readonly widths: readonly number[];
  /** Middles of the bells in 256ths of a standardised feature, shape [bells, features]. */
  readonly middles: Int16Array;
  /** Log-odds that a bell adds at its middle, shape [bells, groups]. */
  readonly weights: Float32Array;
  /** Shape [groups]. */
  readonly intercepts: Float32Array;
}

/** Names of the model kinds, in the order in which their log-odds are mixed; new ones go to the end. */
export const MODEL_KINDS = [
  "nets",
  "logistic",
  "discriminant",
  "trees",
  "neighbours",
  "kernel",
  "secondKernel",
] as const;
export type ModelKind = (typeof MODEL_KINDS)[number];

/** What a nose answers with: one kind alone, or the mean of several. */
export const CHOICES = [...MODEL_KINDS, "mix"] as const;
export type ModelChoice = (typeof CHOICES)[number];
