/** Everyday words of menus in which a food's name only seems to hide: none may raise a caution. Common practice. */
import { expect, it } from "vitest";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import { SUBSTANCES } from "../../src/diet/data/substances.js";
import { DIETS, emptyProfile, type DietProfile } from "../../src/diet/profile.js";

const everything: DietProfile = {
  ...emptyProfile("EU"),
  diets: DIETS,
  coeliac: true,
  allergies: SUBSTANCES.filter((row) => "allergen" in row).map(({ id }) => ({
    allergen: id,
    severity: "unknown",
    note: "",
  })),
};

const GERMAN =
  "Speisekarte Tagespreis Hinweis Beilage Beilagensalat hausgemacht klassisch klassische gutbürgerlich Bürgermeister " +
  "Küchenchef Empfehlung romantisch lässig Rahmen Nachweis Automat spezifisch stressig Kreis weiß heiß Preis " +
  "Kopfsalat Gurke Petersilie Schnittlauch Rosmarin Thymian Basilikum Zucchini Paprika Möhre Karotte Kartoffel " +
  "Salzkartoffeln Petersilienkartoffeln Blumenkohl Brokkoli Rosenkohl Kohlrabi Lauch Zwiebel Knoblauch Ingwer " +
  "Kürbis Pilze Champignons Pfifferlinge Steinpilze Linsen Kichererbsen Bohnen Erbsen Mais Reis Basmatireis Hirse " +
  "Quinoa Amaranth Himbeeren Erdbeeren Heidelbeeren Johannisbeeren Zitrone Limette Granatapfel Ananas Melone " +
  "Muskatnuss Zimt Pfeffer Salz Zucker Wasser Mineralwasser Kaffee Tee Olivenöl Rapsöl Sonnenblumenöl Minze " +
  "gegrillt gedünstet geschmort geröstet gebraten frisch saftig knusprig hausgemachte unser unsere dazu serviert " +
  "Gänseblümchen Löwenzahn Rucola Feldsalat Mangold Schalotten Fenchel Rettich Radieschen Rote Bete Pastinake eine " +
  "Genuss genießen Teller Portion täglich Mittagstisch Abendkarte Getränke Öffnungszeiten Salzburger Magdeburger Steigerwald";

const ENGLISH =
  "menu starters mains sides daily special served with seasonal fresh grilled roasted steamed sauteed chopped sliced " +
  "diced grated crispy crunchy juicy house homemade price charge service table lettuce cucumber parsley chives rosemary " +
  "thyme basil courgette pepper carrot potato potatoes cauliflower broccoli sprouts leek onion garlic ginger pumpkin " +
  "mushroom mushrooms lentils chickpeas beans peas corn rice millet quinoa strawberry raspberry blueberry blackberry " +
  "lemon lime pomegranate pineapple melon gooseberry tamarind nutmeg cinnamon salt sugar water coffee tea oil mint " +
  "shallots fennel radish beetroot parsnip rocket brother other another mother selfish grinder mayor reheated rehearsal " +
  "starter portion passport chained supper delivery eggplant grape grapes classic glass romantic one turkish";

it.each(GERMAN.split(" "))("%s", (word) => {
  expect(cautionsFor({ text: word, profile: everything }).map(({ id }) => id)).toEqual([]);
});

it.each(ENGLISH.split(" "))("%s", (word) => {
  expect(cautionsFor({ text: word, profile: everything }).map(({ id }) => id)).toEqual([]);
});
