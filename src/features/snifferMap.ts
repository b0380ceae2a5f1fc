import type { Recipe } from "./recipe.js";

/** How the log ratios of one sniffer become those of another with the same channels: `first = matrix second + offset`. */
export interface SnifferMap {
  /** Row-major, one row a channel of the first sniffer, shape [channels, channels]. */
  readonly matrix: Float32Array;
  /** Natural log units, shape [channels]. */
  readonly offset: Float32Array;
}

/**
 * Features of the second sniffer as the first would have shown them. All features are linear in the log resistances:
 * levels take matrix and offset, their changes in time the matrix alone, and differences are taken anew.
 *
 * @param values - features of a recipe as `extractFeatures` gives them, shape [featureCount(recipe, channels)]
 * @throws {RangeError} if a length does not fit
 */
export function mapFeatures(map: SnifferMap, recipe: Recipe, values: Float64Array): Float64Array {
  const channels = map.offset.length;
  const blocks = recipe.rich ? 4 : 2;
  if (map.matrix.length !== channels * channels) throw new RangeError("the map is not square");
  if (values.length !== blocks * channels + (recipe.rich ? channels - 1 : 0))
    throw new RangeError(`the map has ${channels} channels; ${values.length} features do not fit it`);
  const mapped = new Float64Array(values.length);
  for (let block = 0; block < blocks; block += 1)
    for (let to = 0; to < channels; to += 1) {
      let sum = block === 0 ? map.offset[to]! : 0;
      for (let from = 0; from < channels; from += 1)
        sum += map.matrix[to * channels + from]! * values[block * channels + from]!;
      mapped[block * channels + to] = sum;
    }
  if (recipe.rich)
    for (let step = 1; step < channels; step += 1)
      mapped[blocks * channels + step - 1] = mapped[step - 1]! - mapped[step]!;
  return mapped;
}
