/**
 * The recipes of the invented night market. For meat, fish, shellfish and egg every one of the sixteen
 * combinations has two dishes, so that no group foretells another; and six of the dishes are served cool, with
 * every one of the four groups in half of them, so that heat and steam foretell none either (checks MX-11,
 * MX-12). Soya, dairy, nuts and alcohol come as they come.
 */
import type { IngredientName } from "./ingredients.js";

export interface Recipe {
  readonly id: string;
  readonly name: string;
  readonly hot: boolean;
  readonly recipe: Readonly<Partial<Record<IngredientName, number>>>;
}

const hot = (id: string, name: string, recipe: Recipe["recipe"]): Recipe => ({ id, name, hot: true, recipe });
const cool = (id: string, name: string, recipe: Recipe["recipe"]): Recipe => ({
  id,
  name,
  hot: false,
  recipe,
});

const NONE_OR_ONE: readonly Recipe[] = [
  hot("mushroom-broth", "Mushroom and cabbage broth with rice noodles", {
    mushroom: 1,
    cabbage: 1,
    riceNoodles: 1,
    garlic: 0.5,
    soySauce: 0.5,
  }),
  cool("mango-rice", "Sticky rice with mango, coconut and sweet milk", {
    rice: 1,
    fruit: 1.3,
    coconut: 1.2,
    condensedMilk: 0.6,
    walnut: 0.5,
  }),
  hot("beef-broth", "Clear beef broth with rice noodles", {
    beef: 1,
    riceNoodles: 1,
    ginger: 0.6,
    springOnion: 0.8,
    herbs: 0.4,
  }),
  hot("lamb-skewer", "Charcoal lamb skewer with cumin", { lamb: 1.2, cumin: 1, charcoal: 1.2, garlic: 0.5 }),
  hot("mackerel-grill", "Grilled mackerel with lime butter", {
    seaFish: 1.2,
    charcoal: 1,
    lime: 0.7,
    butter: 0.5,
  }),
  hot("river-fish", "Steamed river fish with ginger", {
    riverFish: 1.3,
    ginger: 1,
    springOnion: 0.7,
    soySauce: 0.6,
  }),
  hot("wine-clams", "Clams steamed in rice wine", { clam: 1.2, riceWine: 1, garlic: 0.9, springOnion: 0.4 }),
  hot("prawn-dumplings", "Prawn dumplings in a thin skin", {
    prawn: 1.1,
    wheatDough: 0.7,
    ginger: 0.3,
    sesame: 0.3,
  }),
  hot("tomato-egg", "Tomato and egg over wheat noodles", {
    egg: 1.4,
    tomato: 1.2,
    wheatDough: 0.8,
    garlic: 0.4,
    fryingOil: 0.5,
  }),
  hot("custard-bun", "Steamed bun with custard filling", { creamCustard: 1.1, wheatDough: 1.1, butter: 0.4 }),
];

