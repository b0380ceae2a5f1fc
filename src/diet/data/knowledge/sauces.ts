/** Sauces, pastes and condiments with hidden sources. */
import { rowsOf } from "../../knowledgeRow.js";

const row = rowsOf("ingredient", {
  source: "common practice: usual recipes of sauces",
  mark: "common practice",
});
const hidden = rowsOf("ingredient", {
  source: "hidden animal ingredients, secondary quotation",
  mark: "SEEN",
});
const memory = rowsOf("ingredient", { source: "hidden ingredients, value from memory", mark: "MEMORY" });

// prettier-ignore
export const SAUCES = [
  memory("soySauce", "soy sauce|soya sauce|shoyu|kecap manis", "Sojasauce|Sojasoße|Shoyu|Kecap Manis", { contains: ["soya", "wheat", "histamine"], may: ["alcohol"] }),
  memory("tamari", "tamari", "Tamari", { contains: ["soya", "histamine"], may: ["wheat"] }),
  memory("teriyaki", "teriyaki|sukiyaki|yakiniku", "Teriyaki|Sukiyaki", { contains: ["soya", "wheat"], often: ["alcohol"], may: ["sesame", "fishSauce"] }),
  memory("ponzu", "ponzu|tonkatsu sauce|tsuyu|mentsuyu", "Ponzu|Tonkatsu-Sauce|Tsuyu", { often: ["soya", "wheat", "fishSauce"], may: ["alcohol"] }),
  row("hoisin", "hoisin|black bean sauce|doubanjiang|gochujang|ssamjang|doenjang", "Hoisin|Schwarze-Bohnen-Sauce|Gochujang|Doenjang", { contains: ["soya"], often: ["wheat"], may: ["sesame", "barley", "fishSauce"] }),
  row("mirinSake", "mirin|=sake|shaoxing|rice wine|cooking wine", "Mirin|Sake|Reiswein|Shaoxing|Kochwein", { contains: ["alcohol"], may: ["wheat"], masks: "wine wein" }),
  row("curryPaste", "curry paste|thai curry", "Currypaste|Thai-Curry", { often: ["shrimp", "fishSauce"], may: ["peanut"], ask: "fishSauce" }),
  row("sambal", "sambal|nam prik", "Sambal|Nam Prik", { often: ["shrimp"], may: ["fishSauce"], ask: "fishSauce" }),
  row("sweetChilli", "sriracha|chilli sauce|chili sauce|hot sauce", "Chilisauce|Chilisoße|Sriracha", { may: ["fishSauce", "sulphites", "soya"] }),
  row("pesto", "pesto", "Pesto", { often: ["agedCheese", "animalRennet", "cashew", "pineNut"], may: ["walnut", "almond"] }),
  row("pestoGenovese", "pesto genovese", "Pesto Genovese", { contains: ["agedCheese", "pineNut"], often: ["animalRennet", "cashew"] }),
  hidden("caesarDressing", "caesar|caesar salad|caesar dressing", "Caesar|Caesar Salad|Caesarsalat|Cäsarsalat", { often: ["anchovy", "egg", "agedCheese", "animalRennet", "wheat", "mustard"], may: ["chicken", "pork"], ask: "fishSauce" }),
  row("vinaigrette", "vinaigrette|dressing", "Vinaigrette|Dressing|Salatsauce|Salatsoße", { often: ["mustard"], may: ["egg", "milk", "anchovy", "celery", "sulphites", "beeProduct"] }),
  row("blueCheeseDressing", "blue cheese dressing", "Blauschimmeldressing", { contains: ["milk"], often: ["animalRennet", "egg"] }),
  row("bechamel", "bechamel|white sauce|parsley sauce|bread sauce", "Béchamel|Helle Sauce|Weiße Sauce|Petersiliensauce", { contains: ["milk", "wheat"], may: ["meatStock"], masks: "bread" }),
  row("peppercornSauce", "peppercorn sauce|mushroom sauce|stroganoff", "Pfeffersauce|Jägersauce|Pilzsauce|Jägersoße|Stroganoff", { often: ["milk", "meatStock", "wheat"], may: ["alcohol", "mustard", "celery"] }),
  row("creamedVegetables", "creamed spinach|creamed mushrooms", "Rahmspinat|Rahmgemüse|Pilzrahm|Rahmschwammerl", { contains: ["milk"], often: ["wheat"], may: ["meatStock"] }),
  row("wineSauce", "wine sauce|port sauce|marsala sauce|wine jus|port jus", "Weinsauce|Weinsoße|Rotweinjus", { contains: ["wine"], often: ["meatStock", "milk", "sulphites"] }),
  row("bbqSauce", "barbecue sauce|bbq sauce|steak sauce", "Barbecuesauce|BBQ-Sauce|Grillsauce|Steaksauce", { may: ["anchovy", "mustard", "celery", "soya", "barley", "alcohol", "wheat"], masks: "steak" }),
  row("ketchup", "ketchup", "Ketchup|Currysauce", { may: ["celery", "mustard"], masks: "curry" }),
  row("curryWurstSauce", "currywurst", "Currywurst", { contains: ["meat"], often: ["pork"], may: ["celery", "mustard", "soya", "milk", "wheat"] }),
  row("currySauce", "curry|jalfrezi|=balti|rogan josh|dhansak", "Curry", { may: ["milk", "mustard", "celery", "peanut", "cashew", "almond", "meatStock", "shrimp", "fishSauce", "wheat"] }),
  hidden("thaiCurries", "green curry|red curry|yellow curry|jungle curry", "grünes Curry|rotes Curry|gelbes Curry", { often: ["fishSauce", "shrimp"], may: ["peanut", "soya"], ask: "fishSauce" }),
  hidden("massaman", "massaman|panang|penang curry", "Massaman|Panang", { often: ["peanut", "fishSauce", "shrimp"], may: ["cashew", "soya", "beef", "chicken"], ask: "fishSauce" }),
  row("mintHorseradish", "horseradish sauce", "Meerrettichsauce|Meerrettichsoße", { often: ["milk", "sulphites"], may: ["mustard", "egg", "wheat", "meatStock"] }),
  row("chutney", "chutney|relish|pickle|piccalilli", "Chutney|Relish|Mixed Pickles|Piccalilli", { often: ["mustard"], may: ["celery", "sulphites"] }),
  row("pickles", "gherkin|pickled cucumber|cornichon", "Gewürzgurke|Essiggurke|Cornichon|Saure Gurke|Spreewaldgurke", { often: ["mustard"], may: ["celery"], masks: "essig" }),
  row("hummus", "hummus|houmous|baba ghanoush|baba ganoush|mutabal", "Hummus|Humus|Baba Ganoush|Mutabal", { contains: ["sesame"] }),
  row("tapenade", "tapenade", "Tapenade|Olivenpaste", { often: ["anchovy"] }),
  row("bagnaCauda", "bagna cauda|anchoiade", "Bagna Cauda|Anchoïade", { contains: ["anchovy"], may: ["milk"] }),
  row("romesco", "romesco|ajo blanco|picada", "Romesco|Ajo Blanco", { contains: ["almond"], often: ["wheat", "hazelnut"], may: ["sulphites"] }),
  row("mole", "mole poblano|mole sauce|mole negro", "Mole Poblano|Mole Negro", { often: ["almond", "sesame", "peanut", "wheat"], may: ["lard", "meatStock", "pecan", "walnut"] }),
  row("sataySauce", "satay", "Satay|=Saté|Saté-Spieß", { contains: ["peanut"], often: ["soya", "chicken"], may: ["shrimp", "fishSauce", "wheat"] }),
  row("nutSauce", "skordalia", "Skordalia", { often: ["walnut", "almond"], may: ["wheat"] }),
  row("miso", "miso soup", "Misosuppe|Miso-Suppe", { contains: ["soya"], often: ["fishSauce"], may: ["barley", "wheat", "mollusc"], masks: "soup suppe" }),
  row("furikake", "furikake|togarashi|seaweed salad", "Furikake|Algensalat", { often: ["sesame"], may: ["fishSauce", "soya", "wheat"] }),
  row("wasabi", "wasabi", "Wasabi", { may: ["mustard"] }),
  row("packetSoup", "instant soup|packet soup", "Tütensuppe|Instantsuppe|Fertigsuppe", { often: ["celery", "meatStock"], may: ["wheat", "milk", "egg", "soya"] }),
  row("soup", "soup|chowder", "Suppe|Süppchen|Eintopf", { often: ["meatStock", "celery"], may: ["wheat", "milk", "fish"], ask: "stock" }),
  row("risottoBase", "risotto", "Risotto", { often: ["meatStock", "agedCheese", "animalRennet", "milk", "wine"], may: ["celery", "fish"], ask: "stock" }),
  row("pilafRice", "pilaf|pilau|jollof rice|fried rice", "Pilaw|Pilaf|Djuvec-Reis", { may: ["meatStock", "egg", "soya", "milk"], ask: "stock" }),
];
