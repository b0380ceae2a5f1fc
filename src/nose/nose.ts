/** A nose: preprocessing, weights, calibration, thresholds and the evidence of how good it is, as one value. */
import type { SnifferMap } from "../features/snifferMap.js";
import type { Channel } from "../kernel/channel.js";
import type { Forest, KernelModel, LinearModel, ModelChoice, NeighbourModel, NetEnsemble } from "./models.js";
import type { NoseReport } from "./report.js";

export const NOSE_FORMAT = "nidor-nose/1";
/** A nose that was moved to another sniffer. A reader that does not know the map would answer wrongly without it: so
 * the name is another, and earlier versions refuse it with words. */
export const TRANSFERRED_FORMAT = "nidor-nose/2";

/** From raw features to standardised ones, fitted on the teaching part only. */
export interface InputMap {
  /** Change of each feature for each unit of humidity rise, shape [features]; zeros where none could be fitted. */
  readonly humiditySlope: Float32Array;
  /** Humidity rise that stands for an unknown one: the mean of the taught sniffs. */
  readonly usualRise: number;
  /** Shape [features]. */
  readonly centre: Float32Array;
  /** Shape [features], all positive. */
  readonly scale: Float32Array;
}

/** From mixed log-odds to a probability that means what it says. Monotone, and never surer than the evidence. */
export type Calibration =
  | { readonly kind: "identity" }
  | { readonly kind: "temperature"; readonly temperature: number }
  | { readonly kind: "platt"; readonly slope: number; readonly intercept: number }
  | {
      readonly kind: "isotonic";
      /** Rising log-odds, shape [knots]. */
      readonly logits: Float32Array;
      /** Never falling probabilities, shape [knots]. */
      readonly probabilities: Float32Array;
    };

/** A kernel on the other view of a sniff, with the input map of that view; see otherView. */
export interface SecondKernel {
  readonly input: InputMap;
  readonly kernel: KernelModel;
}

/** What the nose knows once this much of the headspace has been sniffed. */
export interface HorizonNose {
  /** Headspace time from which this horizon answers. */
  readonly fromMs: number;
  /** Later sweeps are left out, so that the answer means the same at any later moment. */
  readonly uptoMs: number;
  readonly input: InputMap;
  /** Weight of each model's log-odds, in the order of MODEL_KINDS; a missing one is 0. */
  readonly mix: Float32Array;
  readonly logistic: LinearModel | null;
  readonly discriminant: LinearModel | null;
  readonly trees: Forest | null;
  /** Missing from noses of older versions. */
  readonly kernel?: KernelModel | null | undefined;
  /** Missing from noses of older versions. */
  readonly secondKernel?: SecondKernel | null | undefined;
  readonly neighbours: NeighbourModel;
  /** Relative distance (strangeness) of each held-out plate to the plates taught without it, in rising order. */
  readonly heldOutDistances: Float32Array;
  /**
   * The distance of the typical held-out plate: by what lies farther off the log-odds are drawn in. Older noses, without
   * it, were calibrated on log-odds that stand at any distance.
   */
  readonly usualDistance?: number | undefined;
}

/** One group's calibration and held-out answers at one horizon. */
export interface GroupHorizon {
  readonly calibration: Calibration;
  /** Probabilities stay this far from 0 and 1; see slipRate. Older noses were taught with 1 / (held-out plates + 2). */
  readonly margin: number;
  /** Mixed log-odds of each held-out sniff, by models that never saw its plate, shape [held out]. */
  readonly logits: Float32Array;
  /** Their probabilities, calibrated without the sniff's own fold, shape [held out]. */
  readonly probabilities: Float32Array;
}

/** What the nose knows of one group. */
export interface GroupNose {
  readonly name: string;
  readonly platesPresent: number;
  readonly platesAbsent: number;
  /** Held-out sniffs: 1 present, 0 absent, shape [held out]. */
  readonly truth: Int16Array;
  /** Number of each held-out sniff's plate (by occasion: of its dish on that occasion), shape [held out]. */
  readonly plate: Int16Array;
  /** Number of the fold that it was held out in, shape [held out]. */
  readonly fold: Int16Array;
  /** One for each horizon of the nose; empty if there was too little to teach on. */
  readonly horizons: readonly GroupHorizon[];
}

/** Where a transferred nose comes from, how its sniffer is understood, and what that was seen to bring. */
export interface NoseTransfer {
  /** The nose that was taught, and the sniffer that it was taught on. */
  readonly of: {
    readonly id: string;
    readonly name: string;
    readonly taughtAt: string;
    readonly snifferId: string;
  };
  readonly method: "offset" | "slopeAndOffset" | "piecewise" | "direct";
  /** Ridge strength, a share of the channels' mean variance. */
  readonly strength: number;
  /** Plates or jars that both sniffers sniffed. */
  readonly pairs: number;
  readonly map: SnifferMap;
  readonly gain: TransferGain;
}

/** Where a moved nose comes from, by how many pairs, and the gain that they showed: all that a list tells of it. */
export type MovedFrom = Pick<NoseTransfer, "pairs" | "gain"> & {
  readonly of: Pick<NoseTransfer["of"], "snifferId">;
};

/** Differences between the sniffers on held-out pairs, before and after, in taught standard deviations. */
export interface TransferGain {
  /** Root mean square over the pairs. */
  readonly before: number;
  readonly after: number;
  /** Geometric mean over the pairs of before / after, with Student's 95 % interval: above 1 is a gain. */
  readonly factor: number;
  readonly low: number;
  readonly high: number;
}

export interface Nose {
  readonly format: typeof NOSE_FORMAT | typeof TRANSFERRED_FORMAT;
  readonly id: string;
  readonly name: string;
  /** ISO 8601 instant. */
  readonly taughtAt: string;
  readonly sniffer: { readonly id: string; readonly channels: readonly Channel[] };
  /** Number of the feature recipe. */
  readonly recipe: number;
  readonly platesTaught: number;
  readonly sniffsTaught: number;
  readonly occasionsTaught: number;
  /** Name of each number in a group's `plate`, so that two noses can be compared on the same held-out plates; noses without it cannot be. */
  readonly plateNames?: readonly string[] | undefined;
  readonly groups: readonly GroupNose[];
  /** Shared by all horizons; null if the nets weigh nothing. */
  readonly nets: NetEnsemble | null;
  readonly horizons: readonly HorizonNose[];
  /** The trees' log-odds are mixed as they stand; older noses, without this, were calibrated with them bent. */
  readonly unbentTrees?: boolean | undefined;
  /** Probabilities are drawn in near 0 and 1 alone; older noses, without this, were calibrated with all drawn in. */
  readonly marginAtEnds?: boolean | undefined;
  readonly chosen: ModelChoice;
  readonly report: NoseReport;
  /** Only where the nose was moved from another sniffer; its sniffs are mapped before all else. */
  readonly transfer?: NoseTransfer | undefined;
}
