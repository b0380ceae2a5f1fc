import type { Catalogue } from "../catalogue.js";

/** Was gilt, gleich welches Gericht: was keine Nase kann, was stattdessen zu tun ist, was Listen und Etiketten heißen. */
export const diet: Catalogue["diet"] = {
  standing: {
    noSmell:
      "Allergene sind Eiweiße und haben keinen Geruch. Eine Riechprobe sieht keine Spuren, kein Gluten und keine Laktose und sagt nichts über Allergene.",
    steam: "Halte weder Gesicht noch Riecher über ein dampfendes Gericht: Dampf kann Eiweiß tragen.",
    askAndTell:
      "Sag es immer dem Personal und frag immer nach: Lass dir die Zutaten schriftlich zeigen und sprich sie mit jemandem durch, der Bescheid weiß.",
    inDoubt: "Im Zweifel nicht essen.",
    adrenaline: "Trag dein verordnetes Adrenalin und deinen Notfallplan bei dir.",
    crossContact:
      "Gemeinsame Fritteusen, Grills, Bretter, Fett und Mehlstaub tragen Spuren. Speisekarten und Etiketten können falsch sein, Rezepte ändern sich.",
    noDevice: "Das ist kein Medizinprodukt. Es ist eine Hilfe, keine Garantie.",
  },
  emergency: (where) =>
    `Folge im Notfall deinem Notfallplan und ruf sofort die örtliche Notrufnummer an${where}. Such sie heraus, bevor du isst.`,
  emergencyNumbers: (place, numbers) => ` (${place}: ${numbers})`,
  numberIn: (number, country) => `${number} in ${country}`,
  countries: { AU: "Australien", NZ: "Neuseeland" },
  noTraces: "eine Behauptung sagt nichts über Spuren",
  legal: {
    listed: (place) => `in der Allergenliste (${place})`,
    partly: (place) => `nur zum Teil in der Allergenliste (${place})`,
    notListed: (place) =>
      `nicht in der Allergenliste (${place}): Niemand muss es dort nennen, also frag nach`,
    exempt: (place, exception) => `muss nach der Liste (${place}) nicht genannt werden: „${exception}“`,
    item: (number, text) => `Nummer ${number}: „${text}“`,
    unnumbered: (text) => `„${text}“`,
    recommended: "nur empfohlen",
    national: "jedem Land überlassen",
  },
  claimLimit: (claim, limit) =>
    `„${claim}“ auf einem Etikett: ${limit}. Über eine offene Küche sagt das nichts.`,
};
