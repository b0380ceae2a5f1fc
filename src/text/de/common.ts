import type { Catalogue } from "../catalogue.js";

/** Wörter, die jeder Ort braucht. */
export const common: Catalogue["common"] = {
  appName: "Nidor",
  places: { plate: "Teller", meals: "Mahlzeiten", nose: "Nase", you: "Du" },
  placesLabel: "Orte der App",
  back: "Zurück",
  cancel: "Abbrechen",
  undo: "Rückgängig",
  tryAgain: "Noch einmal",
  more: "Mehr zeigen",
  today: "Heute",
  yesterday: "Gestern",
  demoMark: "Demo",
  groups: {
    meat: "Fleisch",
    fish: "Fisch",
    shellfish: "Schalen- und Weichtiere",
    dairy: "Milch",
    egg: "Ei",
    nut: "Nuss",
    soya: "Soja",
    alcohol: "Alkohol",
  },
  groupInSentence: (name) => name,
  duration: (minutes, seconds) =>
    minutes === 0
      ? `${seconds}\u00a0s`
      : seconds === 0
        ? `${minutes}\u00a0min`
        : `${minutes}\u00a0min ${seconds}\u00a0s`,
  loading: "Einen Moment",
  failedTitle: "Das ließ sich nicht laden",
  brokenTitle: "In der App ist etwas schiefgegangen",
  brokenText:
    "Was du gespeichert hast, ist noch auf diesem Telefon. Öffne die Startseite, oder kopiere die Einzelheiten für eine Meldung.",
  brokenDetails: "Einzelheiten für eine Meldung",
  startPage: "Startseite",
  updateTitle: "Eine neuere Fassung liegt bereit",
  updateText: "Sie kommt nur, wenn du es sagst.",
  updateNow: "Jetzt nehmen",
  updateLater: "Später",
  offline: "Kein Netz. Hier geht alles auch ohne.",
  pieceMissing:
    "Ein Teil der App fehlt noch. Er kommt mit dem Netz von selbst; wenn nicht, lade diese Seite neu.",
  skip: "Zum Inhalt",
};
