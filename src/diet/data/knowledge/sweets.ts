/** Cakes, sweets and chocolate. */
import { rowsOf } from "../../knowledgeRow.js";

const row = rowsOf("dish", {
  source: "common practice: classic recipes of bakers and confectioners",
  mark: "common practice",
});

// prettier-ignore
export const SWEETS = [
  row("cake", "cake|cupcake|muffin|=sponge|gateau|madeleine|brownie|blondie|red velvet|swiss roll|lamington|yule log|donut|doughnut|scone|cookie|biscuit|shortbread|gingerbread|wafer|cracker|teacake", "Kuchen|Torte|Muffin|Brownie|Biskuit|Gugelhupf|Berliner Pfannkuchen|Krapfen|Donut|Plätzchen|Keks|Gebäck|Lebkuchen|Spekulatius|=Stollen|Christstollen|Cookie|Cracker", { contains: ["wheat"], often: ["egg", "milk"], may: ["almond", "treeNut", "lard", "soya", "alcohol", "gelatine", "lupin"], masks: "pfannkuchen bread" }),
  row("linzer", "linzer torte|dacquoise", "Linzer Torte|Dacquoise", { contains: ["treeNut"], often: ["hazelnut", "almond", "wheat", "egg", "milk"] }),
  row("cheesecake", "cheesecake", "Käsekuchen|Quarkkuchen|Topfenkuchen|Käse-Sahne-Torte", { contains: ["milk"], often: ["egg", "wheat"], may: ["gelatine"], masks: "cheese kase" }),
  row("blackForest", "black forest gateau|black forest cake", "Schwarzwälder Kirschtorte|Schwarzwälder Kirsch", { contains: ["alcohol", "milk", "egg", "wheat"], may: ["gelatine", "lard"], masks: "kirsch" }),
  row("frankfurterKranz", "Frankfurt crown cake", "Frankfurter Kranz", { contains: ["milk", "egg", "wheat"], often: ["almond", "hazelnut"], may: ["alcohol"], masks: "frankfurter" }),
  row("bienenstich", "bee sting cake", "Bienenstich", { contains: ["almond", "wheat", "milk"], often: ["egg", "beeProduct"], may: ["gelatine"] }),
  row("apfelstrudel", "apple strudel|apple pie|apple tart|tarte tatin", "Apfelstrudel|Apfelkuchen", { contains: ["wheat", "apple"], often: ["milk", "fructose"], may: ["egg", "almond", "walnut", "hazelnut", "alcohol", "lard"] }),
  row("pecanPie", "pecan pie", "Pecan Pie|Pekannusskuchen", { contains: ["pecan", "wheat", "egg"], often: ["milk"], may: ["lard"] }),
  row("pumpkinPie", "pumpkin pie|key lime pie|banoffee", "Pumpkin Pie|Banoffee", { contains: ["milk", "wheat"], often: ["egg"], may: ["lard", "gelatine"] }),
  row("kaiserschmarrn", "kaiserschmarrn|shredded pancake", "Kaiserschmarrn|=Schmarrn|Kaiserschmarren", { contains: ["wheat", "egg", "milk"], may: ["alcohol", "almond"] }),
  row("armeRitter", "french toast|pain perdu|bread pudding|bread and butter pudding", "Arme Ritter|Semmelschmarrn|Scheiterhaufen|Ofenschlupfer", { contains: ["wheat", "egg", "milk"], may: ["alcohol", "almond"], masks: "" }),
  row("germknoedel", "yeast dumpling with plum jam", "Germknödel|Dampfnudel|Rohrnudel|=Buchteln", { contains: ["wheat", "milk"], often: ["egg"], may: ["alcohol"] }),
  row("roteGruetze", "red berry compote", "Rote Grütze|Kompott", { may: ["alcohol", "gelatine", "milk"] }),
  row("kalterHund", "chocolate biscuit cake", "Kalter Hund|Kalte Schnauze", { contains: ["wheat"], often: ["milk", "egg", "coconut"], may: ["alcohol"] }),
  row("chocolate", "milk chocolate|white chocolate|ganache|fudge|caramel|toffee|butterscotch", "Milchschokolade|Weiße Schokolade|Karamell|Ganache|Toffee", { contains: ["milk"], often: ["soya"], may: ["hazelnut", "almond", "alcohol", "peanut"] }),
  row("plainChocolate", "chocolate", "Schokolade|Schoko-", { often: ["soya", "milk"], may: ["hazelnut", "almond", "peanut", "histamine"] }),
  row("darkChocolate", "dark chocolate|cocoa mass|couverture", "Zartbitterschokolade|Bitterschokolade|Kuvertüre|Kakaomasse", { often: ["soya"], may: ["milk", "hazelnut", "almond", "peanut", "histamine"], masks: "schokolade" }),
  row("sorbet", "sorbet|granita|water ice", "Sorbet|Granita|Wassereis", { may: ["egg", "gelatine", "alcohol", "milk"], masks: "eis" }),
  row("fruitJelly", "=jelly", "Gelee|Tortenguss", { may: ["gelatine"], masks: "torte torten" }),
  row("bavarois", "bavarois|charlotte", "Charlotte|Joghurttorte|Frischkäsetorte", { contains: ["milk"], often: ["gelatine", "egg", "wheat"] }),
  row("zuppaInglese", "rum baba|baba au rhum|savarin|tipsy cake", "Savarin|Baba au Rhum|Punschkrapfen|Rumtorte", { contains: ["alcohol", "wheat", "egg"], often: ["milk"] }),
  row("liquorice", "liquorice|licorice", "Lakritz|Lakritze|Salmiak", { often: ["wheat"], may: ["gelatine"] }),
  row("sweetsCoated", "candy|=sweets|jelly bean|sprinkles|dragee", "Bonbon|Zuckerstreusel|Dragee|Süßigkeit", { may: ["gelatine", "shellac", "carmine", "milk", "beeProduct", "wheat"], masks: "streusel" }),
  row("icing", "=icing|=frosting", "Zuckerguss|Glasur|Fondant", { may: ["egg", "milk", "gelatine", "soya"] }),
  row("snackBar", "energy bar|protein bar|cereal bar", "Müsliriegel|Proteinriegel|Energieriegel", { often: ["oats", "treeNut", "peanut"], may: ["milk", "soya", "beeProduct", "sesame", "wheat", "gelatine"] }),
  row("florentine", "florentine biscuit", "Florentiner|Nussecke|Vanillekipferl|Zimtstern", { contains: ["treeNut"], often: ["almond", "hazelnut", "egg", "wheat", "milk"] }),
];
