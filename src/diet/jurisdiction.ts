/** The shape of one legal allergen list. The lists themselves are in `data/jurisdictions/`. */
import type { SubstanceId } from "./data/substances.js";
import type { Provenance } from "./provenance.js";

export const JURISDICTIONS = ["EU", "UK", "US", "CA", "AU_NZ", "JP", "CODEX_2024"] as const;
export type JurisdictionId = (typeof JURISDICTIONS)[number];

/** What an item leaves out, in the words of the list, and the substance it means where the tables have one. */
export interface ListException extends Provenance {
  readonly text: string;
  readonly substances: readonly SubstanceId[];
}

/** Does the list bind, recommend, or leave the item to the nations? */
export type ListForce = "mandatory" | "recommended" | "national" | "separateRule";

export interface ListItem extends Provenance {
  /** Number in the list as checked; null for items outside the numbered list. */
  readonly n: number | null;
  readonly key: string;
  /** The legal wording. */
  readonly text: string;
  readonly force: ListForce;
  /** Substances the item covers, with all kinds of them except `notCovered`. */
  readonly covers: readonly SubstanceId[];
  readonly notCovered?: readonly SubstanceId[];
  readonly exceptions?: readonly ListException[];
  readonly thresholdText?: string;
  /** Where it stands if the law is in motion. */
  readonly status?: string;
  /** Where the wording was read. */
  readonly where: string;
}

/** A rule or a trap that goes with the list. */
export interface ListRule extends Provenance {
  readonly text: string;
}

/** Emergency numbers; empty where the list belongs to no country. */
export interface Emergency extends Provenance {
  readonly numbers: readonly { readonly number: string; readonly country: "AU" | "NZ" | null }[];
}

export interface Jurisdiction {
  readonly id: JurisdictionId;
  readonly name: string;
  readonly instrument: string;
  /** The date of the law, as far as known. */
  readonly date: string;
  /** When the list was last compared with its sources (ISO date). */
  readonly checkedOn: string;
  readonly items: readonly ListItem[];
  readonly rules: readonly ListRule[];
  readonly traps: readonly ListRule[];
  readonly emergency: Emergency;
}
