import type { Fit, Fitness } from "../flows/fitness.js";
import type { Words } from "../text/catalogue.js";
import { listText, numberText, percentText } from "../text/formats.js";
import { durationText } from "./durationText.js";

export interface FitnessItemView {
  readonly id: keyof Fitness;
  readonly title: string;
  readonly fit: Fit;
  readonly word: string;
  readonly sentence: string;
  /** What to do, or what happens by itself; null where neither is called for. */
  readonly remedy: string | null;
}

type ItemWords = Words<"common" | "report">;

/** What needs a look comes first; otherwise in the order in which a sniff meets them. */
export function fitnessItems(fitness: Fitness, words: ItemWords): FitnessItemView[] {
  const { items, fits } = words.text.report.fitness;
  const values = valuesOf(fitness, words);
  const ids = Object.keys(values) as (keyof Fitness)[];
  const views = ids.map((id): FitnessItemView => {
    const { fit } = fitness[id];
    const { title, well, attention, unknown, remedy } = items[id];
    const sentence = fit === "well" ? well(values[id]) : fit === "unknown" ? unknown : attention(values[id]);
    const told = fit === "attention" || fit === "renewed";
    return { id, title, fit, word: fits[fit], sentence, remedy: told ? remedy : null };
  });
  return [
    ...views.filter(({ fit }) => fit === "attention"),
    ...views.filter(({ fit }) => fit !== "attention"),
  ];
}

function valuesOf(fitness: Fitness, words: ItemWords): Readonly<Record<keyof Fitness, string>> {
  const { formats } = words;
  const { burnIn, warmUp, cleanAir, steadiness, humidity, airSensor, battery, link, channels } = fitness;
  return {
    heater: "",
    warmUp: durationText(warmUp.leftMs, words),
    burnIn: words.text.report.fitness.hours(numberText(burnIn.hours, formats)),
    battery: percentText(battery.percent / 100, formats),
    cleanAir: durationText(cleanAir.ageMs, words),
    steadiness: percentText(steadiness.drift, formats, 1),
    humidity: numberText(Math.max(0, Math.min(humidity.marginC, MOST_MARGIN_C)), formats, 1),
    airSensor: percentText(airSensor.humidityPct / 100, formats),
    link: percentText(link.lostShare, formats, 1),
    channels: listText(
      channels.bad.map((channel) => numberText(channel + 1, formats)),
      formats,
    ),
  };
}

/** Perfectly dry air has no dew point: a number is shown all the same. */
const MOST_MARGIN_C = 99;
