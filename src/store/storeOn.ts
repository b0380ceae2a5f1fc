import { backupCalls } from "./backupCalls.js";
import type { Engine } from "./engine.js";
import { mealCalls } from "./mealCalls.js";
import { noseCalls } from "./noseCalls.js";
import { otherCalls } from "./otherCalls.js";
import { photoCalls } from "./photoCalls.js";
import { sniffCalls } from "./sniffCalls.js";
import type { Store } from "./store.js";
import { wholeCalls } from "./wholeCalls.js";

/** The store over whatever keeps the rows. */
export function storeOn(engine: Engine, wasLost = false): Store {
  return {
    wasLost,
    ...mealCalls(engine),
    ...photoCalls(engine),
    ...sniffCalls(engine),
    ...noseCalls(engine),
    ...otherCalls(engine),
    ...wholeCalls(engine),
    ...backupCalls(engine),
  };
}
