/** Additives by number. A range counts each number in it; letters after the number (E472a) are ignored. */
import { rowsOf, type KnowledgeRow, type RowFacts } from "../../knowledgeRow.js";

/** A row found by its number, "E 471" or "INS 471", not by its name. */
export interface AdditiveRow extends KnowledgeRow {
  readonly numbers: readonly (readonly [first: number, last: number])[];
}

const SECONDARY = { source: "additive lists, secondary quotation", mark: "SEEN" } as const;
const MEMORY = { source: "additive lists, value from memory", mark: "MEMORY" } as const;

const additive =
  (provenance: typeof SECONDARY | typeof MEMORY) =>
  (id: string, numbers: AdditiveRow["numbers"], en: string, de: string, facts: RowFacts): AdditiveRow => ({
    ...rowsOf("additive", provenance)(id, en, de, facts),
    numbers,
  });
const seen = additive(SECONDARY);
const memory = additive(MEMORY);

// prettier-ignore
export const ADDITIVES: readonly AdditiveRow[] = [
  seen("e120", [[120, 120]], "E120", "E120", { contains: ["carmine"], noteEn: "Always from insects; now and then an allergen itself.", noteDe: "Immer aus Insekten; gelegentlich selbst ein Allergen." }),
  seen("e160a", [[160, 160]], "E160a|carotene|beta carotene", "E160a|Carotin|Betacarotin", { may: ["isinglass"], noteEn: "Plant; fish gelatine may be the carrier and is exempt from declaration in the EU.", noteDe: "Pflanzlich; Fischgelatine kann der Träger sein und muss in der EU nicht genannt werden." }),
  memory("e220", [[220, 228]], "E220", "E220", { contains: ["sulphites"] }),
  memory("lactates", [[270, 270], [325, 327]], "E270|lactic acid|sodium lactate|calcium lactate", "E270|Milchsäure|Natriumlactat|Calciumlactat", { masks: "milch", noteEn: "Lactic acid is normally fermented from plant sugar: the name does not mean milk.", noteDe: "Milchsäure wird meist aus Pflanzenzucker vergoren: Der Name heißt nicht Milch." }),
  seen("e306", [[306, 309]], "E306|tocopherol|tocopherol rich extract", "E306|Tocopherol", { may: ["soyaTocopherol"], noteEn: "Plant, often soya; exempt from declaration in the EU.", noteDe: "Pflanzlich, oft Soja; muss in der EU nicht genannt werden." }),
  seen("e322", [[322, 322]], "E322", "E322", { often: ["soya"], unclear: ["egg"] }),
  memory("e420", [[420, 421], [953, 953], [965, 965], [967, 968]], "E420", "E420", { contains: ["polyol"] }),
  memory("e422", [[422, 422]], "E422|glycerol|glycerin|glycerine", "E422|Glycerin|Glycerol", { unclear: ["eitherOrigin"] }),
  seen("e430", [[430, 436]], "E430|polysorbate|polyoxyethylene", "E430|Polysorbat", { unclear: ["eitherOrigin"] }),
  seen("e441", [[441, 441]], "E441", "E441", { contains: ["gelatine"], noteEn: "E441 is no EU additive number: gelatine is an ingredient there. It is still seen in lists and in other numbering systems.", noteDe: "E441 ist keine EU-Nummer: Gelatine ist dort eine Zutat. Sie steht noch in Listen und anderen Nummernsystemen." }),
  seen("e470", [[470, 477], [481, 483]], "E471|mono and diglycerides|monoglyceride|diglyceride|fatty acid ester|stearoyl lactylate|magnesium stearate", "E471|Mono- und Diglyceride|Monoglycerid|Diglycerid|Speisefettsäuren|Speisefettsäureester|Magnesiumstearat|Mono- und Diglyceride von Speisefettsäuren", { unclear: ["eitherOrigin"] }),
  memory("e491", [[491, 495]], "E491|sorbitan", "E491|Sorbitan", { unclear: ["eitherOrigin"], masks: "sorbit" }),
  seen("e542", [[542, 542]], "E542", "E542", { contains: ["meat"], noteEn: "Bone phosphate; not on the EU list of authorised additives (value from memory), old lists keep it.", noteDe: "Knochenphosphat; nicht auf der EU-Liste zugelassener Zusatzstoffe (aus dem Gedächtnis), alte Listen führen es." }),
  memory("e570", [[570, 570]], "E570|stearic acid|fatty acids", "E570|Stearinsäure|Fettsäuren", { unclear: ["eitherOrigin"] }),
  memory("e621", [[620, 625]], "E621|monosodium glutamate|=msg|flavour enhancer", "E621|Glutamat|Geschmacksverstärker|Natriumglutamat", { unclear: ["eitherOrigin"] }),
  memory("e627", [[626, 635]], "E627|guanylate|inosinate|ribonucleotide", "E627|Guanylat|Inosinat|Ribonukleotid", { unclear: ["eitherOrigin", "fish", "meat"] }),
  memory("e640", [[640, 640]], "E640|glycine", "E640|Glycin", { unclear: ["eitherOrigin", "gelatine"] }),
  seen("e901", [[901, 901]], "E901", "E901", { contains: ["beeProduct"] }),
  seen("e904", [[904, 904]], "E904", "E904", { contains: ["shellac"] }),
  seen("glazing", [], "glazing agent", "Überzugsmittel", { may: ["shellac", "beeProduct"] }),
  seen("e913", [[913, 913]], "E913", "E913", { contains: ["woolFat"], noteEn: "Not an EU authorised food additive (value from memory).", noteDe: "In der EU kein zugelassener Zusatzstoff (aus dem Gedächtnis)." }),
  seen("e920", [[920, 921]], "E920|l cysteine|cysteine|cystine", "E920|L-Cystein|Cystein", { unclear: ["eitherOrigin"], noteEn: "From feathers or bristles, or from fermentation.", noteDe: "Aus Federn oder Borsten oder durch Fermentation." }),
  seen("e966", [[966, 966]], "E966|lactitol", "E966|Lactit|Lactitol|Laktit", { contains: ["lactitol", "polyol"], noteEn: "Made from milk sugar; exempt from milk declaration in the EU.", noteDe: "Aus Milchzucker gemacht; in der EU von der Milchkennzeichnung ausgenommen." }),
  seen("e1105", [[1105, 1105]], "E1105|lysozyme|lysozym", "E1105|Lysozym", { contains: ["egg"], noteEn: "Lysozyme is from hen's egg white; used in some hard cheeses.", noteDe: "Lysozym stammt aus Hühnereiweiß; in manchen Hartkäsen." }),
  memory("e1518", [[1518, 1518]], "E1518|triacetin", "E1518|Triacetin", { unclear: ["eitherOrigin"] }),
  memory("e631old", [[910, 910]], "E910", "E910", { unclear: ["eitherOrigin"] }),
];
