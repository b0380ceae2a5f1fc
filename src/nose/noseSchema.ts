/** What a nose file must hold, checked field by field. */
import * as v from "valibot";
import { CHOICES } from "./models.js";
import { NOSE_FORMAT, TRANSFERRED_FORMAT } from "./nose.js";
import { unpackNumbers } from "./packNumbers.js";

const finite = v.pipe(v.number(), v.finite("must be finite"));
const count = v.pipe(finite, v.integer("must be whole"), v.minValue(0, "must not be negative"));
const text = v.pipe(v.string(), v.maxLength(500, "is longer than 500 characters"));
const name = v.pipe(text, v.nonEmpty("must not be empty"));
const fraction = v.pipe(finite, v.minValue(0, "must be a fraction"), v.maxValue(1, "must be a fraction"));

/** A loop: a nose holds a hundred thousand floats, and a call for each would hold up the page. */
function areFinite(list: Float32Array): boolean {
  for (let i = 0; i < list.length; i += 1) if (!Number.isFinite(list[i])) return false;
  return true;
}

const floats = v.pipe(
  v.string(),
  v.rawTransform(({ dataset, addIssue, NEVER }) => {
    const list = unpackNumbers(dataset.value, "f32");
    if (list !== null && areFinite(list)) return list;
    addIssue({ message: "must be base64 of finite 32-bit floats" });
    return NEVER;
  }),
);
const longs = v.pipe(
  v.string(),
  v.rawTransform(({ dataset, addIssue, NEVER }) => {
    const list = unpackNumbers(dataset.value, "i32");
    if (list !== null) return list;
    addIssue({ message: "must be base64 of 32-bit integers" });
    return NEVER;
  }),
);
const shorts = v.pipe(
  v.string(),
  v.rawTransform(({ dataset, addIssue, NEVER }) => {
    const list = unpackNumbers(dataset.value, "i16");
    if (list !== null) return list;
    addIssue({ message: "must be base64 of 16-bit integers" });
    return NEVER;
  }),
);
const bytes = v.pipe(
  v.string(),
  v.rawTransform(({ dataset, addIssue, NEVER }) => {
    const list = unpackNumbers(dataset.value, "u8");
    if (list !== null) return list;
    addIssue({ message: "must be base64 of bytes" });
    return NEVER;
  }),
);

const linear = v.object({ weights: floats, intercepts: floats });
const nets = v.object({
  members: count,
  hidden: count,
  inWeights: floats,
  inBias: floats,
  outWeights: floats,
  outBias: floats,
});
const forest = v.object({
  trees: count,
  roots: longs,
  feature: shorts,
  threshold: floats,
  right: longs,
  leaves: bytes,
});
const neighbours = v.object({
  axes: count,
  whitening: floats,
  references: floats,
  truths: shorts,
  plates: shorts,
  localScale: v.optional(floats),
});

const width = v.pipe(finite, v.gtValue(0, "must be positive"));
const bells = { middles: shorts, weights: floats, intercepts: floats };
/** Bells had a single width at first. */
const kernel = v.union([
  v.object({
    widths: v.pipe(v.array(width), v.minLength(1, "must not be empty"), v.maxLength(10)),
    ...bells,
  }),
  v.pipe(
    v.object({ width, ...bells }),
    v.transform(({ width: only, ...rest }) => ({ widths: [only], ...rest })),
  ),
]);

const input = v.object({ humiditySlope: floats, usualRise: finite, centre: floats, scale: floats });

const horizon = v.object({
  fromMs: v.pipe(finite, v.minValue(0, "must not be negative")),
  uptoMs: v.pipe(finite, v.minValue(0, "must not be negative")),
  input,
  mix: floats,
  logistic: v.nullable(linear),
  discriminant: v.nullable(linear),
  trees: v.nullable(forest),
  kernel: v.optional(v.nullable(kernel)),
  secondKernel: v.optional(v.nullable(v.object({ input, kernel }))),
  neighbours,
  heldOutDistances: floats,
  usualDistance: v.optional(v.pipe(finite, v.gtValue(0, "must be positive"))),
});

const calibration = v.variant("kind", [
  v.object({ kind: v.literal("identity") }),
  v.object({
    kind: v.literal("temperature"),
    temperature: v.pipe(finite, v.gtValue(0, "must be positive")),
  }),
  v.object({
    kind: v.literal("platt"),
    slope: v.pipe(finite, v.minValue(0, "must not be negative")),
    intercept: finite,
  }),
  v.object({ kind: v.literal("isotonic"), logits: floats, probabilities: floats }),
]);

const group = v.object({
  name,
  platesPresent: count,
  platesAbsent: count,
  truth: shorts,
  plate: shorts,
  fold: shorts,
  horizons: v.array(
    v.object({
      calibration,
      margin: v.pipe(fraction, v.maxValue(0.5, "must be at most one half")),
      logits: floats,
      probabilities: floats,
    }),
  ),
});

