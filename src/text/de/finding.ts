import type { Catalogue } from "../catalogue.js";
import { plural } from "./plural.js";

/** Was ein Befund sagt, und warum. */
export const finding: Catalogue["finding"] = {
  verdicts: { smelled: "Gerochen", notSmelled: "Nicht gerochen", uncertain: "Unsicher" },
  uncertainAddition: "verlass dich nicht darauf",
  spoken: (group, verdict) => `${group}: ${verdict}`,
  headline: {
    smelled: (groups) => `${groups}: gerochen`,
    uncertain: "Keine klare Antwort",
    notSmelled: (groups) => `${groups}: nicht gerochen`,
    none: "Nach keiner Gruppe gefragt",
  },
  advice: {
    smelled: "Geh davon aus, dass es auf dem Teller ist. Frag die Küche, oder gib den Teller zurück.",
    uncertain:
      "Diese Riechprobe taugt nicht, um danach zu entscheiden. Frag die Küche, als hättest du nicht gerochen.",
    notSmelled:
      "Nichts davon fiel auf. Das ist kein Beweis: Kleine Mengen und überdeckte Gerüche bleiben unbemerkt. Die Warnungen gelten weiter.",
    none: "Wähle unter Du die Gruppen, die beurteilt werden sollen.",
  },
  chance: (percent) => `Wahrscheinlichkeit, dass es da ist: ${percent}`,
  chanceNone: "Keine Wahrscheinlichkeit berechenbar",
  interval: (low, high) => `vermutlich zwischen ${low} und ${high}`,
  bandLow: "nicht da",
  bandHigh: "da",
  bandMiddle: "unsicher",
  bandSpoken: (low, high, from, to) =>
    `Der Bereich reicht von ${low} bis ${high}. Zwischen ${from} und ${to} gilt eine Antwort als unsicher.`,
  bandSpokenNone: "Es gibt keinen Wert auf der Skala.",
  reasonsTitle: "Warum es unsicher ist",
  basisTitle: "Worauf das beruht",
  glossary: "Was diese Wörter bedeuten",
  basis: {
    nose: (name, ago) => `Nase „${name}“, angelernt ${ago}`,
    taught: (plates) => `Angelernt an ${plates} ${plural(plates, "Teller", "Tellern")}`,
    present: (plates, misses) =>
      `Erprobt an ${plates} ${plural(plates, "Teller damit, den die Nase", "Tellern damit, die die Nase")} nie kannte: ${misses} übersehen`,
    missRate: (upper) => `Also würden höchstens ${upper} solcher Teller übersehen (zu 95\u00a0% sicher)`,
    absent: (plates, alarms) =>
      `Erprobt an ${plates} ${plural(plates, "Teller", "Tellern")} ohne: ${alarms} ${plural(alarms, "Fehlalarm", "Fehlalarme")}`,
    accepted: (rate) => `Beurteilt mit deiner geduldeten Fehlquote von ${rate}`,
    sniffed: (duration) => `Am Teller wurde ${duration} lang gerochen`,
  },
  beliefTitle: "Deine Vermutung und diese Riechprobe zusammen",
  belief: (before, after) =>
    `Vor der Riechprobe dachtest du ${before}. Mit dieser Riechprobe werden es ${after}.`,
  likelihoodRatio: (ratio) =>
    `Likelihood-Quotient ${ratio}: so viel öfter kommt eine solche Riechprobe von einem Teller damit als von einem ohne.`,
  allergyNote:
    "Du bist dagegen allergisch. Eine Nase kann warnen, aber nie einen Teller freigeben: Allergene riechen in den Mengen, auf die es ankommt, nicht.",
  steam: "Halte weder Gesicht noch Riecher über ein dampfendes Gericht: Dampf kann Eiweiß mittragen.",
  cautionsTitle: "Warnungen, die weiter gelten",
  cautionsNone:
    "Zu dem, was du eingetippt hast, nennen unsere Tabellen keine Warnung. Das sagt nichts über diesen Teller: Frag die Küche.",
  cautionsNoProfile:
    "Unter Du steht noch nicht, was du meidest; deshalb konnte nach keiner Warnung gesucht werden. Frag die Küche.",
  limits: "Spuren, Gluten, Laktose und die meisten Allergene riechen nicht. Dies ist kein Medizinprodukt.",
  save: "Als Mahlzeit speichern",
  keep: "Als Muster behalten",
  again: "Nochmal riechen",
  done: "Fertig",
  revealTitle: "Was die Übungsküche serviert hat",
  revealText: (dish, groups) => `${dish}. Darin: ${groups}.`,
  revealNothing: (dish) => `${dish}. Keine der Gruppen ist darin.`,
  revealAgreed: (groups) => `Der Befund traf zu bei: ${groups}.`,
  revealMissed: (groups) => `Der Befund war falsch bei: ${groups}.`,
  revealOpen: (groups) => `Unsicher geblieben: ${groups}.`,
  reasons: {
    tooFewSweeps: {
      sentence: (sweeps, needed) =>
        `Nur ${sweeps} ${plural(sweeps, "Durchlauf", "Durchläufe")} über dem Teller; mindestens ${needed} sind nötig.`,
      remedy: "Riech noch einmal und bleib länger über dem Teller.",
    },
    noCleanAir: {
      sentence: "Dieser Riechprobe fehlt reine Luft zum Vergleich.",
      remedy: "Riech noch einmal und beginne in reiner Luft.",
    },
    staleCleanAir: {
      sentence: (age) => `Die reine Luft wurde ${age} vor dem Teller gemessen, das ist zu lange her.`,
      remedy: "Beginne noch einmal in reiner Luft und geh dann gleich über den Teller.",
    },
    cleanAirUnsteady: {
      sentence: "Die Luft kam vor dem Teller nie zur Ruhe.",
      remedy: "Geh weg von Küche, Rauch und Zugluft, und beginne noch einmal.",
    },
    coldHeater: {
      sentence: "Der Riecher war noch nicht warm.",
      remedy: "Lass ihn ganz warm werden und riech dann noch einmal.",
    },
    heaterFault: {
      sentence: "Ein Heizer im Riecher arbeitete nicht, wie er soll.",
      remedy: "Schalte den Riecher aus und ein. Bleibt es dabei, muss er repariert werden.",
    },
    wetSensor: {
      sentence: "Der Riecher ist zu feucht.",
      remedy: "Lass ihn in reiner Luft trocknen und halte ihn dann höher über das Gericht.",
    },
    airStuck: {
      sentence: "Die Feuchte bleibt stehen, oder am Ende ihres Bereichs: Der Luftfühler ist nass oder hängt.",
      remedy:
        "Lass den Riecher einige Minuten in reiner Luft trocknen und riech noch einmal. Bleibt es dabei, muss der Luftfühler repariert werden.",
    },
    saturated: {
      sentence: (channels) =>
        `${channels} ${plural(channels, "Kanal stand still oder am Ende seines Bereichs", "Kanäle standen still oder am Ende ihres Bereichs")}.`,
      remedy:
        "Spüle in reiner Luft und halte den Riecher dann höher. Bleibt es dabei, muss der Sensor repariert werden.",
    },
    sweepsLost: {
      sentence: "Auf dem Weg zum Telefon gingen zu viele Durchläufe verloren.",
      remedy: "Halte das Telefon nah am Riecher und riech noch einmal.",
    },
    linkLost: {
      sentence: "Die Verbindung zum Riecher riss mitten in der Riechprobe ab.",
      remedy: "Verbinde neu und riech noch einmal.",
    },
    weakSignal: {
      sentence: (ratio, needed) =>
        `Der Teller hob sich kaum von reiner Luft ab (${ratio}\u2011mal das Rauschen; nötig sind ${needed}).`,
      remedy: "Halte den Riecher näher, oder warte, bis das Gericht wärmer und umgerührt ist.",
    },
    stillMoving: {
      sentence: "Die Antwort bewegte sich noch, als die Riechprobe endete.",
      remedy: "Riech noch einmal und bleib länger über dem Teller.",
    },
    noNose: {
      sentence: "Es gibt noch keine Nase.",
      remedy: "Lerne eine aus Mustern an; zum Üben gibt es Demo-Muster, unter Nase, Muster.",
    },
    otherSniffer: {
      sentence: "Diese Nase wurde an einem anderen Riecher angelernt.",
      remedy:
        "Nimm den Riecher, an dem sie angelernt wurde, zieh sie mit Tellern um, die beide gerochen haben (Nase, Anderer Riecher), oder lerne eine für diesen an.",
    },
    otherChannels: {
      sentence: "Dieser Riecher misst andere Kanäle, als die Nase gelernt hat.",
      remedy:
        "Nimm den Riecher, an dem sie angelernt wurde, zieh sie mit Tellern um, die beide gerochen haben (Nase, Anderer Riecher), oder lerne eine für diesen an.",
    },
    drifted: {
      sentence: "Das Prüfglas zeigt, dass dieser Riecher gedriftet ist.",
      remedy:
        "Lass ihn in reiner Luft laufen und riech noch einmal am Prüfglas. Bleibt es dabei, lerne neu an.",
    },
    unlikeTaught: {
      sentence: "Dieser Teller riecht wie nichts, was die Nase gelernt hat.",
      remedy: "Frag die Küche. Erfährst du, was es war, behalte es als Muster.",
    },
    groupNotTaught: {
      sentence: "Diese Gruppe hat die Nase nie gelernt.",
      remedy: "Sammle Muster damit und ohne, und lerne dann an.",
    },
    tooFewPresent: {
      sentence: (plates, best, more) =>
        `Nur ${plates} ${plural(plates, "Teller damit wurde", "Teller damit wurden")} erprobt: Das kann höchstens zeigen, dass nicht mehr als ${best} übersehen werden. Für deine geduldete Quote fehlen noch ${more}, alle ohne Übersehen.`,
      remedy: "Sammle mehr Teller damit, oder dulde unter Du eine höhere Fehlquote.",
    },
    tooFewAbsent: {
      sentence: (plates, more) =>
        `Nur ${plates} ${plural(plates, "Teller ohne wurde", "Teller ohne wurden")} erprobt; nötig ${plural(more, "ist", "sind")} noch ${more}.`,
      remedy: "Sammle mehr Teller ohne.",
    },
    missRateNotShown: {
      sentence: (misses, plates, upper, accepted, more) =>
        `Die Nase übersah ${misses} von ${plates} ${plural(plates, "Teller", "Tellern")} damit. Das kann heißen, dass bis zu ${upper} übersehen werden; du duldest ${accepted}. Dafür ${plural(more, "fehlt", "fehlen")} noch ${more} Teller damit, alle ohne Übersehen.`,
      remedy: "Sammle mehr Muster und lerne neu an, oder dulde unter Du eine höhere Fehlquote.",
    },
    bothPossible: {
      sentence: "So riechen Teller damit, und so riechen Teller ohne.",
      remedy: "Frag die Küche. Mehr Muster solcher Gerichte könnten sie unterscheiden.",
    },
    neitherFits: {
      sentence: "So riechen weder Teller damit noch Teller ohne.",
      remedy: "Frag die Küche. Erfährst du, was es war, behalte es als Muster.",
    },
    allergy: {
      sentence: "Du bist dagegen allergisch, und keine Nase kann ein Allergen freigeben.",
      remedy: "Frag die Küche, und folge dem Plan deiner Ärztin oder deines Arztes.",
    },
    unknown: {
      sentence: "Dieser Grund stammt aus einer anderen Fassung der App.",
      remedy: "Nimm den Befund als unsicher.",
    },
  },
};
