import { pluralIn } from "../plural.js";

export const plural = pluralIn("de");
