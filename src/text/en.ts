/** English, whole; the app loads it in the two parts. */
import { first } from "./en/first.js";
import { later } from "./en/later.js";

export const en = { ...first, ...later };
