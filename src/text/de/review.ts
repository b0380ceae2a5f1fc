import type { Catalogue } from "../catalogue.js";
import { plural } from "./plural.js";

/** Was Monate von Mahlzeiten ergeben. */
export const review: Catalogue["review"] = {
  title: "Rückblick",
  back: "Alle Mahlzeiten",
  text: (meals) =>
    `Aus ${meals} ${plural(meals, "Mahlzeit", "Mahlzeiten")}. Es zählt nur, was du aufgeschrieben hast.`,
  period: {
    label: "Welche Tage",
    all: "alle Mahlzeiten",
    back: (months, days) => `${plural(months, "letzter Monat", `letzte ${months} Monate`)}: ${days}`,
    own: "Tage nach Wahl",
    show: "Diese Tage zeigen",
  },
  emptyTitle: "Noch nichts zum Zurückblicken",
  emptyText:
    "Sobald von einigen Tellern bekannt ist, was darin war, zeigt diese Seite, wie oft die Befunde stimmten. Teller der Übungsküche zählen nicht.",
  emptyDaysTitle: "Keine Mahlzeit an diesen Tagen",
  emptyDaysText: "Wähle oben andere Tage.",
  fieldTitle: "Befunde gegen die Wahrheit",
  fieldText:
    "Nur bestätigte Teller. Nach einer Überraschung fragt man öfter nach, also können die anderen Teller anders sein.",
  said: (smelled, notSmelled, uncertain) =>
    `Gerochen ${smelled}, nicht gerochen ${notSmelled}, unsicher ${uncertain}`,
  confirmed: (count, all) => `Bestätigt: ${count} von ${all}`,
  sensitivity: "Gefunden, wenn es da war",
  specificity: "Nicht gerochen, wenn es nicht da war",
  share: (count, all, low, high) => `${count} von ${all}; der wahre Anteil liegt zwischen ${low} und ${high}`,
  shareNone: "noch kein solcher Teller bestätigt",
  reliabilityText: (plates) =>
    `${plates} ${plural(plates, "bestätigter Teller", "bestätigte Teller")}. Punkte auf der schrägen Linie heißen: Was 70\u00a0% genannt wurde, traf in 70\u00a0% ein.`,
  reliabilitySpoken: (predicted, observed, plates) =>
    `genannt ${predicted}: eingetroffen in ${observed} von ${plates}`,
  called: "genannt",
  cameTrue: "eingetroffen",
  placesTitle: "Orte, die überraschten",
  dishesTitle: "Gerichte, die überraschten",
  surprising: (surprising, confirmed) =>
    `${surprising} von ${confirmed} ${plural(confirmed, "bestätigten Mahlzeit", "bestätigten Mahlzeiten")} ${plural(surprising, "war", "waren")} anders, als gesagt wurde`,
  kinds: {
    presentButNotSmelled: (group) => `${group}: da, aber nicht gerochen`,
    smelledButAbsent: (group) => `${group}: gerochen, aber nicht da`,
    presentAgainstClaim: (group) => `${group}: da, obwohl es verneint wurde`,
  },
  noSurprises: "Bisher keine.",
  askTitle: "Nachfragen lohnt sich",
  askText: "Ein Befund oder eine Behauptung, und noch hat niemand gesagt, was es war.",
  askNone: "Nichts offen.",
  reactionTitle: "Was Reaktionen vorausging",
  reactionText: (meals, reactions, compared) =>
    `${meals} gegessene ${plural(meals, "Mahlzeit", "Mahlzeiten")}, ${reactions} mit Reaktion, ${compared} ${plural(compared, "Speise", "Speisen")} mit genug Mahlzeiten zum Vergleich.`,
  reactionNothing: (count) =>
    `${count} ${plural(count, "Mahlzeit ohne ein Wort danach zählt", "Mahlzeiten ohne ein Wort danach zählen")} als ohne Reaktion.`,
  reactionHint: (food, withIt, meals) =>
    `${food}: eine Reaktion nach ${withIt} von ${meals} ${plural(meals, "Mahlzeit", "Mahlzeiten")} damit`,
  reactionWithout: (reactions, meals) =>
    `und nach ${reactions} von ${meals} ${plural(meals, "Mahlzeit", "Mahlzeiten")} ohne`,
  withIt: "damit",
  withoutIt: "ohne",
  reactionStats: (p, low, high) =>
    `Für die Praxis: exakter Test nach Fisher, p-Wert berichtigt für alle verglichenen Speisen (Benjamini-Hochberg) ${p}; Odds-Ratio zwischen ${low} und ${high}`,
  reactionNone: "Keine Speise sticht heraus. Das beweist nicht, dass keine eine Rolle spielt.",
  reactionDoctor:
    "Ein Hinweis fürs Gespräch mit Ärztin oder Arzt, nie eine Diagnose. Was zusammen gegessen wird, lässt sich nicht trennen.",
  printTitle: "Für Ernährungsberatung oder Praxis",
  print: "Bericht drucken",
  csv: "Mahlzeiten als Tabelle speichern (CSV)",
};
