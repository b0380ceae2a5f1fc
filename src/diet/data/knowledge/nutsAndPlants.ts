/** Nuts, seeds, legumes, vegetables and fruit with a legal or a bodily reason to be named. */
import { rowsOf } from "../../knowledgeRow.js";

const row = rowsOf("ingredient", {
  source: "common practice: names of nuts, seeds and plants",
  mark: "common practice",
});
const annex = rowsOf("ingredient", {
  source: "Regulation (EU) No 1169/2011, Annex II, secondary quotation",
  mark: "SEEN",
});
const japan = rowsOf("ingredient", {
  source: "Japan, recommended items: Osaka Prefecture note, 5 March 2025",
  mark: "SEEN",
});
const memory = rowsOf("ingredient", { source: "intolerance advice, value from memory", mark: "MEMORY" });

// prettier-ignore
export const NUTS_AND_PLANTS = [
  annex("treeNut", "nut|nutty|nut butter", "Nuss|Schalenfrüchte|Studentenfutter", { contains: ["treeNut"], may: ["peanut"], masks: "butter" }),
  annex("almond", "almond|orgeat", "Mandel", { contains: ["almond"] }),
  annex("marzipan", "marzipan|frangipane|amaretti|bakewell", "Marzipan|Amarettini|Amaretti|Bethmännchen", { contains: ["almond"], may: ["alcohol", "egg"] }),
  annex("hazelnut", "hazelnut", "Haselnuss", { contains: ["hazelnut"] }),
  annex("gianduja", "gianduja", "Gianduja|Nugat", { contains: ["hazelnut"], often: ["milk", "soya"], may: ["almond"], masks: "nduja" }),
  annex("praline", "praline|nougat|turron|torrone|=brittle", "Praline|Nougat|Krokant|Turrón|Torrone|Türkischer Honig", { often: ["almond", "hazelnut"], may: ["milk", "egg", "alcohol", "peanut", "beeProduct"], masks: "honig" }),
  annex("walnut", "walnut|muhammara", "Walnuss|Baumnuss|Muhammara", { contains: ["walnut"] }),
  annex("cashew", "cashew", "Cashew|Kaschunuss", { contains: ["cashew"] }),
  annex("pecan", "pecan", "Pekannuss|Pecannuss", { contains: ["pecan"] }),
  annex("brazilNut", "brazil nut", "Paranuss", { contains: ["brazilNut"] }),
  annex("pistachio", "pistachio", "Pistazie", { contains: ["pistachio"] }),
  annex("macadamia", "macadamia|queensland nut", "Macadamia|Queenslandnuss", { contains: ["macadamia"] }),
  row("pineNut", "pine nut|pine kernel|pignoli", "Pinienkern|Pinoli", { contains: ["pineNut"], noteEn: "Pine nuts are not in the EU and UK lists, so nobody there has to name them.", noteDe: "Pinienkerne stehen nicht in den Listen der EU und des VK; niemand muss sie dort nennen." }),
  row("nutDrink", "almond milk|almond drink", "Mandelmilch|Mandeldrink|Mandelsahne|Mandeljoghurt", { contains: ["almond"], masks: "milk milch sahne joghurt" }),
  row("nutCheese", "cashew cheese|cashew milk|cashew cream", "Cashewkäse|Cashewmilch|Cashewcreme|Cashewsahne", { contains: ["cashew"], masks: "milk cheese cream milch kase creme sahne" }),
  row("nutButters", "almond butter|cashew butter|hazelnut butter", "Nussmus", { contains: ["treeNut"], masks: "butter" }),
  annex("peanut", "peanut|groundnut|monkey nut", "Erdnuss", { contains: ["peanut"], masks: "nut nuss" }),
  annex("peanutButter", "peanut butter", "Erdnussbutter|Erdnussmus|Erdnusscreme", { contains: ["peanut"], masks: "butter creme nuss nussmus" }),
  annex("peanutOilRefined", "refined peanut oil|refined groundnut oil", "raffiniertes Erdnussöl", { contains: ["refinedPeanutOil"] }),
  annex("soya", "soya|soy|soybean|tofu|tempeh|edamame|natto|textured vegetable protein|bean curd|tofu sausage", "Soja|Tofu|Tempeh|Edamame|Natto|Sojahack|Tofuwurst|Tofuwürstchen|Sojawurst|Tofuschnitzel|Sojaschnitzel", { contains: ["soya"], masks: "sausage wurst wurstchen schnitzel hack" }),
  annex("misoPaste", "=miso", "=Miso|Miso-", { contains: ["soya"], may: ["barley", "wheat", "fishSauce"] }),
  annex("soyaDrink", "soya milk|soy milk|soya cream|soy cream|soy yogurt|soya yoghurt", "Sojamilch|Sojasahne|Sojajoghurt|Sojacreme|Sojaquark", { contains: ["soya"], masks: "milk cream yogurt yoghurt milch sahne joghurt creme quark" }),
  annex("soyaOil", "refined soya oil|refined soybean oil", "raffiniertes Sojaöl", { contains: ["refinedSoyaOil"] }),
  annex("lecithin", "lecithin", "Lecithin|Lezithin", { often: ["soya"], unclear: ["egg"] }),
  annex("sesame", "sesame|tahini|gomashio|zaatar", "Sesam|Tahin|Tahini|Gomasio|Zaatar", { contains: ["sesame"] }),
  annex("halva", "halva|halwa|halvah", "Halva|Halwa", { contains: ["sesame"], may: ["pistachio", "almond", "treeNut", "milk", "wheat"], noteEn: "Halva of the eastern Mediterranean is sesame; Indian halwa is often semolina or carrot with milk and nuts.", noteDe: "Halva vom östlichen Mittelmeer ist Sesam; indisches Halwa ist oft Grieß oder Karotte mit Milch und Nüssen." }),
  row("seedMix", "dukkah|seed mix|mixed seeds", "Dukkah|Saatenmischung|Körnermischung", { often: ["sesame"], may: ["hazelnut", "almond", "treeNut"] }),
  row("coconut", "coconut", "Kokosnuss|Kokos", { contains: ["coconut"], masks: "nuss" }),
  row("coconutMilk", "coconut milk|coconut cream|creamed coconut", "Kokosmilch|Kokosnussmilch|Kokoscreme|Kokosjoghurt|Kokossahne", { contains: ["coconut"], masks: "milk cream creamed milch creme joghurt sahne nuss" }),
  row("chestnut", "chestnut|marron glace", "Esskastanie|=Marone|Maroni|Maronen-|Kastanie", { contains: ["chestnut"], masks: "nut" }),
  annex("celery", "celery|celeriac|mirepoix|soffritto", "Sellerie|Suppengrün|Suppengemüse|Wurzelwerk|Mirepoix|Soffritto", { contains: ["celery"], masks: "suppen suppe" }),
  annex("mustard", "mustard|=dijon", "Senf|Senfmehl|Mostrich", { contains: ["mustard"], masks: "mehl ostrich" }),
  annex("sulphites", "sulphite|sulfite|sulphur dioxide|sulfur dioxide|sulphured", "Sulfit|Sulphit|Schwefeldioxid|geschwefelt", { contains: ["sulphites"] }),
  row("driedFruit", "dried fruit|raisin|sultana|candied peel", "Trockenobst|Dörrobst|Rosine|Sultanine|Korinthe|Zitronat|Orangeat", { often: ["sulphites", "fructose"], may: ["polyol", "orange"], masks: "fruit" }),
  row("vinegar", "vinegar|wine vinegar|balsamic|sherry vinegar", "Essig|Weinessig|Balsamico|Rotweinessig|Weißweinessig|Sherryessig|Branntweinessig", { often: ["sulphites"], unclear: ["alcohol"], masks: "wine wein rotwein weisswein sherry branntwein" }),
  row("curryPowder", "curry powder|spice mix|spice blend|seasoning", "Currypulver|Gewürzmischung|Gewürzsalz|Kräutersalz|Würzmischung|Streuwürze", { often: ["mustard", "celery"], may: ["wheat", "milk", "sesame", "soya"] }),
  row("yeastExtract", "yeast extract|hydrolysed vegetable protein|hydrolyzed vegetable protein", "Hefeextrakt|Speisewürze|hydrolysiertes Pflanzeneiweiß", { often: ["barley"], may: ["celery", "soya", "wheat"] }),
  row("flavouring", "flavouring|flavoring|natural flavour|natural flavor", "=Aroma|-aroma|Aromen", { unclear: ["eitherOrigin", "milk", "celery", "alcohol"] }),
  row("vegetableProtein", "plant protein|vegetable protein|meat substitute|meat alternative|veggie burger|vegan cheese", "Pflanzenprotein|Pflanzeneiweiß|Fleischersatz|Fleischalternative|Veggieburger|Bratling|Käseersatz|Pflanzenwurst|Veggiewurst|Sojafleisch", { often: ["soya", "wheat"], may: ["egg", "lowLactoseMilk", "lupin", "mustard", "celery"], masks: "meat burger cheese fleisch kase wurst eiweiss" }),
  row("margarine", "margarine|vegetable fat|shortening", "Margarine|Pflanzenfett|Backfett|Pflanzencreme|Frittierfett", { may: ["milk", "eitherOrigin", "soya", "animalFat"], masks: "creme" }),
  row("honey", "honey|royal jelly|propolis", "Honig|Gelée royale|Propolis", { contains: ["beeProduct"], often: ["fructose"], masks: "jelly gelee" }),
  row("mead", "=mead", "Honigwein", { contains: ["beeProduct", "alcohol"], masks: "wein" }),
  row("beeswax", "beeswax", "Bienenwachs", { contains: ["beeProduct"] }),
  japan("orange", "orange|marmalade", "Orange|Apfelsine", { contains: ["orange"], masks: "apfel" }),
  japan("kiwi", "kiwi", "Kiwi", { contains: ["kiwi"] }),
  japan("banana", "banana|plantain", "Banane", { contains: ["banana"] }),
  japan("peach", "peach|nectarine", "Pfirsich|Nektarine", { contains: ["peach"], often: ["polyol"] }),
  japan("yam", "=yam|nagaimo", "Yamswurzel", { contains: ["yam"] }),
  japan("apple", "apple|applesauce", "Apfel", { contains: ["apple"], often: ["fructose", "polyol"] }),
  memory("fructoseRich", "fructose|agave|=pear|mango|date syrup|fruit juice|fruit sugar|watermelon", "Fruktose|Fructose|Agave|Birne|Mango|Dattel|Fruchtzucker|Fruchtsaft|Wassermelone|Feige", { contains: ["fructose"] }),
  memory("polyolRich", "sorbitol|xylitol|maltitol|mannitol|isomalt|erythritol|=plum|prune|cherry|apricot", "Sorbit|Xylit|Maltit|Mannit|Isomalt|Erythrit|Pflaume|Zwetschge|Kirsche|Aprikose|Marille|Sorbitol|Birkenzucker", { contains: ["polyol"], masks: "malt kirsch" }),
  memory("histamineRich", "sauerkraut|spinach|tomato|aubergine|fermented|avocado", "Sauerkraut|Spinat|Tomate|Aubergine|fermentiert|Avocado|Melanzani|Paradeiser", { often: ["histamine"] }),
];
