/** Dishes of Turkish, Arabic, Persian, North African, Indian and East African menus. */
import { rowsOf } from "../../knowledgeRow.js";

const row = rowsOf("dish", { source: "common practice: classic recipes", mark: "common practice" });

// prettier-ignore
export const DISHES_MIDDLE_EAST_INDIA = [
  row("doner", "=doner|kebab|kebap|shawarma|kofte|kofta|shish taouk", "=Döner|Döner-|Kebab|Kebap|Schawarma|Shawarma|Köfte|Schaschlik|Kofta|Iskender", { contains: ["meat"], often: ["beef", "lamb", "chicken", "wheat", "milk"], may: ["soya", "egg", "sesame", "mustard"] }),
  row("lahmacun", "lahmacun|lahmajoun", "Lahmacun|türkische Pizza", { contains: ["meat", "wheat"], often: ["lamb", "beef"], masks: "pizza" }),
  row("falafel", "falafel", "Falafel", { often: ["sesame"], may: ["wheat"], ask: "fryer" }),
  row("dolma", "dolma|sarma|vine leaves|stuffed peppers|stuffed cabbage", "Dolma|Dolmades|Sarma|Weinblätter|Weinblatt|Gefüllte Paprika", { may: ["meat", "pineNut", "milk", "wheat", "egg"], masks: "wein", ask: "meat" }),
  row("baklava", "baklava|kadayif|kunafa|knafeh|kanafeh", "Baklava|Kadayif|Künefe|Knafeh", { contains: ["wheat", "treeNut"], often: ["pistachio", "walnut", "milk"], may: ["beeProduct", "peanut", "sesame"] }),
  row("turkishDelight", "turkish delight|lokum", "Lokum", { may: ["gelatine", "pistachio", "hazelnut"] }),
  row("tagine", "tagine|tajine|harira|couscous royale", "Tajine|Tagine|Harira", { often: ["meat", "lamb", "chicken"], may: ["almond", "wheat", "celery", "egg", "beeProduct"] }),
  row("koshari", "koshari|mujaddara|ful medames", "Koshari|Mujaddara|Ful Medames", { may: ["wheat", "sesame", "egg", "meatStock"] }),
  row("kibbeh", "kibbeh|kubbeh", "Kibbeh|Kubbeh", { contains: ["wheat"], often: ["lamb", "beef"], may: ["pineNut"] }),
  row("persianStew", "ghormeh sabzi", "Ghormeh Sabzi", { often: ["lamb", "meat"], may: ["chicken"] }),
  row("fesenjan", "fesenjan|fesenjoon", "Fesendschan|Fesenjan", { contains: ["walnut"], often: ["chicken", "meat"], may: ["duck", "lamb"] }),
  row("pastilla", "bastilla|pastilla|bisteeya", "Pastilla|Bastilla", { contains: ["almond", "wheat"], often: ["chicken", "egg", "milk"], may: ["poultry", "fish", "shrimp"] }),
  row("cigKofte", "cig kofte", "Çiğ Köfte", { contains: ["wheat"], may: ["beef"], masks: "kofte" }),
  row("butterChicken", "butter chicken|murgh makhani|chicken tikka masala", "Butter Chicken|Chicken Tikka Masala", { contains: ["chicken", "milk"], often: ["cashew"], may: ["almond", "mustard"] }),
  row("tikka", "tikka|tandoori", "Tikka|Tandoori", { often: ["milk", "chicken"], may: ["cashew", "almond", "mustard", "fish", "shrimp"] }),
  row("korma", "korma|pasanda|malai kofta", "Korma|Malai Kofta", { contains: ["milk"], often: ["cashew", "almond"], may: ["egg", "wheat", "meat"], masks: "kofta" }),
  row("vindaloo", "vindaloo", "Vindaloo", { often: ["meat"], may: ["pork", "mustard", "sulphites"] }),
  row("biryani", "biryani|biriyani|pulao", "Biryani|Biriani", { often: ["meat", "milk"], may: ["cashew", "egg", "almond"], ask: "meat" }),
  row("dal", "=dal|=dhal|=daal|=dahl|sambar", "=Dal|Linsendal|Linsencurry", { may: ["lowLactoseMilk", "milk", "mustard"], masks: "curry aal", ask: "fat" }),
  row("dalMakhani", "dal makhani", "Dal Makhani", { contains: ["milk"] }),
  row("paneerDishes", "palak paneer|saag paneer|paneer tikka", "Palak Paneer|Paneer Tikka", { contains: ["milk"], may: ["cashew", "mustard"], masks: "tikka" }),
  row("sabzi", "saag aloo|aloo gobi|chana masala|bombay potatoes|sabzi", "Chana Masala|Aloo Gobi", { may: ["lowLactoseMilk", "milk", "mustard"], ask: "fat" }),
  row("samosa", "samosa", "Samosa", { contains: ["wheat"], may: ["meat", "lamb", "milk", "mustard"], ask: "meat" }),
  row("pakora", "pakora|bhaji|=dosa|=idli|uttapam", "Pakora|Bhaji|=Dosa|=Idli", { may: ["wheat", "milk", "mustard", "fish", "chicken"], ask: "fryer" }),
  row("papadum", "papadum|poppadom|papadam", "Papadam|Papadum", { may: ["soya", "wheat", "peanut"], ask: "fryer" }),
  row("chaat", "chaat|pani puri|bhel puri", "Chaat", { often: ["wheat", "milk"], may: ["peanut"] }),
  row("indianSweets", "gulab jamun|rasgulla|rasmalai|barfi|kheer|jalebi|ladoo|gajar halwa", "Gulab Jamun|Barfi|Kheer|Rasmalai", { contains: ["milk"], often: ["wheat", "pistachio", "cashew"], may: ["almond", "shellac"], masks: "halwa" }),
  row("injera", "injera|doro wat", "Injera|Doro Wat", { may: ["wheat", "barley", "milk", "chicken", "egg", "beef"] }),
  row("peanutStew", "peanut stew|groundnut stew|maafe|peanut soup", "Erdnusssuppe|Erdnusseintopf|Mafé", { contains: ["peanut"], may: ["meat", "chicken", "fish", "shrimp"], masks: "suppe eintopf soup stew" }),
];
