import type { Catalogue } from "../catalogue.js";
import { plural } from "./plural.js";

/** Die Abschnitte einer Prüfung. */
export const check: Catalogue["check"] = {
  stepsLabel: "Schritte der Prüfung",
  steps: { warming: "Aufheizen", cleanAir: "Reine Luft", overPlate: "Teller", done: "Befund" },
  stop: "Prüfung beenden",
  warming: {
    title: "Wird warm",
    text: "Ein kalter Heizer misst nichts. Lass den Riecher auf dem Tisch liegen, weg vom Essen.",
    left: (duration) => `noch ${duration}`,
    progress: "Aufheizen",
  },
  cleanAir: {
    title: "In reine Luft halten",
    text: "Lass ihn an einer Stelle, bis die Luft ruhig ist.",
    away: "Mindestens eine Armlänge weg vom Teller; nicht bei Rauch oder an der Küchentür.",
    open: "Öffnungen frei, nichts darüber, nicht in einer Tasche.",
    lungs: "Atme ihn nicht an.",
    atLeast: (duration) => `Mindestens noch ${duration}`,
    air: {
      tooFewSweeps: { status: "Misst, bis ein Verlauf zu sehen ist", remedy: "Noch ein paar Sekunden." },
      drifting: {
        status: "Die Luft ändert sich noch",
        remedy: "Geh weg vom Essen, oder lass den Riecher den letzten Geruch loswerden.",
      },
      scattered: {
        status: "Die Werte springen",
        remedy: "Schütze ihn vor Zugluft und Atem, und leg ihn hin, wenn es geht.",
      },
    },
    drift: "Drift",
    scatter: "Streuung",
    ofLimit: (value, limit) => `${value} von höchstens ${limit}`,
    notYet: "noch nicht bekannt",
    within: "innerhalb der Grenze",
    beyond: "über der Grenze",
    waited: (duration) => `Wartet seit ${duration}`,
  },
  overPlate: {
    title: "Die Luft ist ruhig",
    text: "Starte den Countdown und bring den Riecher über den Teller, während er läuft.",
    moving: "Bring ihn über den Teller und halte still.",
    distance: "Eine Handbreit über dem Essen, die Öffnungen nach unten. Berühre es nie.",
    cover:
      "Halte die andere Hand gewölbt daneben gegen Zug. Decke den Teller nicht zu: Sonst wird der Riecher nass.",
    still: "Halt still, bis der Befund da ist.",
    startNow: "Ich bin da: sofort beginnen",
    button: "Countdown starten",
    again: "Die reine Luft gilt nur zwei Minuten.",
    practice: "Die Übungsküche hat den Teller hingestellt.",
  },
  headspace: {
    title: "Am Teller riechen",
    text: "Bleib eine Handbreit darüber. Berühre das Essen nicht.",
    elapsed: (elapsed, limit) => `${elapsed} von höchstens ${limit}`,
    likely: (duration) => `wohl noch etwa ${duration}`,
    longer: "länger als bei den meisten Tellern",
    left: (duration) => `höchstens noch ${duration}`,
    progress: "Zeit über dem Teller",
    settled: "Die Antwort ist zur Ruhe gekommen",
    moving: "Die Antwort bewegt sich noch",
    first: "Die ersten Durchläufe kommen an",
    evidence: "Hinweise bis jetzt",
    soFar: "Zwischenstand, kein Befund",
    leaningThere: "eher ja",
    leaningNot: "eher nein",
    leaningNone: "noch offen",
    traces: "Änderung gegen reine Luft, je Kanal",
    tracesSpoken: (channels, largest) =>
      `${channels} ${plural(channels, "Kanal", "Kanäle")}; die größte Änderung bis jetzt ist das ${largest}-Fache.`,
    lost: (count) => `${count} ${plural(count, "Durchlauf", "Durchläufe")} unterwegs verloren`,
    finish: "Jetzt abschließen",
  },
  interrupted: {
    during: (phase) => `Es geschah bei: ${phase}`,
    useGathered: "Nehmen, was da ist",
    goOn: "Trotzdem weiter",
    restart: "Neu beginnen",
    kept: (sweeps) =>
      `Behalten: ${sweeps} ${plural(sweeps, "Durchlauf", "Durchläufe")} über dem Teller. Ein Befund daraus nennt den Grund.`,
    nothingKept: "Über dem Teller war noch nichts gerochen, also ist nichts verloren.",
    goOnText: "Machst du weiter, wird jeder Befund dieser Riechprobe unsicher und sagt, warum.",
    back: {
      title: "Der Riecher ist zurück, aber diese Riechprobe kann nicht weitergehen",
      remedy: "Beginne neu, oder nimm, was vor der Lücke da war.",
    },
    refused: {
      otherSniffer: "Jetzt antwortet ein anderer Riecher, oder er hat andere Kanäle.",
      restarted: "Dazwischen fiel sein Strom aus, der Heizer begann also kalt.",
      runEnded: "Dazwischen hörte er auf zu messen.",
      gapTooLong: "Mehr als zehn Sekunden über dem Teller fehlen: zu viel, um darüber hinwegzulesen.",
    },
    causes: {
      linkLost: {
        title: "Der Riecher ist außer Reichweite",
        what: "Die Funkverbindung riss ab, oder der Riecher wurde ausgeschaltet.",
        remedy:
          "Halte das Telefon näher. Die App verbindet von selbst neu und macht weiter, wo es sich vertreten lässt.",
      },
      neverSteady: {
        title: "Die Luft kommt nicht zur Ruhe",
        what: "Nach drei Minuten bewegen sich die Werte noch.",
        remedy: "Geh weiter weg von der Küche, ans Fenster oder nach draußen, und beginne neu.",
      },
      snifferFault: {
        title: "Der Riecher meldet einen Fehler",
        what: "Ein Heizer zieht keinen Strom oder zu viel: Seine Werte bedeuten nichts.",
        remedy: "Schalte den Riecher aus und ein. Bleibt es dabei, muss er repariert werden.",
      },
      snifferRestarted: {
        title: "Der Riecher fing von vorn an",
        what: "Mitten in der Riechprobe fiel der Strom aus, oder er startete neu.",
        remedy: "Sieh nach dem Akku und beginne neu.",
      },
      commandRefused: {
        title: "Der Riecher begann nicht",
        what: "Er nahm den Befehl nicht an.",
        remedy: "Warte ein paar Sekunden. Weigert er sich weiter, schalte ihn aus und ein.",
      },
      noSweeps: {
        title: "Der Riecher schweigt",
        what: "Er ist verbunden, aber es kommen keine Durchläufe.",
        remedy: "Schalte ihn aus und ein und beginne neu.",
      },
    },
  },
  announce: {
    warming: "Wird warm.",
    cleanAir: "Halte den Riecher in reine Luft.",
    overPlate: "Die Luft ist ruhig. Starte den Countdown, dann bring den Riecher über den Teller.",
    headspace: "Am Teller wird gerochen.",
    interrupted: "Die Prüfung steht still.",
    done: "Der Befund ist da.",
    countdown: (seconds) =>
      `In ${seconds} Sekunden geht es los. Bring den Riecher über den Teller und halte still.`,
  },
  jar: {
    name: "Prüfglas",
    text: "Starte den Countdown, öffne das Glas und bring den Riecher darüber, während er läuft.",
    moving: "Bring ihn über das offene Glas und halte still.",
    practice: "Die Übungsküche hat das Glas geöffnet.",
    title: "Am Prüfglas riechen",
    headspace: "Halte ihn so hoch über das Glas wie jedes Mal.",
    announce: {
      overPlate: "Die Luft ist ruhig. Starte den Countdown, dann bring den Riecher über das offene Glas.",
      countdown: (seconds) =>
        `In ${seconds} Sekunden geht es los. Bring den Riecher über das offene Glas und halte still.`,
      headspace: "Am Prüfglas wird gerochen.",
      done: "Am Prüfglas ist gerochen.",
    },
  },
};
