import { plural } from "./plural.js";

/** What months of meals add up to. */
export const review = {
  title: "Review",
  back: "All meals",
  text: (meals: string) =>
    `From ${meals} ${plural(meals, "meal", "meals")}. Only what you wrote down counts.`,
  period: {
    label: "Which days",
    all: "all meals",
    back: (months: string, days: string) => `last ${plural(months, "month", `${months} months`)}: ${days}`,
    own: "days of your choice",
    show: "Show these days",
  },
  emptyTitle: "Nothing to review yet",
  emptyText:
    "Once it is known what was on some plates, this page shows how often the findings were right. Plates of the practice kitchen do not count.",
  emptyDaysTitle: "No meal in these days",
  emptyDaysText: "Choose other days above.",
  fieldTitle: "Findings against the truth",
  fieldText: "Confirmed plates only. People ask more often after a surprise, so the other plates may differ.",
  said: (smelled: string, notSmelled: string, uncertain: string) =>
    `Smelled ${smelled}, not smelled ${notSmelled}, uncertain ${uncertain}`,
  confirmed: (count: string, all: string) => `Confirmed: ${count} of ${all}`,
  sensitivity: "Found when it was there",
  specificity: "Not smelled when it was not there",
  share: (count: string, all: string, low: string, high: string) =>
    `${count} of ${all}; the true share lies between ${low} and ${high}`,
  shareNone: "no such plate confirmed yet",
  reliabilityText: (plates: string) =>
    `${plates} confirmed ${plural(plates, "plate", "plates")}. Points on the slanted line mean that what was called 70% came true in 70%.`,
  reliabilitySpoken: (predicted: string, observed: string, plates: string) =>
    `called ${predicted}: true in ${observed} of ${plates}`,
  called: "called",
  cameTrue: "came true",
  placesTitle: "Places that surprised",
  dishesTitle: "Dishes that surprised",
  surprising: (surprising: string, confirmed: string) =>
    `${surprising} of ${confirmed} confirmed ${plural(confirmed, "meal", "meals")} ${plural(surprising, "was", "were")} something else than was said`,
  kinds: {
    presentButNotSmelled: (group: string) => `${group}: there, but not smelled`,
    smelledButAbsent: (group: string) => `${group}: smelled, but not there`,
    presentAgainstClaim: (group: string) => `${group}: there, although it was denied`,
  },
  noSurprises: "None so far.",
  askTitle: "Worth asking about",
  askText: "A finding or a claim, and nobody has told yet what it was.",
  askNone: "Nothing open.",
  reactionTitle: "What came before reactions",
  reactionText: (meals: string, reactions: string, compared: string) =>
    `${meals} eaten ${plural(meals, "meal", "meals")}, ${reactions} with a reaction, ${compared} ${plural(compared, "food", "foods")} with enough meals to compare.`,
  reactionNothing: (count: string) =>
    `${count} ${plural(count, "meal without a word afterwards counts", "meals without a word afterwards count")} as without a reaction.`,
  reactionHint: (food: string, withIt: string, meals: string) =>
    `${food}: a reaction after ${withIt} of ${meals} ${plural(meals, "meal", "meals")} with it`,
  reactionWithout: (reactions: string, meals: string) =>
    `and after ${reactions} of ${meals} ${plural(meals, "meal", "meals")} without it`,
  withIt: "with it",
  withoutIt: "without it",
  reactionStats: (p: string, low: string, high: string) =>
    `For the doctor: Fisher’s exact test, p-value corrected for all foods compared (Benjamini-Hochberg) ${p}; odds ratio between ${low} and ${high}`,
  reactionNone: "No food stands out. That is no proof that none matters.",
  reactionDoctor:
    "A hint to talk over with a doctor, never a diagnosis. What is eaten together cannot be told apart.",
  printTitle: "For a dietitian or doctor",
  print: "Print a report",
  csv: "Save the meals as a table (CSV)",
};
