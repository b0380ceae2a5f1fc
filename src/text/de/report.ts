import type { Catalogue } from "../catalogue.js";
import { plural } from "./plural.js";

/** Der ganze Bericht über eine Nase, und der Zustand des Riechers. */
export const report: Catalogue["report"] = {
  title: "Bericht",
  back: "Nase",
  text: (split, folds) =>
    `Jede Zahl stammt von Tellern, die die Nase nicht kannte: ${folds} Teile, getrennt nach ${split}.`,
  splits: { plate: "Teller", occasion: "Anlass" },
  confusionTitle: "Richtig und falsch",
  confusion: {
    caption: "Bei gleichen Chancen, je Teller",
    truth: "Wahrheit",
    there: "da",
    notThere: "nicht da",
    calledThere: "da genannt",
    calledNot: "nicht da genannt",
  },
  reliabilityTitle: "Treffen die Wahrscheinlichkeiten ein?",
  reliabilityText:
    "Punkte auf der schrägen Linie: Was 70 % genannt wurde, traf in 70 % ein. Größere Punkte stehen für mehr Teller.",
  called: "genannt",
  cameTrue: "eingetroffen",
  reliabilityRow: (called, observed, plates) => `${called} genannt: ${observed} von ${plates} eingetroffen`,
  riskTitle: "Weniger Antworten, weniger Fehler",
  riskText: "Wird nur der sicherste Teil beantwortet, sind so viele dieser Antworten falsch.",
  riskAcross: "beantwortet",
  riskUp: (top) => `falsch, bis ${top}`,
  riskRow: (coverage, risk) => `${coverage} beantwortet: ${risk} falsch`,
  coverageTitle: "Hält das Versprechen?",
  coverageText: (target) =>
    `Die Menge der möglichen Antworten soll für mindestens ${target} der Teller die Wahrheit enthalten.`,
  coveragePresent: "damit",
  coverageAbsent: "ohne",
  scoresTitle: "Kennzahlen",
  scores: {
    auc: "Fläche unter der ROC-Kurve",
    brier: "Brier-Wert",
    logLoss: "Log-Verlust",
    ece: "Erwarteter Eichfehler",
    balancedAccuracy: "Ausgewogene Genauigkeit",
  },
  brierParts: (reliability, resolution, uncertainty) =>
    `Brier-Wert in Teilen: Verlässlichkeit ${reliability}, Trennschärfe ${resolution}, Unsicherheit ${uncertainty}`,
  calibration: (kind) => `Eichung: ${kind}`,
  rivalsTitle: "Gegen schlichte Rivalen",
  rivalsText:
    "Mit denselben Aufteilungen. Weniger Verlust ist besser; die Genauigkeit ist die ausgewogene. Die Nase nimmt das Mittel derer, die helfen, oder einen allein, der viel besser ist.",
  rivalChosen: "genommen",
  rival: "Modell",
  horizonsTitle: "Wie lange riechen",
  horizon: (seconds) => `nach ${seconds}`,
  leak: {
    title: "Verraten die Umstände die Antwort?",
    text: "Was kein Essen enthält, darf die Gruppen nicht unterscheiden. Tut es das, verrät der Raum, der Tag oder die Stunde die Antwort, und dieser Bericht ist zu gut.",
    kinds: {
      cleanAir: "Reine Luft allein",
      airReadings: "Temperatur, Feuchte und Druck allein",
      clock: "Die Uhr allein",
    },
    holds: (what) => `${what}: verrät nichts, wie es sein soll`,
    found: (what, groups) => `${what}: verrät ${groups}. Die Muster sind verquickt`,
    missing: (what) => `${what}: nicht in diesen Mustern, oder immer gleich`,
    tooFew: (what) => `${what}: zu wenige Teller, um es zu sagen`,
    highest: (auc) => `höchste Fläche unter der ROC-Kurve ${auc}; Zufall ist 0,5`,
    auc: (group, auc, limit) => `${group}: Fläche unter der ROC-Kurve ${auc}; aus Zufall bis ${limit}`,
    addTitle: "Was dazu muss",
    addText:
      "Rieche bei einem Anlass an Tellern mit der Gruppe und an Tellern ohne, in keiner festen Reihenfolge:",
    oneSided: (group, count, all, names) =>
      `${group}: An ${count} von ${all} Anlässen waren alle Teller von einer Art (${names}). Nimm an solchen Tagen die andere dazu.`,
    others: (count) => `${count} weitere`,
    addAny: "An jedem Anlass kamen beide Arten vor. Mische ihre Reihenfolge.",
  },
  learning: {
    title: "Was mehr Teller brächten",
    text: "Falsche Antworten eines schnellen Modells, das an einem Teil der Teller lernte. Es ist schlichter als die Nase selbst; es zählt, wie steil es fällt.",
    across: (plates) => `gelernte Teller, bis ${plates}`,
    up: (top) => `falsch, bis ${top}`,
    row: (plates, wrong, loss) => `${plates} Teller: ${wrong} falsch, Log-Verlust ${loss}`,
    more: (plates, lower) =>
      `Geht es so weiter, wäre der Verlust bei ${plates} Tellern um ${lower} kleiner. Das ist aus vier Punkten geschätzt und gilt für Gerichte wie diese.`,
    moreNothing:
      "Mehr solche Teller haben sie nicht besser gemacht. Andere Gerichte, andere Anlässe oder genauere Angaben vielleicht.",
  },
  occasion: {
    title: "An Tagen, die sie nicht kennt",
    text: (occasions) => `Mit ganzen Anlässen erprobt, von ${occasions}. Das ist die strengere Probe.`,
    loss: (plate, occasion) => `Log-Verlust ${plate} nach Tellern, ${occasion} nach Anlässen`,
    none: "Nicht nach Anlässen erprobt: Die Prüfungen wurden weggelassen, oder diese Nase ist aufgefrischt oder aus einer früheren Fassung. Lerne neu an, um es zu haben.",
    one: "Nicht nach Anlässen erprobt: Alle Muster sind von einem.",
  },
  notChecked:
    "Für diese Nase nicht berechnet: Die Prüfungen wurden weggelassen, oder sie ist aus einer früheren Fassung. Lerne neu an, um sie zu haben.",
  rivalAuc: "ROC-Fläche",
  rivalAccuracy: "Genauig\u00adkeit",
  leftOutTitle: "Weggelassen",
  leftOut: {
    otherSniffer: (count) => `${count} ${plural(count, "Riechprobe", "Riechproben")} eines anderen Riechers`,
    otherChannels: (count) => `${count} ${plural(count, "Riechprobe", "Riechproben")} mit anderen Kanälen`,
    noCleanAir: (count) => `${count} ${plural(count, "Riechprobe", "Riechproben")} ohne reine Luft`,
    noKnownGroup: (count) => `${count} ${plural(count, "Riechprobe", "Riechproben")} ohne bekannte Gruppe`,
    duplicate: (count) =>
      `${count} ${plural(count, "Riechprobe, die doppelt da war", "Riechproben, die doppelt da waren")}`,
  },
  none: "zu wenige Teller, um zu urteilen",
  fitness: {
    title: "Zustand des Riechers",
    noneTitle: "Kein Riecher verbunden",
    noneText: "Verbinde einen unter Teller; dann zeigt diese Seite seinen Zustand.",
    fits: { well: "in Ordnung", attention: "ansehen", renewed: "wird erneuert", unknown: "nicht bekannt" },
    items: {
      heater: {
        title: "Heizer",
        well: () => "Er meldet, dass sein Heizer seine Stufen erreicht.",
        attention: () => "Ein Heizer zieht keinen Strom oder zu viel: Seine Werte bedeuten nichts.",
        unknown: "Er hat seinen Zustand noch nicht gemeldet.",
        remedy: "Schalte ihn aus und ein. Bleibt es dabei, muss er repariert werden.",
      },
      warmUp: {
        title: "Aufheizen",
        well: () => "Der Heizer ist warm.",
        attention: (left) => `Der Heizer ist noch nicht warm: noch ${left}.`,
        unknown: "Er hat nicht gemeldet, ob er warm ist.",
        remedy: "Lass ihn eingeschaltet, weg vom Essen. Eine Prüfung wartet von selbst darauf.",
      },
      burnIn: {
        title: "Einbrennen",
        well: (hours) =>
          `In seinem Leben ${hours} beheizt: über die ersten Tage hinaus, in denen ein Sensor am meisten driftet.`,
        attention: (hours) => `In seinem Leben erst ${hours} beheizt: Ein neuer Sensor driftet noch.`,
        unknown: "Er meldet nicht, wie lange er beheizt war.",
        remedy: "Lass ihn zwei Tage eingeschaltet, bevor du mit ihm eine Nase anlernst.",
      },
      battery: {
        title: "Akku",
        well: (charge) => `Noch ${charge}.`,
        attention: (charge) => `Nur noch ${charge}: Der Heizer wird vielleicht nicht heiß genug.`,
        unknown: "Er meldet seine Ladung nicht.",
        remedy: "Lade ihn, bevor du dich auf eine Riechprobe verlässt.",
      },
      cleanAir: {
        title: "Reine Luft",
        well: (age) => `Ruhige reine Luft wurde vor ${age} gemessen.`,
        attention: (age) => `Die letzte ruhige reine Luft ist ${age} alt.`,
        unknown: "Seit die App offen ist, wurde keine gemessen.",
        remedy: "Zu tun ist nichts: Jede Prüfung misst reine Luft neu.",
      },
      steadiness: {
        title: "Ruhe",
        well: (drift) => `Die Werte bewegen sich in zwanzig Sekunden um ${drift}.`,
        attention: (drift) =>
          `Die Werte bewegen sich in zwanzig Sekunden um ${drift}: Das ist keine ruhige Luft.`,
        unknown: "Es kamen zu wenige Durchläufe. Der Verlauf oder eine Prüfung bringt welche.",
        remedy: "Halte ihn in reine Luft, weg von Essen und Zug, oder lass ihn spülen.",
      },
      humidity: {
        title: "Feuchte",
        well: (margin) =>
          `Sein kühlster Teil liegt ${margin} °C über dem Punkt, an dem Wasser sich niederschlägt.`,
        attention: (margin) =>
          `Sein kühlster Teil liegt nur ${margin} °C über dem Punkt, an dem Wasser sich niederschlägt: Der Sensor kann nass werden.`,
        unknown: "Er meldet Temperatur und Feuchte nicht.",
        remedy:
          "Halte ihn höher über Dampf, und lass ihn in trockener Luft warm werden. Ein kalter wird eher nass.",
      },
      airSensor: {
        title: "Luftfühler",
        well: () => "Nichts deutet darauf hin, dass seine Feuchte hängt.",
        attention: (humidity) => `Er meldet immerzu genau ${humidity} Feuchte: Er ist nass, oder er hängt.`,
        unknown: "Noch zu wenige Werte von Temperatur und Feuchte.",
        remedy:
          "Lass den Riecher einige Minuten in reiner Luft trocknen. Bleibt es dabei, muss der Luftfühler repariert werden: Bis dahin sind Befunde unsicher.",
      },
      link: {
        title: "Unterwegs verloren",
        well: (share) => `${share} seiner Meldungen gingen verloren.`,
        attention: (share) => `${share} seiner Meldungen gingen verloren: Riechproben haben Löcher.`,
        unknown: "Noch kein Durchlauf kam an.",
        remedy: "Halte das Telefon näher, ohne Hände und Metall dazwischen.",
      },
      channels: {
        title: "Kanäle",
        well: () => "Kein Kanal hängt oder steht am Ende seines Bereichs.",
        attention: (channels) => `Hängt oder steht am Ende des Bereichs: Kanal ${channels}.`,
        unknown: "Es kamen zu wenige Durchläufe. Der Verlauf oder eine Prüfung bringt welche.",
        remedy:
          "Schalte ihn aus und ein, und sieh in reiner Luft noch einmal nach. Bleibt es dabei, muss der Sensor repariert werden.",
      },
    },
    identityTitle: "Welcher es ist",
    maker: "Hersteller",
    model: "Modell",
    firmware: "Firmware",
    id: "Kennung",
    channels: "Kanäle",
    hours: (count) => `${count}\u00a0h`,
    seconds: (count) => `${count}\u00a0s`,
    period: "Ein Durchlauf alle",
    linkTitle: "Seit dem Verbinden",
    sweeps: "Durchläufe",
    framesLost: "Verlorene Meldungen",
    corrupt: "Unterwegs beschädigt",
    restarts: "Neustarts",
    badReadings: "Unmögliche Werte",
    jarTitle: "Prüfglas",
    jarText:
      "Ein verschlossenes Glas mit immer demselben Essig oder Kaffee, ab und zu gerochen, zeigt, ob der Riecher gedriftet ist.",
    jarNone: "Noch kein Wert.",
    jarIn: "Unter Kontrolle: Die letzten Werte liegen in ihren Grenzen.",
    jarOut:
      "Außer Kontrolle: Der Riecher ist gedriftet. Befunde sind unsicher, bis er zurück ist oder die Nase mit frischen Mustern aufgefrischt wurde.",
    jarUnknown: "Zu wenige Werte für ein Urteil.",
    jarRow: (when, score) => `${when}: ${score}`,
    jarChart: "Abstand vom Bezug, ältester Wert zuerst; die gestrichelte Linie ist die Grenze.",
    jarSniff: "Am Prüfglas riechen",
  },
};
