import type { Catalogue } from "../catalogue.js";

/** Was der Speicher des Telefons verweigert hat, und was zu tun ist. */
export const trouble: Catalogue["trouble"] = {
  notKept: "Nicht behalten.",
  kinds: {
    quota:
      "Der Speicher dieses Telefons ist voll. Speichere eine Sicherung, dann lösche Fotos oder andere Daten.",
    blockedUpgrade: "Ein anderer Tab hält eine ältere Fassung offen. Schließe ihn und lade diese Seite neu.",
    closed: "Der Speicher wurde geschlossen, vielleicht von einem neueren Tab. Lade die Seite neu.",
    aborted: "Der Browser brach das Schreiben ab. Nichts wurde geändert. Versuch es noch einmal.",
    unavailable: "Dieser Browser behält hier nichts, wie in einem privaten Fenster. Nimm ein gewöhnliches.",
    newerVersion: "Ein neueres Nidor hat diese Daten geschrieben. Lade neu, um es zu bekommen.",
    corrupt: "Dieser Eintrag ist beschädigt. Er wurde beiseitegelegt und kommt in die nächste Sicherung.",
    unknownId: "Es ist nicht mehr hier.",
    unexpected: "Etwas Unvorhergesehenes geschah. Versuch es noch einmal, und speichere eine Sicherung.",
  },
  memoryOnly: (why) => `Nichts kann behalten werden: Schließt diese Seite, ist alles fort. ${why}`,
  silent:
    "Der Speicher dieses Telefons antwortet nicht. Schließe andere Tabs von Nidor und lade diese Seite neu.",
  lost: {
    title: "Der Browser hat deine Daten verworfen",
    text: "Mahlzeiten, Fotos, Muster und Einstellungen, die hier waren, sind weg, wie es bei knappem Platz geschehen kann. Eine Sicherungsdatei bringt sie zurück.",
    bringIn: "Sicherung hereinholen",
    later: "Nicht jetzt",
  },
  profileLost:
    "Ernährung und Allergien waren nicht lesbar. Es wird vor nichts gewarnt, bis du sie unter Du neu eingetragen hast.",
};
