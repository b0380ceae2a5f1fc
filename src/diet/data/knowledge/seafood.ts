/** Fish, crustaceans and molluscs, and the pastes and sauces they hide in. */
import { rowsOf } from "../../knowledgeRow.js";

const row = rowsOf("ingredient", {
  source: "common practice: trade names of fish and shellfish",
  mark: "common practice",
});
const hidden = rowsOf("ingredient", {
  source: "hidden animal ingredients, secondary quotation",
  mark: "SEEN",
});
const memory = rowsOf("ingredient", {
  source: "hidden animal ingredients, value from memory",
  mark: "MEMORY",
});

// prettier-ignore
export const SEAFOOD = [
  row("fish", "fish|whitefish", "Fisch|Weißfisch", { contains: ["fish"] }),
  row("batteredFish", "battered fish", "Backfisch|Fischstäbchen", { contains: ["fish"], often: ["wheat", "egg"], may: ["milk", "alcohol"], ask: "fryer" }),
  row("salmon", "salmon|lox|gravlax|gravadlax", "Lachs|Räucherlachs|Graved Lachs", { contains: ["salmon"] }),
  row("salmonRoe", "salmon roe|ikura", "Lachsrogen|Lachskaviar|Keta-Kaviar", { contains: ["salmonRoe"], masks: "lachs salmon" }),
  row("roe", "caviar|=roe|fish roe|tobiko|masago|taramasalata|tarama|bottarga", "Kaviar|=Rogen|Fischrogen|Forellenrogen|Taramosalata|Bottarga", { contains: ["fish"] }),
  row("mackerel", "mackerel", "Makrele|Steckerlfisch", { contains: ["mackerel", "histamine"] }),
  row("tuna", "=tuna|tonno|bonito|skipjack", "Thunfisch|Bonito", { contains: ["fish", "histamine"] }),
  row("anchovy", "anchovy|boquerones", "Sardelle|Anchovis|Boquerones|Acciughe", { contains: ["anchovy", "histamine"] }),
  row("herring", "herring|=kipper|rollmop|sprat", "=Hering|Herings-|Matjes|Bismarckhering|Rollmops|Brathering|Sprotte|=Bückling|Salzhering", { contains: ["fish", "histamine"], may: ["mustard"] }),
  row("sardine", "sardine|pilchard", "Sardine", { contains: ["fish", "histamine"] }),
  row("whiteFish", "=cod|codfish|haddock|pollock|pollack|coley|=hake|whiting|plaice|halibut|turbot|=sole|flounder|sea bass|branzino|sea bream|=bream|snapper|grouper|mullet|tilapia|=trout|arctic char|=perch|=pike|=zander|=carp|barramundi|mahi mahi|john dory|gurnard|bacalao|stockfish|redfish|milkfish|butterfish", "Kabeljau|Dorsch|Schellfisch|Seelachs|Seehecht|Wittling|Scholle|Heilbutt|Steinbutt|=Butt|Seezunge|Rotzunge|Limande|Flunder|Wolfsbarsch|Loup de mer|Dorade|Goldbrasse|Meeräsche|Tilapia|Forelle|Saibling|=Barsch|-barsch|Hecht|=Zander|Zander-|Karpfen|Rotbarsch|Red Snapper|=Felchen|Felchen-|=Renke|=Äsche|Skrei|Stockfisch|Bacalhau|Barramundi|Petersfisch|Knurrhahn|=Egli|Butterfisch", { contains: ["fish"], masks: "butter lachs hahn zunge milk" }),
  row("finless", "=eel|unagi|monkfish|catfish|shark|swordfish|sturgeon|=skate|ray wing|rock salmon|lamprey|pangasius", "=Aal|=Aale|-aal|Aalsuppe|Seeteufel|=Wels|Haifisch|Schillerlocke|Schwertfisch|=Stör|=Rochen|Rochenflügel|=Lotte|Neunauge|Pangasius", { contains: ["finlessFish"], masks: "salmon" }),
  row("bombayDuck", "bombay duck", "Bombay-Ente", { contains: ["fish"], masks: "duck ente", noteEn: "Bombay duck is a dried fish.", noteDe: "Bombay-Ente ist ein Trockenfisch." }),
  row("crustacean", "crustacean|lobster|crayfish|crawfish|langoustine|langouste|krill", "Krebstier|Krebs|Hummer|Languste|Flusskrebs|Kaisergranat|Langustine|Krill|Krebsfleisch|Hummerfleisch", { contains: ["crustacean"], masks: "fish fleisch granat" }),
  row("shrimp", "shrimp|prawn|scampi|=gamba|=gambas", "Garnele|Shrimp|Scampi|=Gamba|=Gambas|Krevette|Nordseekrabbe|=Granat", { contains: ["shrimp"] }),
  row("crabWord", "=crab|crabmeat", "Taschenkrebs|Königskrabbe|Seespinne", { contains: ["crab"], masks: "meat" }),
  row("crabCake", "crab cake", "Krabbenfrikadelle", { contains: ["crab"], often: ["egg", "wheat", "mustard"], may: ["milk", "anchovy"], masks: "cake frikadelle" }),
  row("krabbe", "brown shrimp and crab", "Krabbe|Krabben|Krabbenfleisch", { contains: ["crustacean"], often: ["shrimp"], masks: "crab shrimp fleisch" }),
  row("shellfish", "shellfish|seafood|fruits de mer|frutti di mare", "Meeresfrüchte|Schalentiere|Frutti di Mare", { contains: ["crustacean", "mollusc"], often: ["fish", "shrimp", "squid"] }),
  row("mussels", "mussel|=clam|oyster|scallop|cockle|whelk|=winkle|moules|vongole|=conch", "Muschel|Auster|Wellhornschnecke|Vongole|Moules|Muschelfleisch", { contains: ["mollusc"], masks: "schnecke fleisch" }),
  row("squid", "squid|calamari|calamares|cuttlefish|octopus|pulpo|polpo", "Tintenfisch|Kalmar|Calamari|Calamares|=Sepia|=Seppia|Sepiatinte|Krake|Oktopus|Pulpo|Polpo", { contains: ["squid"], masks: "fish fisch" }),
  row("abalone", "abalone|paua", "Abalone|Meerohr|Seeohr", { contains: ["abalone"] }),
  row("snails", "escargot|snail", "Weinbergschnecke|=Schnecken|Escargots|Schneckensuppe", { contains: ["snail"], often: ["milk"], masks: "wein suppe schnecke" }),
  row("surimi", "surimi|crab stick|seafood stick", "Surimi|Krebsfleischimitat|Krabbenstäbchen|Garnelenimitat", { contains: ["fish"], often: ["egg", "wheat", "soya"], may: ["crustacean"], masks: "crab seafood krebsfleisch krabben garnele", noteEn: "Surimi is fish; crab extract may be added.", noteDe: "Surimi ist Fisch; Krebsextrakt kann zugesetzt sein." }),
  row("seaAnimals", "jellyfish|sea urchin|sea cucumber", "Qualle|Seeigel|Seegurke", { may: ["mollusc", "fish"], masks: "fish" }),
  row("fishCake", "fish cake|fish ball|fish finger|gefilte fish", "Fischfrikadelle|Fischbällchen|Fischklößchen", { contains: ["fish"], often: ["egg", "wheat"], may: ["milk", "crustacean"], masks: "frikadelle cake" }),
  hidden("fishSauceRow", "fish sauce|nam pla|nuoc mam|=garum|fish stock", "Fischsauce|Fischsoße|Nam Pla|Nuoc Mam|Fischfond|Fischsud|Fischbrühe", { contains: ["fishSauce", "histamine"], may: ["wheat", "celery", "crustacean"] }),
  hidden("dashi", "dashi|katsuobushi|bonito flakes|hondashi", "Dashi|Bonitoflocken|Katsuobushi", { contains: ["fishSauce", "histamine"] }),
  hidden("kombuDashi", "kombu dashi|shiitake dashi", "Kombu-Dashi|Shiitake-Dashi", { may: ["fishSauce"], masks: "dashi" }),
  hidden("shrimpPaste", "shrimp paste|prawn paste|belacan|terasi|bagoong", "Garnelenpaste|Shrimppaste|Belacan|Terasi|=Trassi", { contains: ["shrimp", "histamine"], may: ["fish"] }),
  hidden("worcester", "worcestershire|worcester|worcestershire sauce|worcester sauce", "Worcester|Worcestershire|Worcestersauce", { contains: ["anchovy"], often: ["barley"], may: ["soya", "celery"] }),
  memory("oysterSauce", "oyster sauce", "Austernsauce|Austernsoße", { contains: ["mollusc"], often: ["soya", "wheat"] }),
  memory("oysterSauceMushroom", "vegetarian oyster sauce|mushroom oyster sauce", "vegetarische Austernsauce", { often: ["soya", "wheat"], may: ["mollusc"], masks: "oyster austernsauce" }),
  memory("xoSauce", "xo sauce", "XO-Sauce", { contains: ["mollusc", "shrimp"], often: ["pork", "soya", "wheat"] }),
  memory("prawnCracker", "prawn cracker|krupuk|kerupuk|shrimp chips", "Krabbenbrot|Krabbenchips|Krupuk|Kroepoek|Shrimpchips", { contains: ["shrimp"], may: ["fish"], masks: "brot krabben" }),
];
