import type { Catalogue } from "../catalogue.js";

/** Der Riecher: verbinden, Zustand, was schiefging. */
export const sniffer: Catalogue["sniffer"] = {
  title: "Riecher",
  none: "Noch kein Riecher",
  noneText: "Verbinde deinen, oder probiere alles mit dem virtuellen.",
  notConnected: "Kein Riecher verbunden",
  notConnectedText: "Verbinde einen bekannten oder einen anderen, oder nimm den virtuellen.",
  choosing: "Wähle ihn in der Liste des Browsers",
  choosingText: "Fehlt er dort, schalte ihn ein und halte ihn nah.",
  connecting: (name) => `Verbinde mit ${name}`,
  connectingText: "Kanäle und Zustand werden gelesen.",
  lost: (name) => `${name} ist außer Reichweite`,
  lostText: "Halte das Telefon näher und sieh nach, ob der Riecher an ist.",
  reconnecting: {
    waiting: (seconds) => `Nächster Versuch in ${seconds}`,
    trying: (tries, most) => `Verbinde: Versuch ${tries} von ${most}`,
    paused: {
      hidden: "Wartet, bis diese Seite wieder zu sehen ist",
      radioOff: "Wartet, bis Bluetooth wieder an ist",
    },
    gaveUp: {
      bound: "Er antwortete eine Minute lang nicht; die App versucht es nicht mehr von selbst.",
      person: "Die App versucht es nicht mehr von selbst.",
      willNotMend: "Ein weiterer Versuch würde nichts ändern.",
    },
    tryNow: "Jetzt versuchen",
    giveUp: "Nicht mehr versuchen",
  },
  radioOff: "Laut Browser ist Bluetooth aus oder nicht erlaubt. Schalte es in den Telefon-Einstellungen ein.",
  connectTo: (name) => `Mit ${name} verbinden`,
  pairAnother: "Anderen Riecher verbinden",
  failed: "Der Riecher war nicht zu gebrauchen",
  virtualName: "Virtueller Riecher",
  practice: (times) =>
    `Übung: Es wird keine echte Luft gemessen. Die Zeit läuft ${times}\u2011mal schneller.`,
  pair: "Riecher verbinden",
  chooseAgain: "Neu wählen",
  useVirtual: "Virtuellen Riecher nehmen",
  reconnect: "Neu verbinden",
  disconnect: "Trennen",
  states: {
    unknown: "Zustand noch nicht bekannt",
    cold: "kalt",
    warming: "wird warm",
    ready: "warm und bereit",
    measuring: "misst",
    purging: "spült in reiner Luft",
    fault: "Fehler",
  },
  warmUpLeft: (duration) => `warm in ${duration}`,
  heaterFault: "Ein Heizer arbeitet nicht, wie er soll: Schalte den Riecher aus und ein.",
  battery: "Akku",
  air: "Luft",
  batteryUnknown: "unbekannt",
  batteryLow:
    "Akku schwach: Die Heizer werden vielleicht nicht heiß genug. Lade ihn, bevor du dich auf eine Riechprobe verlässt.",
  airText: (temperature, humidity) => `${temperature}, ${humidity} Feuchte`,
  unsupportedTitle: "Dieser Browser erreicht keinen Riecher",
  unsupportedText:
    "Verbinden braucht Web Bluetooth; das haben Chrome und Edge auf Android, Windows, macOS und ChromeOS. Safari, Firefox und jeder Browser auf einem iPhone haben es nicht.",
  unsupportedWorks:
    "Alles andere geht hier: Warnungen, Küchenkarte, Mahlzeiten, Sicherungen, Anlernen und Üben mit dem virtuellen Riecher.",
  failures: {
    unsupported: {
      sentence: "Dieser Browser hat kein Web Bluetooth.",
      remedy: "Nimm Chrome oder Edge auf Android oder einem Rechner, oder hier den virtuellen Riecher.",
    },
    notAllowed: {
      sentence: "Der Browser erlaubte dieser Seite kein Bluetooth.",
      remedy: "Erlaube es in den Einstellungen der Website und tippe noch einmal.",
    },
    unreachable: {
      sentence: "Er antwortete nicht.",
      remedy: "Schalte ihn ein, halte ihn nah, und sieh nach, ob ein anderes Telefon ihn benutzt.",
    },
    forgotten: {
      sentence: (name) => `Dieser Browser erinnert sich nicht an ${name}.`,
      remedy: "Wähle ihn neu in der Liste des Browsers.",
    },
    notASniffer: {
      sentence: "Das Gerät ist kein Riecher: Ihm fehlt der Riecher-Dienst.",
      remedy: "Wähle ein anderes Gerät in der Liste.",
    },
    badLayout: {
      sentence: "Was er über seine Kanäle sagt, ist nicht lesbar.",
      remedy: "Versuch es noch einmal. Bleibt es dabei, braucht der Riecher andere Firmware.",
    },
    newerProfile: {
      sentence: (found, known) => `Er spricht Profil-Fassung ${found}; diese App kennt ${known}.`,
      remedy: "Erneuere die App.",
    },
    unexpected: {
      sentence: (detail) => `Etwas Unvorhergesehenes geschah: ${detail}`,
      remedy: "Schalte den Riecher aus und ein, und versuch es noch einmal.",
    },
  },
};
