import type { Catalogue } from "../catalogue.js";

/** Üben mit Störungen des virtuellen Riechers. */
export const practice: Catalogue["practice"] = {
  link: "Störungen üben",
  linkText: "Nur des virtuellen Riechers",
  title: "Störungen üben",
  text: "Wähle, was beim virtuellen Riecher schiefgeht, prüfe einen Teller, und sieh, was die App dazu sagt. Ein echter Riecher hat nichts davon, und nach dem Neuladen ist alles aus.",
  real: "Ein echter Riecher ist verbunden: Hier geht nichts mit Absicht schief. Trenne ihn, um zu üben.",
  faultsTitle: "Was schiefgeht",
  faults: {
    lost: { name: "Verlorene Meldungen", hint: "Jede fünfte kommt nicht an. Die Riechprobe hat Lücken." },
    link: {
      name: "Verlorene Verbindung",
      hint: "Sie bricht über dem Teller ab. Die App erreicht den Riecher von selbst wieder.",
    },
    garbled: {
      name: "Verfälschte Meldungen",
      hint: "In jeder fünften ist ein Oktett falsch. Der Prüfwert findet es, und sie zählt als verloren.",
    },
    stuck: { name: "Kanal steht", hint: "Der dritte Kanal zeigt einen Wert, was auch kommt." },
    poisoned: {
      name: "Vergiftung",
      hint: "Er wird mit jeder Riechprobe unempfindlicher. Das Prüfglas zeigt es, sobald es zehn Messungen von vorher hat.",
    },
    steam: {
      name: "Viel Dampf",
      hint: "Viel mehr als von einem gewöhnlichen Teller: Der Riecher wird nass.",
    },
    heater: { name: "Heizer kaputt", hint: "Er fällt über dem Teller aus." },
    reboot: { name: "Neustart beim Riechen", hint: "Er ist über dem Teller einen Moment ohne Strom." },
    spread: {
      name: "Anderer Riecher",
      hint: "Ein zweites Gerät derselben Art. Auf ihm wurde die Nase nicht angelernt.",
    },
  },
  otherUnit: "Anderer virtueller Riecher",
  toPlate: "Zum Teller",
  onTitle: "Übung: Störungen sind an",
  onText: (faults) => `${faults}. Nur beim virtuellen Riecher.`,
  allOff: "Alle aus",
};
