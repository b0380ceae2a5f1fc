import { MODEL_KINDS, type ModelKind } from "./models.js";
import type { Nose } from "./nose.js";

/** The kinds of models that the nose answers with. */
export function kindsInUse({ horizons }: Pick<Nose, "horizons">): readonly ModelKind[] {
  const mix = horizons.at(-1)?.mix;
  return MODEL_KINDS.filter((_, i) => (mix?.[i] ?? 0) > 0);
}
