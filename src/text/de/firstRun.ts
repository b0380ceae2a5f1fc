import type { Catalogue } from "../catalogue.js";

/** Der erste Start. */
export const firstRun: Catalogue["firstRun"] = {
  steps: (step, all) => `${step} von ${all}`,
  skip: "Überspringen",
  next: "Weiter",
  what: {
    title: "Riechen, was in einem Essen steckt, das andere gekocht haben",
    text: "Ein Riecher in der Tasche und dieses Telefon sagen dir, was auffällt, was sich in dem Gericht oft verbirgt, und was du die Küche fragen kannst.",
  },
  cannot: {
    title: "Was es nicht kann",
    text: "Es kann Allergene, Spuren, Gluten oder Laktose weder finden noch ausschließen: Sie riechen nicht. Es ist kein Medizinprodukt. Ist eine Antwort wertlos, sagt es das.",
  },
  who: {
    title: "Was meidest du?",
    text: "Ernährung, Allergien und Unverträglichkeiten bleiben auf diesem Telefon. Ohne sie gibt es keine Warnungen.",
    button: "Jetzt eintragen",
  },
  start: {
    title: "In einer Minute ausprobieren",
    text: "Der virtuelle Riecher und die Übungsküche brauchen kein Gerät.",
    button: "Virtuellen Riecher probieren",
    pair: "Ich habe einen Riecher",
  },
};
