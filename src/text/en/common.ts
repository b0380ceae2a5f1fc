import type { FoodGroup } from "../../kernel/groups.js";

/** Every group that the app offers has its word, or it does not compile; a sniff file may name others. */
const groups: Readonly<Record<FoodGroup, string>> & Readonly<Record<string, string>> = {
  meat: "Meat",
  fish: "Fish",
  shellfish: "Shellfish",
  dairy: "Dairy",
  egg: "Egg",
  nut: "Nut",
  soya: "Soya",
  alcohol: "Alcohol",
};

/** Words that every place uses. */
export const common = {
  appName: "Nidor",
  places: { plate: "Plate", meals: "Meals", nose: "Nose", you: "You" },
  placesLabel: "Places of the app",
  back: "Back",
  cancel: "Cancel",
  undo: "Undo",
  tryAgain: "Try again",
  more: "Show more",
  today: "Today",
  yesterday: "Yesterday",
  demoMark: "demo",
  groups,
  groupInSentence: (name: string) => name.toLowerCase(),
  duration: (minutes: number, seconds: number) =>
    minutes === 0
      ? `${seconds}\u00a0s`
      : seconds === 0
        ? `${minutes}\u00a0min`
        : `${minutes}\u00a0min ${seconds}\u00a0s`,
  loading: "One moment",
  failedTitle: "This could not be loaded",
  brokenTitle: "Something in the app broke",
  brokenText: "What you saved is still on this phone. Open the start page, or copy the details for a report.",
  brokenDetails: "Details for a report",
  startPage: "Start page",
  updateTitle: "A newer version is ready",
  updateText: "It comes only when you say so.",
  updateNow: "Use it now",
  updateLater: "Later",
  offline: "No network. Everything here works without it.",
  pieceMissing:
    "A part of the app is still missing. It comes by itself with the network; if not, load this page again.",
  skip: "Skip to the content",
};
