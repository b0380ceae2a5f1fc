import type { CardTexts } from "../../cardTexts.js";

export const CARD_FRENCH: CardTexts = {
  title: "Pour la cuisine : ce que je ne peux pas manger",
  diets: {
    eatsFishNoMeat:
      "Je mange du poisson, mais pas de viande : ni porc, bœuf, agneau, volaille, gibier, saucisse, jambon, lardons, saindoux, ni bouillon de viande.",
    ovoLactoVegetarian:
      "Je suis végétarien·ne : ni viande, volaille, poisson, fruits de mer, ni bouillon, graisse ou gélatine qui en viennent. Les œufs et le lait me conviennent.",
    ovoVegetarian:
      "Je suis végétarien·ne et ne prends pas de lait : ni viande, volaille, poisson, fruits de mer, gélatine, lait, beurre, crème ou fromage. Les œufs me conviennent.",
    lactoVegetarian:
      "Je suis végétarien·ne et ne prends pas d'œufs : ni viande, volaille, poisson, fruits de mer, gélatine ou œuf. Le lait me convient.",
    vegan:
      "Je ne mange rien d'origine animale : ni viande, poisson, fruits de mer, œuf, lait, beurre, fromage, miel, gélatine, saindoux, ni bouillon qui en vient.",
    halal:
      "Mon régime est halal : ni porc, saindoux, jambon ou lardons, pas d'alcool dans les plats ou les sauces, pas d'autre viande, graisse ou gélatine sans certificat à me montrer.",
    kosher:
      "Mon régime est casher : ni porc, fruits de mer, pas de viande avec du lait, pas de viande, fromage, vin ou gélatine sans certificat à me montrer.",
    ownList: "Je ne mange pas ce qui est écrit plus bas.",
  },
  groups: {
    meat: "viande",
    fish: "poisson",
    shellfish: "crustacés et mollusques",
    dairy: "lait et produits laitiers",
    egg: "œuf",
    nut: "fruits à coque et arachides",
    soya: "soja",
    alcohol: "alcool, même dans les sauces",
  },
  avoidedGroups: "S'il vous plaît, pas de : {list}.",
  allergy: "J'ai une ALLERGIE alimentaire à : {list}.",
  graveAllergy: "Une très petite quantité peut mettre ma vie en danger.",
  coeliac:
    "J'ai la MALADIE CŒLIAQUE : ni blé, épeautre, seigle, orge ou avoine, ni rien qui en vient, comme farine, chapelure, malt, bière ou sauce soja. Les miettes et la poussière de farine comptent aussi.",
  intolerances: {
    lactose: "lactose",
    fructose: "beaucoup de fructose",
    sorbitol: "sorbitol et autres polyols",
    histamine: "aliments riches en histamine (affinés, fumés, fermentés)",
    gluten: "gluten",
  },
  intolerance: "Je ne supporte pas : {list}. (C'est une intolérance, pas une allergie.)",
  ownWords: "S'il vous plaît, rien non plus avec : {list}.",
  crossContact:
    "Merci d'utiliser des poêles, planches, huile et ustensiles propres, de tenir mon plat à l'écart de ce que j'ai nommé et de ne pas utiliser de friteuse ou de gril en commun.",
  written: "Merci de me montrer les ingrédients par écrit et de les parcourir avec moi.",
  ifUnsure: "Si vous n'êtes pas certain·e, dites-le-moi. Alors je ne le mangerai pas.",
  help: "Cette carte est une aide, pas une garantie.",
  source: "common practice: chef cards; own translation",
  mark: "common practice",
};