const rate = v.object({ events: count, trials: count, low: fraction, high: fraction });
const maybe = v.nullable(finite);
const scores = v.object({
  sniffs: count,
  balancedAccuracy: maybe,
  evenBalancedAccuracy: v.optional(maybe),
  auc: maybe,
  logLoss: finite,
  brier: finite,
  ece: finite,
  error: finite,
  errorAt80: finite,
});
const leakKind = v.picklist(["cleanAir", "airReadings", "clock"]);
const groupReport = v.object({
  group: name,
  platesPresent: count,
  platesAbsent: count,
  scores: v.nullable(scores),
  sensitivity: v.nullable(rate),
  specificity: v.nullable(rate),
  brierParts: v.nullable(v.object({ reliability: finite, resolution: finite, uncertainty: finite })),
  coverage: v.nullable(v.object({ present: rate, absent: rate, target: fraction })),
  reliability: v.array(v.object({ meanPredicted: fraction, observedFraction: fraction, count })),
  riskCoverage: v.array(v.object({ leastConfidence: finite, coverage: fraction, risk: fraction })),
  calibration: text,
});
const leaks = v.object({
  checks: v.array(
    v.object({
      kind: leakKind,
      group: name,
      auc: fraction,
      limit: v.pipe(finite, v.minValue(0)),
      leaks: v.boolean(),
    }),
  ),
  missing: v.array(leakKind),
  oneSided: v.array(v.object({ group: name, occasions: v.array(text), of: count })),
});
const sampleChecks = v.object({
  leaks,
  learningCurve: v.array(v.object({ plates: count, logLoss: finite, auc: maybe, error: fraction })),
});
const byOccasion = v.object({
  occasions: count,
  folds: count,
  groups: v.array(
    v.object({
      group: name,
      scores: v.nullable(scores),
      sensitivity: v.nullable(rate),
      specificity: v.nullable(rate),
    }),
  ),
});
const pairedRate = v.object({ older: rate, newer: rate, onlyOlder: count, onlyNewer: count, p: fraction });
const refresh = v.object({
  of: v.object({ id: name, name }),
  freshPlates: count,
  folds: count,
  gain: v.array(
    v.object({
      group: name,
      plates: count,
      olderLogLoss: finite,
      newerLogLoss: finite,
      found: pairedRate,
      quiet: pairedRate,
    }),
  ),
});
const report = v.object({
  groups: v.array(groupReport),
  rivals: v.array(v.object({ name, logLoss: finite, auc: maybe, balancedAccuracy: maybe })),
  horizons: v.array(v.object({ fromMs: finite, logLoss: finite, auc: maybe })),
  recipes: v.array(v.object({ id: count, name, logLoss: finite })),
  chosen: name,
  humidityShare: v.optional(fraction),
  leftOut: v.array(
    v.object({
      why: v.picklist(["otherSniffer", "otherChannels", "noCleanAir", "noKnownGroup", "duplicate"]),
      sniffs: count,
    }),
  ),
  notes: v.array(v.picklist(["noCleanAir", "noHumidityCorrection", "oneOccasion", "constantChannels"])),
  split: v.picklist(["plate", "occasion"]),
  folds: count,
  backend: text,
  sampleChecks: v.optional(sampleChecks),
  byOccasion: v.optional(byOccasion),
  refresh: v.optional(refresh),
});

const positive = v.pipe(finite, v.gtValue(0, "must be positive"));
const transfer = v.object({
  of: v.object({ id: name, name, taughtAt: v.pipe(v.string(), v.isoTimestamp()), snifferId: name }),
  method: v.picklist(["offset", "slopeAndOffset", "piecewise", "direct"]),
  strength: v.pipe(finite, v.minValue(0, "must not be negative")),
  pairs: count,
  map: v.object({ matrix: floats, offset: floats }),
  gain: v.object({ before: positive, after: positive, factor: positive, low: positive, high: positive }),
});

/** The whole file. Shapes are checked against each other in noseShape.ts. */
export const noseSchema = v.object({
  format: v.picklist([NOSE_FORMAT, TRANSFERRED_FORMAT]),
  id: name,
  name,
  taughtAt: v.pipe(
    v.string(),
    v.isoTimestamp("must be an ISO 8601 instant"),
    v.check((value) => !Number.isNaN(Date.parse(value)), "must be a day and time that exist"),
  ),
  sniffer: v.object({
    id: name,
    channels: v.pipe(
      v.array(v.object({ sensor: count, heaterC: maybe, dwellMs: maybe })),
      v.nonEmpty("needs at least one channel"),
    ),
  }),
  recipe: count,
  platesTaught: count,
  sniffsTaught: count,
  occasionsTaught: count,
  plateNames: v.optional(v.array(v.string())),
  groups: v.array(group),
  nets: v.nullable(nets),
  horizons: v.pipe(v.array(horizon), v.nonEmpty("needs at least one horizon")),
  unbentTrees: v.optional(v.boolean()),
  marginAtEnds: v.optional(v.boolean()),
  chosen: v.picklist(CHOICES),
  report,
  transfer: v.optional(transfer),
});
