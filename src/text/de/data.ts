import type { Catalogue } from "../catalogue.js";
import { plural } from "./plural.js";

/** Daten hinaus und herein, über die App, Wörter erklärt. */
export const data: Catalogue["data"] = {
  title: "Deine Daten",
  back: "Du",
  text: "Alle Daten liegen auf diesem Telefon, im Speicher dieses Browsers. Nichts wird irgendwohin gesendet: Es gibt keinen Server und kein Konto.",
  counts: {
    meals: "Mahlzeiten",
    photos: "Fotos",
    sniffs: "Riechproben",
    noses: "Nasen",
    size: "Belegter Platz",
  },
  persisted: "Der Browser hat versprochen, diesen Speicher nicht von selbst zu leeren.",
  notPersisted:
    "Der Browser darf diesen Speicher leeren, wenn der Platz knapp wird. Speichere ab und zu eine Sicherung.",
  askPersist: "Den Browser bitten, ihn zu behalten",
  lastBackup: (when) => `Letzte Sicherung: ${when}`,
  noBackup: "Noch keine Sicherung",
  setAside: (count) =>
    `${count} ${plural(count, "beschädigter Eintrag wurde beiseitegelegt. Er kommt", "beschädigte Einträge wurden beiseitegelegt. Sie kommen")} in die nächste Sicherung.`,
  outTitle: "Sicherung",
  out: "Sicherung speichern",
  outNoPhotos: "Ohne Fotos speichern",
  outText:
    "Eine Datei mit allem, samt Prüfsumme. Sie enthält Gesundheitsdaten und ist nicht verschlüsselt: Bewahre sie dort auf, wo nur du sie lesen kannst.",
  saving: "Wird gespeichert",
  saved: (meals, photos) =>
    `Sicherung fertig: ${meals} ${plural(meals, "Mahlzeit", "Mahlzeiten")}, ${photos} ${plural(photos, "Foto", "Fotos")}.`,
  savedNoPhotos: (meals) =>
    `Sicherung fertig: ${meals} ${plural(meals, "Mahlzeit", "Mahlzeiten")}, ohne Fotos.`,
  reminder: {
    text: (count) => `${count} neue Mahlzeiten und Muster liegen nur auf diesem Telefon.`,
    open: "Sicherung speichern",
    later: "Später",
  },
  inTitle: "Sicherung hereinholen",
  in: "Sicherungsdatei wählen",
  inText: "Zuerst siehst du, was sie täte. Ohne dein Wort wird nichts überschrieben.",
  demoTitle: "Demo-Daten",
  demoText: "Ausgedachte Muster und Mahlzeiten, als Demo bezeichnet.",
  dropDemo: "Demo-Daten entfernen",
  eraseTitle: "Alles löschen",
  eraseText:
    "Mahlzeiten, Fotos, Riechproben, Muster, Nasen und Einstellungen, wirklich. Es gibt keinen Weg zurück.",
  erase: "Alles löschen",
  eraseSheet: "Alles auf diesem Telefon löschen?",
  eraseSure: "Ich habe eine Sicherung oder will keine",
  eraseNow: "Alles löschen",
  faults: {
    tooLarge: "Die Datei ist zu groß. Speichere ohne Fotos, oder lösche einige.",
    notABackup: "Das ist keine Sicherungsdatei.",
    newerFormat: (format) => `Sie stammt aus einer neueren Fassung (${format}). Erneuere zuerst die App.`,
    damaged:
      "Sie wurde abgeschnitten oder nach dem Schreiben verändert. Nimm eine andere Kopie. Hier wurde nichts geändert.",
    badRecord: (line, cause) => `Zeile ${line} ist nicht lesbar: ${cause}. Hier wurde nichts geändert.`,
  },
  plan: {
    title: "Was diese Sicherung täte",
    text: (when) => `Geschrieben ${when}. Noch ist nichts geschehen.`,
    fresh: (count) =>
      `${count} ${plural(count, "Eintrag ist neu und kommt herein", "Einträge sind neu und kommen herein")}`,
    same: (count) => `${count} ${plural(count, "ist schon hier, gleich", "sind schon hier, gleich")}`,
    differing: (count) => `${count} ${plural(count, "ist hier und anders", "sind hier und anders")}`,
    differTitle: "Wo beide sich unterscheiden",
    mine: (when) => `hier: ${when}`,
    theirs: (when) => `in der Datei: ${when}`,
    noDate: "ohne Datum",
    choices: { keepMine: "meins behalten", takeTheirs: "das der Datei nehmen", keepBoth: "beide behalten" },
    tables: {
      settings: "Einstellungen, Ernährung und Allergien",
      sniffers: "Riecher",
      checkJar: "Wert des Prüfglases",
      noses: "Nase",
      noseEvents: "Entscheidung über eine Nase",
      sniffs: "Riechprobe",
      sniffNotes: "Notiz zu einer Riechprobe",
      drafts: "Entwurf",
      meals: "Mahlzeit",
      photos: "Foto",
      setAside: "Beschädigter Eintrag",
    },
    activeNose: "Nase in Gebrauch",
    done: (count) => `${count} ${plural(count, "Eintrag kam", "Einträge kamen")} herein.`,
    more: (count) => `und ${count} weitere, wie vorgeschlagen`,
    allSame: "Alles darin ist schon hier.",
    do: "Hereinholen",
    doing: "Wird hereingeholt",
  },
  about: {
    title: "Über die App und ihre Grenzen",
    paragraphs: [
      "Nidor hilft dir, am Tisch zu entscheiden: essen, fragen oder zurückgeben. Es liest einen Gassensor über dem Teller und sagt, wann die Antwort wertlos ist.",
      "Es ist kein Medizinprodukt. Es stellt keine Diagnose, behandelt nichts und verhindert nichts.",
      "Eine Nase kann nur warnen. Allergene sind Eiweiße und riechen nicht. Spuren, Gluten und Laktose riechen in den Mengen, auf die es ankommt, nicht. „Nicht gerochen“ heißt nie, dass es nicht da ist.",
      "Die Warnungen stammen aus Tabellen von Gerichten und Zutaten, mit ihren Quellen. Sie kennen diese Küche nicht. Frag, und folge den örtlichen Regeln und deiner Ärztin oder deinem Arzt.",
      "Der virtuelle Riecher und die Demo-Nase sind ausgedacht, zum Üben. Von echtem Essen wissen sie nichts.",
    ],
    version: (version) => `Fassung ${version}`,
    licence: "Quelloffen, MIT-Lizenz.",
  },
  install: {
    title: "Auf das Telefon legen",
    text: "Dann öffnet sich Nidor wie jede andere App, ohne Netz.",
    address: {
      title: "Zuerst: die richtige Adresse",
      lines: [
        "Die Adresse muss mit https:// beginnen. Das s steht für eine geschützte Verbindung. Bei jeder anderen Adresse verweigert der Browser des Telefons zwei Dinge, die Nidor braucht: Bluetooth, für den Riecher, und das Behalten der App auf dem Telefon, damit sie ohne Netz geht.",
        "Frag nach dieser Adresse, wo du Nidor herhast: bei der Person oder Gruppe, die es für dich betreibt. Sonst hat sie niemand, auch kein App-Store.",
      ],
      sound: (address) =>
        `Diese Seite liegt unter ${address}. Das ist eine richtige Adresse: Öffne sie auf deinem Telefon.`,
      unsound: (address) =>
        `Diese Seite liegt unter ${address}. Das beginnt nicht mit https:// und taugt darum auf einem Telefon nicht. Frag nach einer, die so beginnt.`,
    },
    android: {
      title: "Android, mit Chrome",
      steps: [
        "Öffne Chrome und gib die Adresse ein, mit https:// davor.",
        "Tippe oben rechts auf die drei Punkte.",
        "Tippe auf „Zum Startbildschirm hinzufügen“, dann auf „Installieren“.",
        "Öffne Nidor einmal vom Startbildschirm, solange du Netz hast. Danach braucht es keines mehr.",
        "Um einen Riecher zu verbinden, schalte Bluetooth ein. Fragt Chrome nach Geräten in der Nähe, erlaube es.",
      ],
    },
    iphone: {
      title: "iPhone und iPad",
      note: "Ein Riecher lässt sich dort nicht verbinden: Die Browser auf dem iPhone geben Webseiten kein Bluetooth. Warnungen, Küchenkarte, Mahlzeiten und der virtuelle Riecher gehen.",
      steps: [
        "Öffne die Adresse in Safari und tippe auf Teilen.",
        "Tippe auf „Zum Home-Bildschirm“, dann auf „Hinzufügen“.",
      ],
    },
    computer: {
      title: "Rechner, mit Chrome oder Edge",
      steps: ["Öffne die Adresse und wähle das Installationszeichen am Ende der Adresszeile."],
    },
    button: "Jetzt installieren",
  },
  glossary: {
    title: "Wörter erklärt",
    entries: {
      sniffer: ["Riecher", "Das Taschengerät: beheizte Gassensoren, dazu Temperatur, Feuchte und Druck."],
      channel: ["Kanal", "Ein Widerstand, den der Riecher meldet: ein Sensor bei einer Heizstufe."],
      sweep: ["Durchlauf", "Einmal durch alle Kanäle."],
      sniff: ["Riechprobe", "Ein Mal: Durchläufe in reiner Luft, dann Durchläufe über einem Teller."],
      headspace: ["Kopfraum", "Die Luft dicht über dem Essen."],
      group: [
        "Lebensmittelgruppe",
        "Wonach eine Riechprobe beurteilt wird, etwa Fleisch oder Fisch. Ein Teller kann mehrere enthalten.",
      ],
      sample: ["Muster", "Eine Riechprobe, deren Gruppen bekannt sind, zum Anlernen behalten."],
      nose: ["Nase", "Was das Telefon aus Mustern gelernt hat, mit dem Beleg, wie gut das ist."],
      finding: ["Befund", "Gerochen, nicht gerochen, oder unsicher: Verlass dich nicht darauf."],
      missRate: [
        "Geduldete Fehlquote",
        "Wie oft höchstens du duldest, dass etwas, das da ist, „nicht gerochen“ heißt.",
      ],
      interval: ["Bereich", "Die Spanne, in der der wahre Wert mit 95\u00a0% Sicherheit liegt."],
      checkJar: [
        "Prüfglas",
        "Ein verschlossenes Glas mit immer demselben Essig oder Kaffee, ab und zu gerochen, um Drift zu sehen.",
      ],
      drift: ["Drift", "Ein Sensor zeigt für dieselbe Luft mit der Zeit andere Werte."],
      heldOut: [
        "Teller, die sie nicht kannte",
        "Teller, die beim Anlernen fehlten, um die Nase zu erproben.",
      ],
    },
  },
};
