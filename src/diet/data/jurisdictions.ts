/** All legal allergen lists, in the order the app offers them. */
import type { Jurisdiction, JurisdictionId } from "../jurisdiction.js";
import { AU_NZ_LIST } from "./jurisdictions/auNz.js";
import { CA_LIST } from "./jurisdictions/ca.js";
import { CODEX_LIST } from "./jurisdictions/codex.js";
import { EU_LIST } from "./jurisdictions/eu.js";
import { JP_LIST } from "./jurisdictions/jp.js";
import { UK_LIST } from "./jurisdictions/uk.js";
import { US_LIST } from "./jurisdictions/us.js";

export const ALLERGEN_LISTS: Readonly<Record<JurisdictionId, Jurisdiction>> = {
  EU: EU_LIST,
  UK: UK_LIST,
  US: US_LIST,
  CA: CA_LIST,
  AU_NZ: AU_NZ_LIST,
  JP: JP_LIST,
  CODEX_2024: CODEX_LIST,
};
