/** Flour, bread, pasta, malt: where gluten, egg and milk sit. */
import { rowsOf } from "../../knowledgeRow.js";

const row = rowsOf("ingredient", {
  source: "common practice: bakery and pasta terms",
  mark: "common practice",
});
const dish = rowsOf("dish", { source: "common practice: classic recipes", mark: "common practice" });
const hidden = rowsOf("ingredient", { source: "hidden ingredients, value from memory", mark: "MEMORY" });
const annex = rowsOf("ingredient", {
  source: "Regulation (EU) No 1169/2011, Annex II item 1 with its exceptions, secondary quotation",
  mark: "SEEN",
});

// prettier-ignore
export const CEREALS = [
  annex("gluten", "gluten", "Gluten|glutenhaltig|Klebereiweiß", { contains: ["glutenCereal"] }),
  annex("wheat", "wheat|kamut|khorasan|=einkorn|=emmer|triticale|=bran", "Weizen|Kamut|=Einkorn|Einkorn-|=Emmer|Triticale|=Kleie|Weizenstärke|Weizenkleber", { contains: ["wheat"], masks: "starke" }),
  annex("durum", "durum", "Dürüm|Hartweizen", { contains: ["wheat"], may: ["meat"], noteEn: "Durum is a wheat; dürüm is a filled wheat wrap, mostly with meat.", noteDe: "Durum ist ein Weizen; Dürüm ist ein gefülltes Weizenfladenbrot, meist mit Fleisch." }),
  annex("spelt", "=spelt|freekeh|farro", "Dinkel|Grünkern|Freekeh|Farro", { contains: ["wheat"] }),
  annex("rye", "=rye|pumpernickel", "Roggen|Pumpernickel|Schwarzbrot|Knäckebrot", { contains: ["rye"], may: ["wheat"], masks: "brot" }),
  annex("barley", "barley|=malt|malted", "Gerste|Graupen|Malz", { contains: ["barley"] }),
  annex("oats", "oat|oatmeal|oatcake|porridge|=muesli|granola|flapjack", "Hafer|=Müsli|Porridge|Granola", { contains: ["oats"], may: ["wheat", "barley", "almond", "hazelnut"] }),
  annex("oatDrink", "oat milk|oat drink|oat cream", "Hafermilch|Haferdrink|Hafersahne|Haferjoghurt", { contains: ["oats"], masks: "milk cream milch sahne joghurt" }),
  annex("glucoseSyrup", "glucose syrup|dextrose|maltodextrin", "Glukosesirup|Glucosesirup|Dextrose|Maltodextrin|Traubenzucker", { may: ["wheatSyrup"], masks: "malt" }),
  row("flour", "=flour|=floured|=batter|=roux|breading|breadcrumb|breaded|crumbed|panko|crouton|battered", "Mehl|Mehlschwitze|Einbrenn|=Panade|Panierung|paniert|Brösel|Panko|Croûton|Backteig|Teigmantel|Brennsuppe", { contains: ["glutenCereal"], often: ["wheat"], may: ["egg", "milk", "lupin"], masks: "suppe" }),
  row("gebacken", "baked or fried in breadcrumbs", "gebacken|herausgebacken", { may: ["wheat", "egg", "milk"], noteEn: "In Austria and Bavaria this often means breaded and fried.", noteDe: "In Österreich und Bayern heißt das oft paniert und frittiert." }),
  row("bierteig", "beer batter|beer battered", "Bierteig", { contains: ["alcohol", "glutenCereal"], often: ["wheat", "barley"], may: ["egg"] }),
  row("breadedFried", "chicken kiev|milanesa", "Wiener Art|Mailänder Art|Pariser Art", { often: ["wheat", "egg"], may: ["milk", "agedCheese"], masks: "wiener" }),
  row("bread", "bread|=bun|bagel|baguette|ciabatta|sourdough|=pita|=pitta|toast|toastie|sandwich|panini|crostini|bruschetta|focaccia|crumpet|english muffin|=wrap|=pide", "Brot|Brötchen|Semmel|Schrippe|=Weckle|=Weckerl|Baguette|Ciabatta|Toast|=Pita|=Pide|Crostini|Bruschetta|Focaccia|=Stulle|Sandwich|Panini|=Wrap|Backerbsen|Bagel|Zwieback|Sauerteig", { contains: ["glutenCereal"], often: ["wheat"], may: ["rye", "barley", "milk", "egg", "lard", "sesame", "soya", "lupin", "eitherOrigin"] }),
  row("sesameBread", "simit|burger bun", "Simit|Burgerbrötchen|Hamburgerbrötchen", { contains: ["wheat"], often: ["sesame"], may: ["milk", "egg"], masks: "burger hamburger" }),
  row("pretzel", "pretzel|lye roll", "Brezel|Brezn|=Breze|Laugengebäck|Laugenstange", { contains: ["wheat"], may: ["lard", "milk", "barley"] }),
  row("naan", "naan", "Naan", { contains: ["wheat", "milk"], may: ["egg"] }),
  row("chapati", "chapati|=roti|paratha|=poori", "Chapati|=Roti|Paratha", { contains: ["wheat"], may: ["lowLactoseMilk"] }),
  row("brioche", "brioche|croissant|pain au chocolat|danish pastry|challah|panettone", "Brioche|Croissant|Hefezopf|Plunder|Striezel|Panettone|Franzbrötchen|Schnecke|Schneckennudel", { contains: ["wheat", "milk"], often: ["egg"], may: ["almond", "hazelnut"], masks: "nudel brotchen" }),
  row("tortilla", "tortilla|nacho|=taco", "Tortilla|=Taco|Nacho", { often: ["wheat"], may: ["lard", "egg"], noteEn: "A Mexican tortilla is wheat or maize; a Spanish one is an egg dish.", noteDe: "Eine mexikanische Tortilla ist aus Weizen oder Mais, eine spanische ist ein Eiergericht." }),
  row("pastry", "pastry|shortcrust|=filo|phyllo|=pie|=tart|tartlet|strudel|vol au vent|turnover|profiterole|eclair|=choux", "Teig|Strudel|Yufka|=Tarte|-tarte|Tartelette|Windbeutel|Eclair|Profiterole|=Pie|Törtchen|Tortelett", { contains: ["wheat"], often: ["milk", "egg"], may: ["lard", "almond", "treeNut"] }),
  row("pasta", "pasta|spaghetti|penne|linguine|fusilli|rigatoni|macaroni|farfalle|=orzo|bucatini|vermicelli|orecchiette|conchiglie|=ziti", "Pasta|Spaghetti|Penne|Linguine|Fusilli|Rigatoni|Makkaroni|Farfalle|Orecchiette|Bucatini|Spirelli|Teigwaren|Muschelnudel|Muschelpasta|Conchiglie", { contains: ["wheat"], may: ["egg", "soya", "lupin"], masks: "muschel nudel teig" }),
  row("freshPasta", "fresh pasta|tagliatelle|fettuccine|pappardelle|ravioli|tortellini|cannelloni|agnolotti|tagliolini", "frische Pasta|Tagliatelle|Fettuccine|Pappardelle|Ravioli|Tortellini|Cannelloni|Tagliolini|Agnolotti", { contains: ["wheat"], often: ["egg"], may: ["milk", "meat", "agedCheese"] }),
  row("noodles", "noodle|chow mein|lo mein", "Nudel|Buchstabensuppe", { contains: ["wheat"], often: ["egg"], may: ["buckwheat"], masks: "suppe" }),
  row("udon", "udon", "Udon", { contains: ["wheat"], often: ["fishSauce"], may: ["buckwheat", "egg"] }),
  row("spaetzle", "spaetzle", "Spätzle|Spätzli|Knöpfle|Nockerl", { contains: ["wheat", "egg"], may: ["milk"] }),
  row("gnocchi", "gnocchi|potato dumpling", "Gnocchi|Schupfnudel|Kloß|Klöße|Knödel|Fingernudel|Bubespitzle", { often: ["wheat", "egg"], may: ["milk", "sulphites"], masks: "nudel" }),
  row("breadDumpling", "bread dumpling|semolina dumpling", "Semmelknödel|Serviettenknödel|Brezenknödel|Grießnockerl|Grießklößchen|Grießknödel", { contains: ["wheat", "egg", "milk"], may: ["pork"] }),
  row("suetDumpling", "suet dumpling", "Talgklöße", { contains: ["wheat", "beefFat"] }),
  row("semolina", "semolina|cream of wheat", "Grieß", { contains: ["wheat"], often: ["milk"], masks: "cream" }),
  row("bulgur", "bulgur|bulghur|couscous|seitan|tabbouleh|tabouleh|kisir", "Bulgur|Couscous|Seitan|Taboulé|Kısır", { contains: ["wheat"], may: ["soya"] }),
  row("cornflakes", "cornflakes|cereal", "Cornflakes|Cerealien|Getreide", { often: ["barley", "glutenCereal"], may: ["treeNut", "peanut", "milk"] }),
  row("buckwheat", "buckwheat|kasha", "Buchweizen", { contains: ["buckwheat"], masks: "wheat weizen" }),
  row("blini", "blini", "Blini", { contains: ["buckwheat"], often: ["wheat", "egg", "milk"] }),
  row("soba", "=soba|soba noodle", "=Soba|Buchweizennudel", { contains: ["buckwheat"], often: ["wheat", "fishSauce"], masks: "noodle nudel" }),
  dish("galetteBretonne", "galette|buckwheat galette|buckwheat crepe|buckwheat pancake", "Galette|Galette Bretonne|Buchweizenpfannkuchen|Buchweizen-Crêpe", { contains: ["buckwheat"], often: ["milk"], may: ["wheat", "egg", "pork", "agedCheese", "almond"], masks: "crepe pancake pfannkuchen" }),
  row("lupin", "lupin|lupin flour|lupini", "Lupine|Lupinenmehl", { contains: ["lupin"], masks: "mehl flour" }),
  row("cornbread", "cornbread", "Maisbrot", { often: ["wheat", "milk", "egg"], masks: "brot bread" }),
  row("polenta", "polenta|=grits", "Polenta|Maisgrieß", { may: ["milk", "meatStock", "agedCheese"], masks: "griess" }),
  hidden("riceNoodles", "rice noodle|glass noodle|rice vermicelli|shirataki noodle|zucchini noodle", "Reisnudel|Glasnudel|Zucchininudel|Shirataki-Nudel|Konjaknudel|Linsennudel|Linsenpasta", { masks: "noodle nudel vermicelli pasta" }),
  hidden("grainFreeFlour", "rice flour|chickpea flour|gram flour|cornflour|potato flour|cornstarch|potato starch", "Reismehl|Kichererbsenmehl|Maismehl|Kartoffelmehl|Tapiokamehl|Maisstärke|Kartoffelstärke|Johannisbrotkernmehl|Guarkernmehl", { masks: "flour mehl brot starch starke" }),
  hidden("almondFlour", "ground almonds|almond flour", "Mandelmehl", { contains: ["almond"], masks: "flour mehl" }),
  hidden("coconutFlour", "coconut flour", "Kokosmehl", { contains: ["coconut"], masks: "flour mehl" }),
  hidden("chestnutFlour", "chestnut flour", "Kastanienmehl", { contains: ["chestnut"], masks: "flour mehl" }),
  hidden("soyaFlour", "soya flour|soy flour", "Sojamehl", { contains: ["soya"], masks: "flour mehl" }),
  hidden("starch", "starch|thickener", "=Stärke|-stärke|Verdickungsmittel", { unclear: ["wheat"] }),
];
