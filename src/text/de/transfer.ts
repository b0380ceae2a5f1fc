import type { LaterCatalogue } from "../catalogue.js";
import { plural } from "./plural.js";

/** Eine Nase auf einem anderen Riecher. */
export const transfer: LaterCatalogue["transfer"] = {
  link: "Anderer Riecher",
  linkText: "Diese Nase auf einem zweiten nutzen",
  title: "Diese Nase auf einem anderen Riecher nutzen",
  text: "Kein Riecher ist wie der andere. Auf einem Riecher, auf dem sie nicht angelernt wurde, gilt eine Nase erst, wenn Teller auf beiden gezeigt haben, wie sich die zwei unterscheiden.",
  nose: "Nase",
  taughtOn: "Angelernt auf",
  connected: "Verbunden",
  noNose: "keine",
  none: "keiner",
  howTitle: "So geht es",
  how: [
    "Einen Teller mit dem angelernten Riecher riechen und als Muster behalten.",
    "Den anderen verbinden, denselben Teller riechen und als „derselbe Teller wie zuvor“ behalten.",
    "Das Prüfglas auf beiden innerhalb eines Tages riechen: das ist ein weiteres Paar.",
    "Möglichst verschiedene Teller wählen, und solange der angelernte Riecher noch in Ordnung ist.",
  ],
  pairsTitle: "Teller auf beiden",
  both: "auf beiden",
  onlyFirst: "fehlt noch auf dem anderen",
  onlySecond: "fehlt noch auf dem angelernten",
  noPairs: "Auf dem verbundenen Riecher wurde noch kein Teller gerochen.",
  pairs: (count) => `${count} ${plural(count, "Teller", "Teller")} bisher`,
  jar: (readings) =>
    `Das Prüfglas: ein Paar, aus ${readings} ${plural(readings, "Messung", "Messungen")} innerhalb eines Tages von denen des angelernten Riechers. Es riecht immer gleich: mehr Messungen machen es ruhiger, sind aber nicht mehr Paare.`,
  stop: "Anhalten",
  again: "Noch einmal",
  working: "Der Unterschied der beiden wird berechnet",
  outcomeTitle: "Was es bringt",
  problems: {
    noNose: "Es gibt keine Nase zum Umziehen. Zuerst eine anlernen.",
    noSniffer: "Den Riecher verbinden, auf dem die Nase genutzt werden soll.",
    sameSniffer: "Diese Nase wurde auf dem verbundenen Riecher angelernt. Es gibt nichts umzuziehen.",
    otherChannels: "Der verbundene Riecher hat andere Sensoren oder Heizstufen. Eine Nase auf ihm anlernen.",
    alreadyMoved: "Diese Nase ist schon umgezogen. Die angelernte zurückholen und diese umziehen.",
    stopped: "Angehalten. Nichts hat sich geändert.",
    busy: "Gerade wird eine Nase angelernt. Noch einmal, wenn sie fertig ist.",
    failed: (detail) =>
      `Das Telefon konnte es nicht berechnen: ${detail}. Mit einem anderen Browser versuchen.`,
    workerCrashed: (detail) =>
      `Die Berechnung brach ab: ${detail}. Andere Apps schließen, damit Speicher frei wird, und noch einmal.`,
    badNose: "Das Ergebnis ist in sich nicht stimmig und wurde verworfen. Noch einmal versuchen.",
    storage: "Die Muster ließen sich nicht lesen. Die App schließen, öffnen und noch einmal versuchen.",
  },
  tooFew: (more) =>
    `Es ${plural(more, "fehlt", "fehlen")} noch ${more} Teller auf beiden. Bis dahin bleiben Befunde unsicher: anderer Riecher.`,
  noGain: "Diese Teller zeigen nicht, dass ein Umzug hilft. Befunde bleiben unsicher: anderer Riecher.",
  noGainMore: (more) => `Nach ihnen könnten etwa ${more} weitere es zeigen.`,
  gain: (factor, low, high) =>
    `Auf einzeln ausgelassenen Tellern unterscheiden sich die Riecher ${factor}\u2011mal weniger (wohl zwischen ${low}\u2011 und ${high}\u2011mal).`,
  differences: (before, after) =>
    `Unterschied, gemessen an der Streuung der gelernten Teller: ${before} vorher, ${after} nachher.`,
  evidence: (plates) =>
    `Was die umgezogene Nase sagen darf, beruht nur auf Tellern des verbundenen Riechers, die ihr nicht angelernt wurden: bisher ${plates}. Was der angelernte Riecher gezeigt hatte, zählt nicht mehr.`,
  movedFrom: (sniffer, pairs, factor, low, high) =>
    `Von Riecher ${sniffer} umgezogen, mit ${pairs} ${plural(pairs, "Teller", "Tellern")}, die beide gerochen haben. Einzeln ausgelassen unterscheiden sie sich ${factor}\u2011mal weniger (wohl zwischen ${low}\u2011 und ${high}\u2011mal).`,
  accept: "Die umgezogene Nase ansehen",
};
