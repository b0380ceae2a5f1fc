import { plural } from "./plural.js";

/** The full report on a nose, and the sniffer's fitness. */
export const report = {
  title: "Report",
  back: "Nose",
  text: (split: string, folds: string) =>
    `Every number is from plates the nose had not met: ${folds} parts, split by ${split}.`,
  splits: { plate: "plate", occasion: "occasion" },
  confusionTitle: "Right and wrong",
  confusion: {
    caption: "At even odds, by plate",
    truth: "Truth",
    there: "there",
    notThere: "not there",
    calledThere: "called there",
    calledNot: "called not there",
  },
  reliabilityTitle: "Do the chances come true?",
  reliabilityText:
    "Dots on the slanted line: what was called 70% came true in 70%. Larger dots stand for more plates.",
  called: "called",
  cameTrue: "came true",
  reliabilityRow: (called: string, observed: string, plates: string) =>
    `${called} called: ${observed} of ${plates} came true`,
  riskTitle: "Fewer answers, fewer errors",
  riskText: "If only the surest share is answered, so many of those answers are wrong.",
  riskAcross: "answered",
  riskUp: (top: string) => `wrong, up to ${top}`,
  riskRow: (coverage: string, risk: string) => `${coverage} answered: ${risk} wrong`,
  coverageTitle: "Does the promise hold?",
  coverageText: (target: string) =>
    `The set of possible answers should hold the truth for at least ${target} of the plates.`,
  coveragePresent: "with it",
  coverageAbsent: "without it",
  scoresTitle: "Scores",
  scores: {
    auc: "Area under the ROC curve",
    brier: "Brier score",
    logLoss: "Log loss",
    ece: "Expected calibration error",
    balancedAccuracy: "Balanced accuracy",
  },
  brierParts: (reliability: string, resolution: string, uncertainty: string) =>
    `Brier score in parts: reliability ${reliability}, resolution ${resolution}, uncertainty ${uncertainty}`,
  calibration: (kind: string) => `Calibration: ${kind}`,
  rivalsTitle: "Against plain rivals",
  rivalsText:
    "On the same splits. Lower log loss is better. The nose takes the mean of those that help, or one alone that is much better.",
  rivalChosen: "used",
  rival: "Model",
  horizonsTitle: "How long to sniff",
  horizon: (seconds: string) => `after ${seconds}`,
  leak: {
    title: "Do the circumstances give it away?",
    text: "What holds no food must not tell the groups apart. If it does, the room, the day or the hour betrays the answer, and this report is too good.",
    kinds: {
      cleanAir: "Clean air alone",
      airReadings: "Temperature, humidity and pressure alone",
      clock: "The clock alone",
    },
    holds: (what: string) => `${what}: tells nothing, as it should be`,
    found: (what: string, groups: string) => `${what}: tells ${groups}. The samples are confounded`,
    missing: (what: string) => `${what}: not in these samples, or it never changes`,
    tooFew: (what: string) => `${what}: too few plates to tell`,
    highest: (auc: string) => `highest area under the ROC curve ${auc}; chance is 0.5`,
    auc: (group: string, auc: string, limit: string) =>
      `${group}: area under the ROC curve ${auc}; by accident up to ${limit}`,
    addTitle: "What to add",
    addText: "Within one sitting, sniff plates with the group and plates without it, in no fixed order:",
    oneSided: (group: string, count: string, all: string, names: string) =>
      `${group}: on ${count} of ${all} occasions all plates were of one kind (${names}). Add the other kind on such days.`,
    others: (count: string) => `${count} others`,
    addAny: "On every occasion both kinds came up. Mix their order within the sitting.",
  },
  learning: {
    title: "What more plates would bring",
    text: "Wrong answers of a quick model taught on a part of the plates. It is simpler than the nose itself; its slope is what counts.",
    across: (plates: string) => `plates taught, up to ${plates}`,
    up: (top: string) => `wrong, up to ${top}`,
    row: (plates: string, wrong: string, loss: string) =>
      `${plates} plates: ${wrong} wrong, log loss ${loss}`,
    more: (plates: string, lower: string) =>
      `If it goes on like this, ${plates} plates would make the log loss ${lower} lower. That is a guess from four points, and holds for dishes like these.`,
    moreNothing:
      "More plates like these have not made it better. Other dishes, other occasions or more care with the labels may.",
  },
  occasion: {
    title: "On days it does not know",
    text: (occasions: string) => `Whole occasions held out, of ${occasions}. This is the stricter trial.`,
    loss: (plate: string, occasion: string) => `Log loss ${plate} by plate, ${occasion} by occasion`,
    none: "Not tried by occasion: the checks were left out, or this nose is a refreshed one or from an earlier version. Teach anew to have it.",
    one: "Not tried by occasion: all samples are from one.",
  },
  notChecked:
    "Not worked out for this nose: the checks were left out, or it is from an earlier version. Teach anew to have them.",
  rivalAuc: "ROC area",
  rivalAccuracy: "Balanced accuracy",
  leftOutTitle: "Left out",
  leftOut: {
    otherSniffer: (count: string) => `${count} ${plural(count, "sniff", "sniffs")} of another sniffer`,
    otherChannels: (count: string) => `${count} ${plural(count, "sniff", "sniffs")} with other channels`,
    noCleanAir: (count: string) => `${count} ${plural(count, "sniff", "sniffs")} without clean air`,
    noKnownGroup: (count: string) => `${count} ${plural(count, "sniff", "sniffs")} with no known group`,
    duplicate: (count: string) =>
      `${count} ${plural(count, "sniff that was", "sniffs that were")} there twice`,
  },
  none: "too few plates to judge",
  fitness: {
    title: "The sniffer’s fitness",
    noneTitle: "No sniffer connected",
    noneText: "Connect one on Plate; this page then shows its state.",
    fits: { well: "in order", attention: "look at this", renewed: "renewed by itself", unknown: "not known" },
    items: {
      heater: {
        title: "Heater",
        well: () => "It reports that its heater reaches its steps.",
        attention: () => "A heater draws no current, or too much: its readings mean nothing.",
        unknown: "It has not told its state yet.",
        remedy: "Switch it off and on. If it stays, it needs repair.",
      },
      warmUp: {
        title: "Warm-up",
        well: () => "The heater is warm.",
        attention: (left: string) => `The heater is not warm yet: ${left} left.`,
        unknown: "It has not told whether it is warm.",
        remedy: "Leave it switched on, away from food. A check waits for it by itself.",
      },
      burnIn: {
        title: "Burn-in",
        well: (hours: string) =>
          `Heated for ${hours} in its life: past the first days, in which a sensor drifts most.`,
        attention: (hours: string) => `Heated for only ${hours} in its life: a new sensor still drifts.`,
        unknown: "It does not tell how long it has been heated.",
        remedy: "Leave it switched on for two days before you teach a nose with it.",
      },
      battery: {
        title: "Battery",
        well: (charge: string) => `${charge} left.`,
        attention: (charge: string) => `Only ${charge} left: the heater may not reach its heat.`,
        unknown: "It does not tell its charge.",
        remedy: "Charge it before you rely on a sniff.",
      },
      cleanAir: {
        title: "Clean air",
        well: (age: string) => `Steady clean air was measured ${age} ago.`,
        attention: (age: string) => `The last steady clean air is ${age} old.`,
        unknown: "None was measured since the app was opened.",
        remedy: "Nothing to do: each check measures clean air anew.",
      },
      steadiness: {
        title: "Steadiness",
        well: (drift: string) => `The readings move by ${drift} in twenty seconds.`,
        attention: (drift: string) =>
          `The readings move by ${drift} in twenty seconds: that is no steady air.`,
        unknown: "Too few sweeps came to tell. Live traces or a check bring some.",
        remedy: "Hold it in clean air away from food and draughts, or let it purge.",
      },
      humidity: {
        title: "Humidity",
        well: (margin: string) => `Its coolest part is ${margin} °C above the point where water condenses.`,
        attention: (margin: string) =>
          `Its coolest part is only ${margin} °C above the point where water condenses: the sensor may get wet.`,
        unknown: "It does not tell temperature and humidity.",
        remedy: "Hold it higher above steam, and let it warm up in dry air. A cold sniffer gets wet sooner.",
      },
      airSensor: {
        title: "Air sensor",
        well: () => "Nothing shows that its humidity reading is stuck.",
        attention: (humidity: string) =>
          `It keeps saying exactly ${humidity} humidity: it is wet, or it is stuck.`,
        unknown: "Too few readings of temperature and humidity yet.",
        remedy:
          "Let the sniffer dry in clean air for some minutes. If it stays, the air sensor needs repair: findings are uncertain until then.",
      },
      link: {
        title: "Lost on the way",
        well: (share: string) => `${share} of its notifications were lost.`,
        attention: (share: string) => `${share} of its notifications were lost: sniffs have holes.`,
        unknown: "No sweep has come yet.",
        remedy: "Bring the phone closer, and keep hands and metal from between them.",
      },
      channels: {
        title: "Channels",
        well: () => "No channel is stuck or at the end of its range.",
        attention: (channels: string) => `Stuck or at the end of the range: channel ${channels}.`,
        unknown: "Too few sweeps came to tell. Live traces or a check bring some.",
        remedy: "Switch it off and on, and look again in clean air. If it stays, the sensor needs repair.",
      },
    },
    identityTitle: "Which one",
    maker: "Maker",
    model: "Model",
    firmware: "Firmware",
    id: "Id",
    channels: "Channels",
    hours: (count: string) => `${count}\u00a0h`,
    seconds: (count: string) => `${count}\u00a0s`,
    period: "One sweep every",
    linkTitle: "Since connecting",
    sweeps: "Sweeps",
    framesLost: "Notifications lost",
    corrupt: "Damaged on the way",
    restarts: "Restarts",
    badReadings: "Impossible readings",
    jarTitle: "Check jar",
    jarText:
      "A closed jar of the same vinegar or coffee, sniffed now and then, shows whether the sniffer has drifted.",
    jarNone: "No reading yet.",
    jarIn: "In control: the last readings lie within their limits.",
    jarOut:
      "Out of control: the sniffer has drifted. Findings are uncertain until it is back, or until the nose is brought up to date with fresh samples.",
    jarUnknown: "Too few readings to tell.",
    jarRow: (when: string, score: string) => `${when}: ${score}`,
    jarChart: "Distance from the reference, oldest first; the dashed line is the limit.",
    jarSniff: "Sniff the check jar",
  },
};
