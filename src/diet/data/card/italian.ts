import type { CardTexts } from "../../cardTexts.js";

export const CARD_ITALIAN: CardTexts = {
  title: "Per la cucina: che cosa non posso mangiare",
  diets: {
    eatsFishNoMeat:
      "Mangio pesce, ma non carne: niente maiale, manzo, agnello, pollame, selvaggina, salumi, prosciutto, pancetta, strutto o brodo di carne.",
    ovoLactoVegetarian:
      "Sono vegetariano/a: niente carne, pollame, pesce o frutti di mare, né brodo, grasso o gelatina fatti con essi. Uova e latte vanno bene.",
    ovoVegetarian:
      "Sono vegetariano/a e non prendo latte: niente carne, pollame, pesce, frutti di mare, gelatina, latte, burro, panna o formaggio. Le uova vanno bene.",
    lactoVegetarian:
      "Sono vegetariano/a e non prendo uova: niente carne, pollame, pesce, frutti di mare, gelatina o uova. Il latte va bene.",
    vegan:
      "Non mangio nulla di origine animale: niente carne, pesce, frutti di mare, uova, latte, burro, formaggio, miele, gelatina, strutto o brodo fatto con essi.",
    halal:
      "La mia dieta è halal: niente maiale, strutto, prosciutto o pancetta, niente alcol nel cibo o nelle salse, nessun'altra carne, grasso o gelatina senza un certificato da mostrarmi.",
    kosher:
      "La mia dieta è kosher: niente maiale né frutti di mare, niente carne insieme al latte, niente carne, formaggio, vino o gelatina senza un certificato da mostrarmi.",
    ownList: "Non mangio ciò che è scritto sotto.",
  },
  groups: {
    meat: "carne",
    fish: "pesce",
    shellfish: "crostacei e molluschi",
    dairy: "latte e latticini",
    egg: "uova",
    nut: "frutta a guscio e arachidi",
    soya: "soia",
    alcohol: "alcol, anche nelle salse",
  },
  avoidedGroups: "Per favore, niente: {list}.",
  allergy: "Ho un'ALLERGIA alimentare a: {list}.",
  graveAllergy: "Una quantità molto piccola può mettere in pericolo la mia vita.",
  coeliac:
    "Ho la CELIACHIA: niente frumento, farro, segale, orzo o avena e niente fatto con essi, come farina, pangrattato, malto, birra o salsa di soia. Contano anche le briciole e la polvere di farina.",
  intolerances: {
    lactose: "lattosio",
    fructose: "molto fruttosio",
    sorbitol: "sorbitolo e altri polioli",
    histamine: "cibi ricchi di istamina (stagionati, affumicati, fermentati)",
    gluten: "glutine",
  },
  intolerance: "Non tollero: {list}. (È un'intolleranza, non un'allergia.)",
  ownWords: "Per favore, anche niente con: {list}.",
  crossContact:
    "Per favore usate padelle, taglieri, olio e utensili puliti, tenete il mio piatto lontano da ciò che ho nominato e non usate una friggitrice o griglia in comune.",
  written: "Per favore mostratemi gli ingredienti per iscritto e guardateli insieme a me.",
  ifUnsure: "Se non potete esserne certi, ditemelo per favore. Allora non lo mangerò.",
  help: "Questa scheda è un aiuto, non una garanzia.",
  source: "common practice: chef cards; own translation",
  mark: "common practice",
};
