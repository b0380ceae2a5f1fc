/**
 * Allergens in the words a kitchen knows from its own legal list: Annex II of Regulation (EU) No 1169/2011 in five
 * languages, the Japanese list where it names them. Others by their common names.
 */
import type { Mark } from "../../provenance.js";
import type { AllergenId } from "../substances.js";

export interface AllergenNames {
  readonly en: string;
  readonly de: string;
  readonly fr: string;
  readonly es: string;
  readonly it: string;
  readonly ja?: string;
  readonly source: string;
  readonly mark: Mark;
}

const ANNEX = {
  source: "Regulation (EU) No 1169/2011, Annex II in each language, secondary quotation",
  mark: "SEEN",
} as const;
const COMMON = { source: "common names, value from memory", mark: "MEMORY" } as const;

// prettier-ignore
export const ALLERGEN_NAMES: Readonly<Record<AllergenId, AllergenNames>> = {
  glutenCereal: { en: "cereals containing gluten (wheat, spelt, rye, barley, oats) and products thereof", de: "glutenhaltiges Getreide (Weizen, Dinkel, Roggen, Gerste, Hafer) und daraus hergestellte Erzeugnisse", fr: "céréales contenant du gluten (blé, épeautre, seigle, orge, avoine) et produits à base de ces céréales", es: "cereales que contengan gluten (trigo, espelta, centeno, cebada, avena) y productos derivados", it: "cereali contenenti glutine (grano, farro, segale, orzo, avena) e prodotti derivati", ...ANNEX },
  wheat: { en: "wheat and products thereof", de: "Weizen und daraus hergestellte Erzeugnisse", fr: "blé et produits à base de blé", es: "trigo y productos derivados", it: "grano (frumento) e prodotti derivati", ja: "小麦 wheat", ...ANNEX },
  rye: { en: "rye and products thereof", de: "Roggen und daraus hergestellte Erzeugnisse", fr: "seigle et produits à base de seigle", es: "centeno y productos derivados", it: "segale e prodotti derivati", ...ANNEX },
  barley: { en: "barley and products thereof", de: "Gerste und daraus hergestellte Erzeugnisse", fr: "orge et produits à base d'orge", es: "cebada y productos derivados", it: "orzo e prodotti derivati", ...ANNEX },
  oats: { en: "oats and products thereof", de: "Hafer und daraus hergestellte Erzeugnisse", fr: "avoine et produits à base d'avoine", es: "avena y productos derivados", it: "avena e prodotti derivati", ...ANNEX },
  crustacean: { en: "crustaceans and products thereof", de: "Krebstiere und daraus gewonnene Erzeugnisse", fr: "crustacés et produits à base de crustacés", es: "crustáceos y productos a base de crustáceos", it: "crostacei e prodotti a base di crostacei", ...ANNEX },
  egg: { en: "eggs and products thereof", de: "Eier und daraus gewonnene Erzeugnisse", fr: "œufs et produits à base d'œufs", es: "huevos y productos a base de huevo", it: "uova e prodotti a base di uova", ja: "卵 egg", ...ANNEX },
  fish: { en: "fish and products thereof", de: "Fische und daraus gewonnene Erzeugnisse", fr: "poissons et produits à base de poissons", es: "pescado y productos a base de pescado", it: "pesce e prodotti a base di pesce", ...ANNEX },
  peanut: { en: "peanuts and products thereof", de: "Erdnüsse und daraus gewonnene Erzeugnisse", fr: "arachides et produits à base d'arachides", es: "cacahuetes y productos a base de cacahuetes", it: "arachidi e prodotti a base di arachidi", ja: "落花生 peanut", ...ANNEX },
  soya: { en: "soybeans and products thereof", de: "Sojabohnen und daraus gewonnene Erzeugnisse", fr: "soja et produits à base de soja", es: "soja y productos a base de soja", it: "soia e prodotti a base di soia", ...ANNEX },
  milk: { en: "milk and products thereof (including lactose)", de: "Milch und daraus gewonnene Erzeugnisse (einschließlich Laktose)", fr: "lait et produits à base de lait (y compris le lactose)", es: "leche y sus derivados (incluida la lactosa)", it: "latte e prodotti a base di latte (incluso lattosio)", ja: "乳 milk", ...ANNEX },
  treeNut: { en: "nuts: almonds, hazelnuts, walnuts, cashews, pecan nuts, Brazil nuts, pistachio nuts, macadamia nuts, and products thereof", de: "Schalenfrüchte: Mandeln, Haselnüsse, Walnüsse, Kaschunüsse, Pecannüsse, Paranüsse, Pistazien, Macadamianüsse, und daraus gewonnene Erzeugnisse", fr: "fruits à coque : amandes, noisettes, noix, noix de cajou, noix de pécan, noix du Brésil, pistaches, noix de Macadamia, et produits à base de ces fruits", es: "frutos de cáscara: almendras, avellanas, nueces, anacardos, pacanas, nueces de Brasil, pistachos, nueces de macadamia, y productos derivados", it: "frutta a guscio: mandorle, nocciole, noci, noci di acagiù, noci di pecan, noci del Brasile, pistacchi, noci macadamia, e i loro prodotti", ...ANNEX },
  almond: { en: "almonds", de: "Mandeln", fr: "amandes", es: "almendras", it: "mandorle", ...ANNEX },
  hazelnut: { en: "hazelnuts", de: "Haselnüsse", fr: "noisettes", es: "avellanas", it: "nocciole", ...ANNEX },
  walnut: { en: "walnuts", de: "Walnüsse", fr: "noix", es: "nueces", it: "noci", ja: "くるみ walnut", ...ANNEX },
  cashew: { en: "cashews", de: "Kaschunüsse (Cashew)", fr: "noix de cajou", es: "anacardos", it: "noci di acagiù (anacardi)", ja: "カシューナッツ cashew nut", ...ANNEX },
  pecan: { en: "pecan nuts", de: "Pecannüsse", fr: "noix de pécan", es: "pacanas", it: "noci di pecan", ...ANNEX },
  brazilNut: { en: "Brazil nuts", de: "Paranüsse", fr: "noix du Brésil", es: "nueces de Brasil", it: "noci del Brasile", ...ANNEX },
  pistachio: { en: "pistachio nuts", de: "Pistazien", fr: "pistaches", es: "pistachos", it: "pistacchi", ...ANNEX },
  macadamia: { en: "macadamia nuts", de: "Macadamianüsse", fr: "noix de Macadamia", es: "nueces de macadamia", it: "noci macadamia", ...ANNEX },
  pineNut: { en: "pine nuts", de: "Pinienkerne", fr: "pignons de pin", es: "piñones", it: "pinoli", ...COMMON },
  coconut: { en: "coconut", de: "Kokosnuss", fr: "noix de coco", es: "coco", it: "cocco", ...COMMON },
  chestnut: { en: "chestnuts", de: "Esskastanien (Maronen)", fr: "châtaignes (marrons)", es: "castañas", it: "castagne", ...COMMON },
  celery: { en: "celery and products thereof", de: "Sellerie und daraus gewonnene Erzeugnisse", fr: "céleri et produits à base de céleri", es: "apio y productos derivados", it: "sedano e prodotti a base di sedano", ...ANNEX },
  mustard: { en: "mustard and products thereof", de: "Senf und daraus gewonnene Erzeugnisse", fr: "moutarde et produits à base de moutarde", es: "mostaza y productos derivados", it: "senape e prodotti a base di senape", ...ANNEX },
  sesame: { en: "sesame seeds and products thereof", de: "Sesamsamen und daraus gewonnene Erzeugnisse", fr: "graines de sésame et produits à base de graines de sésame", es: "granos de sésamo y productos a base de granos de sésamo", it: "semi di sesamo e prodotti a base di semi di sesamo", ...ANNEX },
  sulphites: { en: "sulphur dioxide and sulphites", de: "Schwefeldioxid und Sulfite", fr: "anhydride sulfureux et sulfites", es: "dióxido de azufre y sulfitos", it: "anidride solforosa e solfiti", ...ANNEX },
  lupin: { en: "lupin and products thereof", de: "Lupinen und daraus gewonnene Erzeugnisse", fr: "lupin et produits à base de lupin", es: "altramuces y productos a base de altramuces", it: "lupini e prodotti a base di lupini", ...ANNEX },
  mollusc: { en: "molluscs and products thereof", de: "Weichtiere und daraus gewonnene Erzeugnisse", fr: "mollusques et produits à base de mollusques", es: "moluscos y productos a base de moluscos", it: "molluschi e prodotti a base di molluschi", ...ANNEX },
  shrimp: { en: "shrimps and prawns", de: "Garnelen", fr: "crevettes", es: "gambas y langostinos", it: "gamberi e gamberetti", ja: "えび shrimp/prawn", ...COMMON },
  crab: { en: "crab", de: "Krabbe (Taschenkrebs)", fr: "crabe", es: "cangrejo", it: "granchio", ja: "かに crab", ...COMMON },
  salmon: { en: "salmon", de: "Lachs", fr: "saumon", es: "salmón", it: "salmone", ...COMMON },
  salmonRoe: { en: "salmon roe", de: "Lachsrogen", fr: "œufs de saumon", es: "huevas de salmón", it: "uova di salmone", ...COMMON },
  mackerel: { en: "mackerel", de: "Makrele", fr: "maquereau", es: "caballa", it: "sgombro", ...COMMON },
  squid: { en: "squid, cuttlefish, octopus", de: "Tintenfisch (Kalmar, Sepia, Krake)", fr: "calamar, seiche, poulpe", es: "calamar, sepia, pulpo", it: "calamaro, seppia, polpo", ...COMMON },
  abalone: { en: "abalone", de: "Abalone (Meerohr)", fr: "ormeau", es: "abulón (oreja de mar)", it: "abalone (orecchia di mare)", ...COMMON },
  buckwheat: { en: "buckwheat", de: "Buchweizen", fr: "sarrasin", es: "alforfón (trigo sarraceno)", it: "grano saraceno", ja: "そば buckwheat", ...COMMON },
  meat: { en: "meat of mammals and birds", de: "Fleisch von Säugetieren und Vögeln", fr: "viande de mammifères et de volaille", es: "carne de mamíferos y aves", it: "carne di mammiferi e volatili", ...COMMON },
  beef: { en: "beef", de: "Rindfleisch", fr: "bœuf", es: "carne de vacuno", it: "carne bovina", ...COMMON },
  pork: { en: "pork", de: "Schweinefleisch", fr: "porc", es: "cerdo", it: "maiale", ...COMMON },
  chicken: { en: "chicken", de: "Hühnerfleisch", fr: "poulet", es: "pollo", it: "pollo", ...COMMON },
  gelatine: { en: "gelatine", de: "Gelatine", fr: "gélatine", es: "gelatina", it: "gelatina", ...COMMON },
  orange: { en: "orange", de: "Orange", fr: "orange", es: "naranja", it: "arancia", ...COMMON },
  kiwi: { en: "kiwi fruit", de: "Kiwi", fr: "kiwi", es: "kiwi", it: "kiwi", ...COMMON },
  banana: { en: "banana", de: "Banane", fr: "banane", es: "plátano", it: "banana", ...COMMON },
  peach: { en: "peach", de: "Pfirsich", fr: "pêche", es: "melocotón", it: "pesca", ...COMMON },
  yam: { en: "yam", de: "Yamswurzel", fr: "igname", es: "ñame", it: "igname", ...COMMON },
  apple: { en: "apple", de: "Apfel", fr: "pomme", es: "manzana", it: "mela", ...COMMON },
};
