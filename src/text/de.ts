/** Deutsch, ganz; die App lädt es in den zwei Teilen. */
import type { Catalogue } from "./catalogue.js";
import { first } from "./de/first.js";
import { later } from "./de/later.js";

export const de: Catalogue = { ...first, ...later };