const TWO: readonly Recipe[] = [
  hot("pork-noodles", "Pork noodles with fish sauce", {
    pork: 1,
    fishSauce: 0.9,
    riceNoodles: 1,
    garlic: 0.9,
    vinegar: 0.2,
  }),
  cool("papaya-beef", "Green papaya salad with dried beef", {
    beef: 1.5,
    fishSauce: 1.4,
    fruit: 0.3,
    lime: 0.8,
    garlic: 0.5,
  }),
  hot("pork-prawn-dumplings", "Pork and prawn dumplings", {
    pork: 0.7,
    prawn: 0.7,
    wheatDough: 0.8,
    ginger: 0.4,
    soySauce: 0.4,
  }),
  hot("chicken-oyster", "Chicken and cashews in oyster sauce", {
    chicken: 1,
    cashew: 0.6,
    oysterSauce: 1.1,
    cabbage: 0.5,
    rice: 1,
    garlic: 0.7,
  }),
  hot("pork-fried-dumplings", "Fried pork dumplings in egg dough", {
    pork: 0.9,
    eggDough: 1,
    cabbage: 0.6,
    fryingOil: 1,
    vinegar: 0.4,
  }),
  cool("chicken-egg-roll", "Cold wheat roll with chicken and egg", {
    chicken: 1.6,
    egg: 1.8,
    wheatDough: 0.8,
    herbs: 0.6,
    sesame: 0.4,
  }),
  hot("seafood-pot", "Small pot of sea fish and clams", {
    seaFish: 0.8,
    clam: 0.7,
    ginger: 0.5,
    sourGreens: 0.7,
    tofu: 0.5,
  }),
  cool("seaweed-crab-salad", "Seaweed salad with crab and smoked fish", {
    crab: 1.4,
    driedFish: 1.1,
    seaweed: 0.8,
    vinegar: 0.4,
    sesame: 0.5,
  }),
  hot("fish-cakes", "Fried fish cakes with herbs", {
    seaFish: 0.9,
    egg: 0.4,
    herbs: 0.7,
    fryingOil: 0.9,
    chilliOil: 0.4,
  }),
  hot("dried-fish-omelette", "Dried-fish broth with rolled omelette", {
    driedFish: 0.9,
    friedEgg: 0.9,
    seaweed: 0.5,
    soySauce: 0.6,
  }),
  hot("prawn-fried-rice", "Prawn and egg fried rice", {
    prawn: 0.8,
    friedEgg: 0.9,
    rice: 1.1,
    fryingOil: 0.6,
    springOnion: 0.6,
  }),
  cool("prawn-egg-noodles", "Cold egg noodles with prawns and seaweed", {
    prawn: 1.5,
    eggDough: 1.6,
    seaweed: 0.4,
    vinegar: 0.4,
    chilliOil: 0.5,
  }),
];

const THREE_OR_FOUR: readonly Recipe[] = [
  hot("rib-broth", "Pork rib broth with dried prawns and fish sauce", {
    pork: 1,
    driedPrawn: 0.9,
    fishSauce: 0.6,
    garlic: 0.6,
    sourGreens: 0.5,
  }),
  hot("curry-mixed", "Coconut curry of chicken, fish and prawns", {
    chicken: 0.8,
    riverFish: 0.9,
    prawn: 0.8,
    coconut: 1,
    cashew: 0.5,
    ginger: 0.7,
    garlic: 0.6,
  }),
  hot("minced-chicken-egg", "Minced chicken with a fried egg on rice", {
    chicken: 1,
    friedEgg: 1,
    fishSauce: 0.8,
    rice: 1,
    herbs: 0.8,
    garlic: 0.8,
  }),
  hot("duck-egg-noodles", "Duck and egg noodles in dried-fish broth", {
    duck: 0.8,
    eggDough: 1,
    driedFish: 0.7,
    soySauce: 0.7,
    springOnion: 0.5,
  }),
  hot("house-dumplings", "House dumplings of pork, prawn and egg", {
    pork: 0.6,
    prawn: 0.6,
    egg: 0.35,
    wheatDough: 0.8,
    sesame: 0.4,
    soySauce: 0.3,
  }),
  hot("beef-crab-rice", "Beef, crab and egg fried rice", {
    beef: 0.7,
    crab: 0.6,
    friedEgg: 0.7,
    rice: 1,
    fermentedBeans: 0.4,
    fryingOil: 0.5,
  }),
  hot("tossed-noodles", "Tossed rice noodles with prawn, egg and tofu", {
    prawn: 0.7,
    egg: 0.8,
    fishSauce: 0.8,
    riceNoodles: 1,
    tofu: 0.6,
    palmSugar: 0.5,
    cashew: 0.4,
  }),
  hot("seafood-pancake", "Seafood pancake with spring onion", {
    clam: 0.6,
    seaFish: 0.6,
    egg: 0.7,
    wheatDough: 0.8,
    springOnion: 1.2,
    fryingOil: 0.7,
  }),
  hot("festival-noodles", "Festival noodles with everything", {
    duck: 0.6,
    prawn: 0.6,
    driedFish: 0.5,
    egg: 0.8,
    wheatDough: 0.8,
    riceWine: 0.3,
    mushroom: 0.5,
  }),
  cool("cold-crepe", "Cold filled crepe with pork, prawn and egg", {
    pork: 1.5,
    prawn: 1.4,
    egg: 1.5,
    fishSauce: 1.2,
    herbs: 0.7,
    coconut: 0.5,
    lime: 0.3,
  }),
];

export const RECIPES: readonly Recipe[] = [...NONE_OR_ONE, ...TWO, ...THREE_OR_FOUR];
