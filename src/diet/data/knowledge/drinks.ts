/** Drinks, alcohol in food, and what drinks are cleared with. */
import { rowsOf } from "../../knowledgeRow.js";

const row = rowsOf("ingredient", { source: "common practice: names of drinks", mark: "common practice" });
const fining = rowsOf("ingredient", {
  source: "fining of beer and wine: hidden animal ingredients, secondary quotation",
  mark: "SEEN",
});

// prettier-ignore
export const DRINKS = [
  fining("wine", "=wine|champagne|prosecco|=cava|chardonnay|riesling|merlot|sangria|vermouth|=spritz", "Wein|=Sekt|Sekt-|Champagner|Prosecco|Riesling|Wermut|Sangria|Lambrusco|=Bowle|Federweißer", { contains: ["wine"], often: ["sulphites"], may: ["isinglass", "egg", "lowLactoseMilk", "gelatine", "histamine"], ask: "alcohol", masks: "lamb" }),
  fining("beer", "=beer|=ale|=lager|=stout|=ipa|pilsner", "Bier|Dunkelbier|Schwarzbier|Weißbier|Weizenbier|Starkbier|Bockbier|Altbier|Hefeweizen|=Pils|Pilsner|Kölsch|=Radler", { contains: ["alcohol", "barley"], often: ["wheat"], may: ["isinglass", "gelatine"], ask: "alcohol", masks: "weizen" }),
  row("alcoholFreeBeer", "alcohol free beer|non alcoholic beer", "alkoholfreies Bier|Malzbier|Malztrunk", { contains: ["barley"], often: ["wheat"], may: ["alcohol"], masks: "beer bier alcohol" }),
  fining("cider", "=cider|=perry|cidre", "Cidre|Apfelwein|=Most|Äppelwoi", { often: ["alcohol", "sulphites", "apple"], may: ["gelatine", "isinglass"], masks: "wein apfel" }),
  row("fortified", "sherry|=port|marsala|madeira", "Sherry|Portwein|Marsala|Madeira", { contains: ["wine"], often: ["sulphites"] }),
  row("spirits", "brandy|cognac|=rum|whisky|whiskey|=bourbon|vodka|=gin|tequila|grappa|=schnapps|=kirsch|absinthe|pastis|=ouzo|=raki|mezcal|calvados|armagnac|flambeed|=spirits", "Weinbrand|Cognac|=Rum|Rumtopf|Rumkugel|Rumrosine|Rumsauce|Whisky|Wodka|Grappa|Schnaps|Kirschwasser|Obstler|Tequila|Branntwein|Obstbrand|=Ouzo|=Raki|flambiert|Spirituose|Himbeergeist", { contains: ["alcohol"], masks: "wein kirsch rosine" }),
  row("liqueur", "liqueur|amaretto|limoncello|triple sec|creme de cassis|creme de menthe|=bitters|sambuca", "Likör|Amaretto|Limoncello|Crème de Cassis|Sambuca", { contains: ["alcohol"], may: ["milk", "egg", "almond"], masks: "creme" }),
  row("cocktail", "cocktail|martini|daiquiri|mojito|pina colada", "Cocktail|Longdrink|Mojito|Piña Colada", { often: ["alcohol"], may: ["egg", "milk"] }),
  row("bloodyMary", "bloody mary|michelada", "Bloody Mary", { often: ["alcohol", "anchovy", "celery"] }),
  row("prawnCocktail", "prawn cocktail|shrimp cocktail", "Krabbencocktail|Garnelencocktail|Shrimpscocktail", { contains: ["shrimp"], often: ["egg", "mustard"], may: ["alcohol"], masks: "cocktail krabben krabbe" }),
  row("vanillaExtract", "vanilla extract|rum flavour", "Vanilleextrakt|Rumaroma", { may: ["alcohol"], masks: "rum aroma" }),
  row("alcoholWord", "alcohol|alcoholic|ethanol", "Alkohol|alkoholisch|Ethanol", { contains: ["alcohol"] }),
  row("kombucha", "kombucha|=kvass|ginger beer", "Kombucha|=Kwass", { may: ["alcohol", "barley", "rye"], masks: "beer" }),
  row("chaiLatte", "=chai|chai latte|matcha latte|golden milk", "=Chai|Chai Latte|Matcha Latte|Goldene Milch", { often: ["milk"] }),
  row("maltDrink", "malted milk|malt drink", "Malzkaffee|Getreidekaffee", { contains: ["barley"], may: ["milk", "rye"] }),
  row("juiceClear", "clear apple juice|clarified juice", "klarer Apfelsaft", { may: ["gelatine"] }),
  row("smoothie", "smoothie", "Smoothie", { may: ["milk", "soya", "beeProduct"] }),
];
