/** Milk, cheese with its rennet, and egg. */
import { rowsOf } from "../../knowledgeRow.js";

const row = rowsOf("ingredient", { source: "common practice: dairy and egg terms", mark: "common practice" });
const hidden = rowsOf("ingredient", { source: "hidden ingredients, value from memory", mark: "MEMORY" });
const lactoseFree = rowsOf("ingredient", {
  source: "Food Safety Authority of Ireland, Lactose-free claims",
  mark: "SEEN",
});
const pdo = rowsOf("ingredient", {
  source: "product specifications of protected cheeses, secondary quotation",
  mark: "SEEN",
});
const pdoMemory = rowsOf("ingredient", {
  source: "product specifications of protected cheeses, value from memory",
  mark: "MEMORY",
});

// prettier-ignore
export const DAIRY_AND_EGG = [
  row("milk", "milk|milky|dairy|milkshake|=latte|cappuccino|flat white|cafe au lait|dulce de leche|hot chocolate", "Milch|Milchprodukt|Cappuccino|Latte Macchiato|Heiße Schokolade|Melange", { contains: ["milk"] }),
  row("cream", "cream|creamy|creamed|creme fraiche|smetana|=panna", "Sahne|=Panna|Rahm|=Obers|Schlagobers|Schmand|Creme|Crème fraîche", { contains: ["milk"] }),
  row("cremeSoup", "veloute", "Schaumsuppe|Schaumsüppchen|Velouté", { contains: ["milk"], often: ["meatStock", "celery"], may: ["wheat", "wine"] }),
  row("butter", "butter|buttery|buttered|beurre blanc", "Butter|Nussbutter", { contains: ["milk"], masks: "nuss butt" }),
  row("ghee", "ghee|clarified butter", "Ghee|Butterschmalz|Butterreinfett", { contains: ["lowLactoseMilk"], masks: "schmalz butter" }),
  row("buttermilk", "kefir|ayran|=lassi", "Kefir|Ayran|=Lassi|-lassi", { contains: ["milk"] }),
  row("yoghurt", "yoghurt|yogurt|=skyr|raita|labneh|tzatziki|cacik|fromage frais|quark", "Joghurt|Jogurt|=Skyr|Raita|Labneh|Tsatsiki|Zaziki|Cacik|Quark|=Topfen|Topfen-|Tzatziki", { contains: ["milk"], may: ["gelatine"] }),
  row("whey", "lactose|whey|milk sugar", "Laktose|Lactose|Molke|Milchzucker", { contains: ["lactose"] }),
  row("casein", "casein|caseinate|milk protein|lactalbumin|lactoglobulin", "Kasein|Casein|Kaseinat|Caseinat|Milcheiweiß|Milchprotein|Laktalbumin", { contains: ["lowLactoseMilk"], masks: "kase albumin milch" }),
  lactoseFree("lactoseFreeProduct", "lactose free|lactosefree", "laktosefrei|lactosefrei", { often: ["lowLactoseMilk"], masks: "laktose lactose", noteEn: "Lactose-free is not milk-free: milk protein may be in it.", noteDe: "Laktosefrei heißt nicht milchfrei: Milcheiweiß kann darin sein." }),
  hidden("nonDairyCreamer", "non dairy creamer|coffee whitener|creamer", "Kaffeeweißer", { often: ["lowLactoseMilk"], may: ["soya"], masks: "dairy cream", noteEn: "Non-dairy creamer is often made with casein, a milk protein.", noteDe: "Kaffeeweißer enthält oft Kasein, ein Milcheiweiß." }),
  hidden("iceCream", "ice cream|gelato|soft serve|=sundae|semifreddo|parfait|affogato|kulfi|banana split", "Eis|-eis|Eiscreme|Speiseeis|Eisbecher|Gelato|Semifreddo|Eiskaffee|Parfait|Softeis|Eisbombe", { contains: ["milk"], often: ["egg"], may: ["treeNut", "peanut", "wheat", "soya", "eitherOrigin"], masks: "cream banana" }),
  row("cheese", "cheese|cheesy|cheddar|gouda|=edam|=brie|camembert|raclette|halloumi|provolone|monterey jack|queso|fromage|formaggio|scamorza|=munster|reblochon|havarti", "Käse|Gouda|Edamer|=Brie|Camembert|Raclette|Halloumi|=Harzer|Limburger|Tilsiter|Cheddar|Butterkäse|Appenzeller|=Handkäs|Hirtenkäse", { contains: ["agedCheese"], often: ["animalRennet"], masks: "butter" }),
  row("freshCheese", "mozzarella|burrata|ricotta|cottage cheese|cream cheese|mascarpone|paneer|feta", "Mozzarella|Burrata|Ricotta|Hüttenkäse|Frischkäse|Mascarpone|Paneer|Feta|Fior di latte", { contains: ["milk"], may: ["animalRennet"], masks: "kase cream cheese" }),
  pdo("parmesan", "parmesan|parmigiano|parmigiano reggiano", "Parmesan|Parmigiano Reggiano", { contains: ["agedCheese", "animalRennet"], noteEn: "The product rules of Parmigiano Reggiano ask for calf rennet.", noteDe: "Die Produktvorschrift von Parmigiano Reggiano verlangt Kälberlab." }),
  pdo("granaPadano", "grana padano|=grana", "Grana Padano|=Grana", { contains: ["agedCheese", "animalRennet"], may: ["egg"], noteEn: "Grana Padano is made with calf rennet and may hold egg lysozyme (E1105).", noteDe: "Grana Padano wird mit Kälberlab gemacht und kann Lysozym aus Ei (E1105) enthalten." }),
  pdo("gorgonzola", "gorgonzola", "Gorgonzola", { contains: ["agedCheese", "animalRennet"] }),
  pdoMemory("roquefort", "roquefort", "Roquefort", { contains: ["agedCheese", "animalRennet"] }),
  pdoMemory("pecorinoRomano", "pecorino romano", "Pecorino Romano", { contains: ["agedCheese", "animalRennet"], noteEn: "Pecorino Romano is made with lamb rennet.", noteDe: "Pecorino Romano wird mit Lammlab gemacht." }),
  pdoMemory("gruyere", "gruyere|=comte|emmental de savoie|beaufort", "Gruyère|Greyerzer|=Comté|Emmental de Savoie|Beaufort", { contains: ["agedCheese", "animalRennet"] }),
  row("alpineCheese", "pecorino|emmental|emmenthal|swiss cheese|fontina|taleggio", "Pecorino|Emmentaler|Fontina|Taleggio|Tête de Moine", { contains: ["agedCheese"], often: ["animalRennet"] }),
  pdoMemory("manchego", "manchego", "Manchego", { contains: ["agedCheese"], unclear: ["animalRennet"] }),
  pdoMemory("cardoonCheese", "serra da estrela|azeitao|torta del casar", "Serra da Estrela|Azeitão|Torta del Casar", { contains: ["agedCheese"], noteEn: "Set with cardoon, a plant.", noteDe: "Wird mit Karde, einer Pflanze, dickgelegt." }),
  pdo("telemea", "telemea de ibanesti", "Telemea de Ibănești", { contains: ["agedCheese"], noteEn: "Its product rules name microbial rennet.", noteDe: "Die Produktvorschrift nennt mikrobielles Lab." }),
  row("egg", "egg|egg yolk|egg white|eggy|=albumen|=albumin|omelette|omelet|frittata|shakshuka|huevos|=tamago|menemen", "=Ei|=Eier|=Eiern|Eier-|Spiegelei|=Rührei|Enteneier|Ostereier|Landei|Frühstücksei|Freilandei|Solei|Eigelb|Eiklar|Hühnerei|Wachtelei|Vollei|Trockenei|Eipulver|Omelett|Frittata|Schakschuka|Eidotter|Dotter|Menemen", { contains: ["egg"], masks: "huhn huhner wachtel ente" }),
  row("eiweiss", "egg white or protein", "Eiweiß|Eischnee", { often: ["egg"], masks: "egg", noteEn: "The German word means egg white or any protein.", noteDe: "Eiweiß kann Eiklar oder irgendein Protein meinen." }),
  row("mayonnaise", "mayonnaise|=mayo|aioli|alioli|salad cream|thousand island|ranch dressing|marie rose|burger sauce", "Mayonnaise|Majonäse|=Mayo|-mayo|Aioli|Cocktailsauce|Burgersauce", { contains: ["egg"], often: ["mustard"], may: ["milk"], masks: "cream burger cocktail" }),
  row("remoulade", "remoulade|tartare sauce|tartar sauce|gribiche", "Remoulade|Sauce Tartare|Gribiche", { contains: ["egg", "mustard"], may: ["anchovy", "celery", "milk"], masks: "tartare" }),
  row("hollandaise", "hollandaise|bearnaise|sauce mousseline", "Hollandaise|Béarnaise", { contains: ["egg", "milk"], may: ["wine", "sulphites"] }),
  row("meringue", "meringue|pavlova|floating island|royal icing", "Baiser|Meringue|Pavlova|Schneenockerl|Schaumkuss|Schokokuss", { contains: ["egg"], may: ["milk", "almond", "coconut", "wheat"], masks: "nockerl" }),
  row("macaron", "=macaron", "=Macaron", { contains: ["almond", "egg"], often: ["milk"], may: ["hazelnut", "pistachio", "soya"] }),
  row("macaroon", "macaroon", "Makrone", { contains: ["egg"], often: ["almond", "coconut"], may: ["hazelnut", "treeNut", "wheat", "milk"] }),
  row("bakedAlaska", "baked alaska", "Omelette Surprise", { contains: ["egg", "milk"], often: ["wheat"], may: ["alcohol", "almond"] }),
  row("custard", "custard|creme anglaise|creme patissiere|creme caramel|pastry cream|pots de creme|pastel de nata|crema catalana", "Vanillesauce|Vanillesoße|Crème Caramel|Crema Catalana|Vanillecreme|Pastel de Nata|Bayerische Creme|Bayrisch Creme", { contains: ["milk"], often: ["egg"], may: ["gelatine", "wheat"], masks: "creme" }),
  row("cremeBrulee", "creme brulee", "Crème brûlée", { contains: ["milk", "egg"] }),
  row("pudding", "=pudding|rice pudding|blancmange", "Pudding|Flammeri|Milchreis", { contains: ["milk"], may: ["egg", "gelatine"] }),
  row("eggnog", "eggnog|advocaat|zabaglione|sabayon|zabaione", "Eierlikör|Eierpunsch|Zabaione|Weinschaumcreme|Weinschaum|Sabayon", { contains: ["egg", "alcohol"], may: ["milk"], masks: "creme wein" }),
  row("condensedCheeseDip", "fondue|mornay", "Fondue|Mornay", { often: ["agedCheese", "animalRennet", "wheat"], may: ["wine", "meat", "egg"] }),
];
