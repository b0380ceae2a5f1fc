/**
 * What every store does, whatever is under it. Plain functions without a test runner, so that the same suite
 * also runs inside a real browser. Each gets an empty store; a failed fact throws.
 */
import type { ContractFact } from "./contractFact.js";
import { mealFacts, photoFacts } from "./mealContract.js";
import { noseFacts, otherFacts, sniffFacts } from "./sniffContract.js";
import { wholeFacts } from "./wholeContract.js";

/** Every fact, in an order that does not matter. */
export const STORE_CONTRACT: readonly ContractFact[] = [
  ...mealFacts,
  ...photoFacts,
  ...sniffFacts,
  ...noseFacts,
  ...otherFacts,
  ...wholeFacts,
];
