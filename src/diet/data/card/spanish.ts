import type { CardTexts } from "../../cardTexts.js";

export const CARD_SPANISH: CardTexts = {
  title: "Para la cocina: lo que no puedo comer",
  diets: {
    eatsFishNoMeat:
      "Como pescado, pero no carne: nada de cerdo, ternera, cordero, ave, caza, embutido, jamón, tocino, manteca ni caldo de carne.",
    ovoLactoVegetarian:
      "Soy vegetariano/a: nada de carne, ave, pescado o marisco, ni caldo, grasa o gelatina hechos con ellos. Huevo y leche sí.",
    ovoVegetarian:
      "Soy vegetariano/a y no tomo leche: nada de carne, ave, pescado, marisco, gelatina, leche, mantequilla, nata o queso. Huevo sí.",
    lactoVegetarian:
      "Soy vegetariano/a y no tomo huevo: nada de carne, ave, pescado, marisco, gelatina o huevo. Leche sí.",
    vegan:
      "No como nada de origen animal: nada de carne, pescado, marisco, huevo, leche, mantequilla, queso, miel, gelatina, manteca ni caldo hecho con ellos.",
    halal:
      "Mi dieta es halal: nada de cerdo, manteca, jamón o tocino, nada de alcohol en la comida o la salsa, ninguna otra carne, grasa o gelatina sin un certificado que me puedan mostrar.",
    kosher:
      "Mi dieta es kosher: nada de cerdo ni marisco, nada de carne con leche, ninguna carne, queso, vino o gelatina sin un certificado que me puedan mostrar.",
    ownList: "No como lo que está escrito abajo.",
  },
  groups: {
    meat: "carne",
    fish: "pescado",
    shellfish: "marisco (crustáceos y moluscos)",
    dairy: "leche y productos lácteos",
    egg: "huevo",
    nut: "frutos secos y cacahuetes",
    soya: "soja",
    alcohol: "alcohol, también en las salsas",
  },
  avoidedGroups: "Por favor, nada de: {list}.",
  allergy: "Tengo ALERGIA alimentaria a: {list}.",
  graveAllergy: "Una cantidad muy pequeña puede poner en peligro mi vida.",
  coeliac:
    "Tengo ENFERMEDAD CELÍACA: nada de trigo, espelta, centeno, cebada o avena ni nada hecho con ellos, como harina, pan rallado, malta, cerveza o salsa de soja. También cuentan las migas y el polvo de harina.",
  intolerances: {
    lactose: "lactosa",
    fructose: "mucha fructosa",
    sorbitol: "sorbitol y otros polialcoholes",
    histamine: "alimentos ricos en histamina (curados, ahumados, fermentados)",
    gluten: "gluten",
  },
  intolerance: "No tolero: {list}. (Es una intolerancia, no una alergia.)",
  ownWords: "Por favor, tampoco nada con: {list}.",
  crossContact:
    "Por favor, usen sartenes, tablas, aceite y utensilios limpios, mantengan mi comida separada de lo que he nombrado y no usen una freidora o plancha común.",
  written: "Por favor, muéstrenme los ingredientes por escrito y repásenlos conmigo.",
  ifUnsure: "Si no lo saben con certeza, díganmelo, por favor. Entonces no lo comeré.",
  help: "Esta tarjeta es una ayuda, no una garantía.",
  source: "common practice: chef cards; own translation",
  mark: "common practice",
};
