/** What the law lets a label mean by "gluten-free" or "lactose-free". Never a promise about an open plate. */
import type { JurisdictionId } from "../jurisdiction.js";
import type { Provenance } from "../provenance.js";
import type { SubstanceId } from "./substances.js";

export interface ClaimLimit extends Provenance {
  readonly id: string;
  readonly substance: SubstanceId;
  /** Where it applies; empty for a national practice outside the lists of this folder. */
  readonly jurisdictions: readonly JurisdictionId[];
  readonly claim: string;
  /** The limit in words and numbers. */
  readonly limit: { readonly en: string; readonly de: string };
}

const SECONDARY = "secondary quotation";

export const CLAIM_LIMITS: readonly ClaimLimit[] = [
  {
    id: "codex",
    substance: "glutenCereal",
    jurisdictions: ["CODEX_2024"],
    claim: "gluten-free",
    limit: { en: "<= 20 mg/kg gluten", de: "<= 20 mg/kg Gluten" },
    source: `CXS 118-1979 (rev. 2008), s.2.1.1, ${SECONDARY}`,
    mark: "SEEN",
  },
  {
    id: "codex_reduced",
    substance: "glutenCereal",
    jurisdictions: ["CODEX_2024"],
    claim: "specially processed to reduce gluten",
    limit: { en: "20 to 100 mg/kg gluten", de: "20 bis 100 mg/kg Gluten" },
    source: `CXS 118-1979 s.2.1.2, ${SECONDARY}`,
    mark: "SEEN",
  },
  {
    id: "eu_gf",
    substance: "glutenCereal",
    jurisdictions: ["EU", "UK"],
    claim: "gluten-free",
    limit: { en: "<= 20 mg/kg gluten", de: "<= 20 mg/kg Gluten" },
    source: "Implementing Regulation (EU) No 828/2014, Annex",
    mark: "SEEN",
  },
  {
    id: "eu_vlg",
    substance: "glutenCereal",
    jurisdictions: ["EU", "UK"],
    claim: "very low gluten",
    limit: { en: "<= 100 mg/kg gluten", de: "<= 100 mg/kg Gluten" },
    source: `Implementing Regulation (EU) No 828/2014, Annex, ${SECONDARY}`,
    mark: "SEEN",
  },
  {
    id: "us_gf",
    substance: "glutenCereal",
    jurisdictions: ["US"],
    claim: "gluten-free",
    limit: { en: "< 20 ppm gluten", de: "< 20 ppm Gluten" },
    source: "21 CFR 101.91, value from memory",
    mark: "MEMORY",
  },
  {
    id: "au_nz_gf",
    substance: "glutenCereal",
    jurisdictions: ["AU_NZ"],
    claim: "gluten free",
    limit: {
      en: "no detectable gluten; no oats or malted gluten cereals",
      de: "kein nachweisbares Gluten; kein Hafer, kein gemälztes Glutengetreide",
    },
    source: "Food Standards Code 1.2.7, value from memory",
    mark: "MEMORY",
  },
  {
    id: "it",
    substance: "lactose",
    jurisdictions: [],
    claim: "senza lattosio",
    limit: { en: "< 0.1 g lactose in 100 g or ml (Italy)", de: "< 0,1 g Laktose in 100 g oder ml (Italien)" },
    source: `Italian Ministry of Health circular, opinion of 12 June 2015, ${SECONDARY}`,
    mark: "SEEN",
  },
  {
    id: "de",
    substance: "lactose",
    jurisdictions: [],
    claim: "laktosefrei",
    limit: {
      en: "< 0.1 g lactose in 100 g or ml (Germany, no EU-wide figure)",
      de: "< 0,1 g Laktose in 100 g oder ml (Deutschland, keine EU-weite Zahl)",
    },
    source: `German practice, recommendation of food chemists, ${SECONDARY}`,
    mark: "SEEN",
  },
  {
    id: "ch",
    substance: "lactose",
    jurisdictions: [],
    claim: "lactose-free",
    limit: {
      en: "< 0.1 g lactose in 100 g or ml ready to eat (Switzerland)",
      de: "< 0,1 g Laktose in 100 g oder ml, verzehrfertig (Schweiz)",
    },
    source: `Swiss ordinance SR 817.022.16 Art. 42, ${SECONDARY}`,
    mark: "SEEN",
  },
  {
    id: "nordic",
    substance: "lactose",
    jurisdictions: [],
    claim: "lactose-free",
    limit: {
      en: "< 0.01 g lactose in 100 g (Nordic practice)",
      de: "< 0,01 g Laktose in 100 g (Praxis im Norden)",
    },
    source: "Nordic practice, value from memory",
    mark: "MEMORY",
  },
];
