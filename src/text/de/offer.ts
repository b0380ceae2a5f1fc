import type { Catalogue } from "../catalogue.js";

/** Eine angebotene Nase neben der in Gebrauch, und das Auffrischen. */
export const offer: Catalogue["offer"] = {
  title: "Über eine Nase entscheiden",
  heading: {
    taught: "Eine neue Nase ist fertig",
    refreshed: "Die Nase ist aufgefrischt",
    moved: "Eine auf einen anderen Riecher umgezogene Nase",
    file: "Eine Nase aus einer Datei",
    version: "Diese Nase zurückholen?",
  },
  comparing: "Beide werden an denselben Tellern erprobt",
  same: (plates) =>
    `Beide wurden an denselben Tellern erprobt, bis zu ${plates} je Gruppe, von denen sie keinen kannten.`,
  sameMoved: (plates) =>
    `Beide wurden an Tellern des zweiten Riechers erprobt, bis zu ${plates} je Gruppe: die angelernte Nase wie sie ist, die umgezogene mit einer Abbildung, die ohne diesen Teller gefunden wurde.`,
  sameFresh: (plates, parts) =>
    `Erprobt an ${plates} frischen Tellern, jeder mit der alten Nase und mit einer, die ohne diesen Teller aufgefrischt wurde (${parts} Teile).`,
  apart:
    "Es gibt keinen Teller, an dem beide zu erproben wären. Jede steht mit eigenen Zahlen da, von eigenen Tellern.",
  alone: "Es ist keine Nase in Gebrauch. Dies sind ihre eigenen Zahlen, von Tellern, die sie nicht kannte.",
  better: (where) => `Besser: ${where}`,
  worse: (where) => `Schlechter: ${where}`,
  losesSmelled: (groups) =>
    `Verloren mit der neuen: „gerochen“ kann sie für ${groups} noch nie sagen, die in Gebrauch kann es.`,
  losesNotSmelled: (groups) =>
    `Verloren mit der neuen: „nicht gerochen“ kann sie für ${groups} noch nie sagen, die in Gebrauch kann es.`,
  unclear: (where) => `Kein klarer Unterschied: ${where}`,
  where: { found: (group) => `${group} finden`, quiet: (group) => `Fehlalarme ohne ${group}` },
  few: "So wenige Teller können kaum einen Unterschied zeigen. Kein klarer Unterschied heißt nicht, dass sie gleich sind.",
  loss: (older, newer, plates) =>
    `Log-Verlust an diesen ${plates} Tellern: ${older} in Gebrauch, ${newer} neu; weniger ist besser`,
  change: {
    better: (newer, older, p) =>
      `hier besser: ${newer} Teller nur mit der neuen richtig, ${older} nur mit der alten (${p})`,
    worse: (newer, older, p) =>
      `hier schlechter: ${newer} Teller nur mit der neuen richtig, ${older} nur mit der alten (${p})`,
    same: (newer, older, p) =>
      `kein klarer Unterschied: ${newer} nur mit der neuen richtig, ${older} nur mit der alten (${p})`,
  },
  p: (value) => `p\u00a0=\u00a0${value}`,
  pBelow: (value) => `p\u00a0<\u00a0${value}`,
  test: "Exakter Test nach McNemar an den Tellern, an denen sie sich unterscheiden; p für die Zahl der Zeilen berichtigt.",
  acceptVersion: "Zurückholen",
  rejectVersion: "So lassen, wie es ist",
  acceptFile: "Diese Nase nehmen",
  keptVersion: "Die jetzige bleibt unter Fassungen.",
  suits:
    "Sie wurde an einem anderen Riecher angelernt als dem verbundenen. Mit diesem ist jeder Befund unsicher.",
  how: "Wie",
  anew: "Neu, aus allen Mustern",
  refresh: (plates) => `Die Nase in Gebrauch mit ${plates} frischen Tellern auffrischen`,
  refreshHint:
    "Alte Muster werden um die Drift verschoben, die die frischen zeigen, und zählen weniger. Der Gewinn wird an frischen Tellern erprobt. Es dauert etwa sechsmal so lang.",
  refreshKnown: (known, taught) =>
    `Von den ${taught} Tellern, an denen diese Nase lernte, sind ${known} als Muster hier; andere kennt die aufgefrischte nicht.`,
  refreshStart: "Auffrischen",
  refreshNone:
    "Um stattdessen die Nase in Gebrauch aufzufrischen, behalte zwei frische Teller: mit ihrem Riecher gerochen, seit sie angelernt wurde.",
  due: {
    title: "Frische Muster lohnen sich",
    drift: "Das Prüfglas zeigt, dass der Riecher gedriftet ist.",
    age: (days) =>
      `Diese Nase wurde vor mehr als ${days} Tagen angelernt, und Sensoren ändern sich in Wochen.`,
    ask: (plates) =>
      `Prüfe Teller, die du kennst, und behalte sie als Muster: ${plates} mit und ${plates} ohne jede Gruppe frischen die Nase auf.`,
    enough: (group) => `${group}: genug frische Teller`,
    both: (group, present, absent) => `${group}: noch ${present} damit, ${absent} ohne`,
    present: (group, present) => `${group}: noch ${present} damit`,
    absent: (group, absent) => `${group}: noch ${absent} ohne`,
    go: "Auffrischen",
  },
};
