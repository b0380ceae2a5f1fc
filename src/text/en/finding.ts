import { plural } from "./plural.js";

/** What a finding says, and why. */
export const finding = {
  verdicts: { smelled: "Smelled", notSmelled: "Not smelled", uncertain: "Uncertain" },
  uncertainAddition: "do not rely on this",
  spoken: (group: string, verdict: string) => `${group}: ${verdict}`,
  headline: {
    smelled: (groups: string) => `${groups}: smelled`,
    uncertain: "No clear answer",
    notSmelled: (groups: string) => `${groups}: not smelled`,
    none: "No group was asked for",
  },
  advice: {
    smelled: "Take it as being on the plate. Ask the kitchen, or send the plate back.",
    uncertain: "This sniff is not good enough to decide by. Ask the kitchen, as if you had not sniffed.",
    notSmelled:
      "Nothing of it stood out. That is not proof: small amounts and covered smells go unnoticed. The cautions still hold.",
    none: "Choose the groups to judge under You.",
  },
  chance: (percent: string) => `Chance that it is there: ${percent}`,
  chanceNone: "No chance can be worked out",
  interval: (low: string, high: string) => `likely between ${low} and ${high}`,
  bandLow: "not there",
  bandHigh: "there",
  bandMiddle: "uncertain",
  bandSpoken: (low: string, high: string, from: string, to: string) =>
    `The interval runs from ${low} to ${high}. Between ${from} and ${to} an answer counts as uncertain.`,
  bandSpokenNone: "There is no value to show on the scale.",
  reasonsTitle: "Why it is uncertain",
  basisTitle: "What this rests on",
  glossary: "What these words mean",
  basis: {
    nose: (name: string, ago: string) => `Nose “${name}”, taught ${ago}`,
    taught: (plates: string) => `Taught on ${plates} ${plural(plates, "plate", "plates")}`,
    present: (plates: string, misses: string) =>
      `Tried on ${plates} ${plural(plates, "plate", "plates")} with it that the nose had never met: ${misses} missed`,
    missRate: (upper: string) => `So at most ${upper} of such plates would be missed (95% sure)`,
    absent: (plates: string, alarms: string) =>
      `Tried on ${plates} ${plural(plates, "plate", "plates")} without it: ${alarms} ${plural(alarms, "false alarm", "false alarms")}`,
    accepted: (rate: string) => `Judged at your accepted miss rate of ${rate}`,
    sniffed: (duration: string) => `The plate was sniffed for ${duration}`,
  },
  beliefTitle: "Your belief and this sniff together",
  belief: (before: string, after: string) =>
    `You thought ${before} before the sniff. With this sniff it comes to ${after}.`,
  likelihoodRatio: (ratio: string) =>
    `Likelihood ratio ${ratio}: how much more often such a sniff comes from a plate with it than without.`,
  allergyNote:
    "You are allergic to this. A nose can warn, but never clear a plate: allergens have no smell at the amounts that matter.",
  steam: "Do not hold your face or the sniffer over a steaming dish: steam can carry protein.",
  cautionsTitle: "Cautions that still hold",
  cautionsNone:
    "Our tables name no caution for what you typed. That says nothing about this plate: ask the kitchen.",
  cautionsNoProfile:
    "You have not said under You what you avoid, so no caution could be looked up. Ask the kitchen.",
  limits: "Traces, gluten, lactose and most allergens have no smell. This is no medical device.",
  save: "Save as a meal",
  keep: "Keep as a sample",
  again: "Sniff again",
  done: "Done",
  revealTitle: "What the practice kitchen served",
  revealText: (dish: string, groups: string) => `${dish}. In it: ${groups}.`,
  revealNothing: (dish: string) => `${dish}. None of the groups is in it.`,
  revealAgreed: (groups: string) => `The finding matched for: ${groups}.`,
  revealMissed: (groups: string) => `The finding was wrong for: ${groups}.`,
  revealOpen: (groups: string) => `Left uncertain: ${groups}.`,
  reasons: {
    tooFewSweeps: {
      sentence: (sweeps: string, needed: string) =>
        `Only ${sweeps} ${plural(sweeps, "sweep", "sweeps")} over the plate; at least ${needed} are needed.`,
      remedy: "Sniff again and stay over the plate longer.",
    },
    noCleanAir: {
      sentence: "This sniff has no clean air to compare with.",
      remedy: "Sniff again and begin in clean air.",
    },
    staleCleanAir: {
      sentence: (age: string) => `The clean air was measured ${age} before the plate, which is too long.`,
      remedy: "Begin again in clean air and move over the plate at once.",
    },
    cleanAirUnsteady: {
      sentence: "The air never settled before the plate.",
      remedy: "Move away from the kitchen, smoke and draughts, and begin again.",
    },
    coldHeater: {
      sentence: "The sniffer was not warm yet.",
      remedy: "Let it warm up to the end, then sniff again.",
    },
    heaterFault: {
      sentence: "A heater in the sniffer did not work as it should.",
      remedy: "Switch the sniffer off and on. If it stays, the sniffer needs repair.",
    },
    wetSensor: {
      sentence: "The sniffer is too damp.",
      remedy: "Let it dry in clean air, then hold it higher over the dish.",
    },
    airStuck: {
      sentence:
        "The humidity reading stands still or at the end of its range: the air sensor is wet or stuck.",
      remedy:
        "Let the sniffer dry in clean air for some minutes, then sniff again. If it stays, the air sensor needs repair.",
    },
    saturated: {
      sentence: (channels: string) =>
        `${channels} ${plural(channels, "channel stood still or at the end of its range", "channels stood still or at the end of their range")}.`,
      remedy: "Purge in clean air, then hold the sniffer higher. If it stays, the sensor needs repair.",
    },
    sweepsLost: {
      sentence: "Too many sweeps were lost on the way to the phone.",
      remedy: "Keep the phone close to the sniffer and sniff again.",
    },
    linkLost: {
      sentence: "The link to the sniffer broke in the middle of the sniff.",
      remedy: "Connect again and sniff once more.",
    },
    weakSignal: {
      sentence: (ratio: string, needed: string) =>
        `The plate hardly stood out from clean air (${ratio} times the noise; ${needed} are needed).`,
      remedy: "Hold the sniffer closer, or wait until the dish is warmer and stirred.",
    },
    stillMoving: {
      sentence: "The answer was still changing when the sniff ended.",
      remedy: "Sniff again and stay over the plate longer.",
    },
    noNose: {
      sentence: "There is no nose yet.",
      remedy: "Teach one from samples; for practice there are demo samples, under Nose, Samples.",
    },
    otherSniffer: {
      sentence: "This nose was taught on another sniffer.",
      remedy:
        "Use the sniffer it was taught on, move it by plates sniffed on both (Nose, Another sniffer), or teach a nose for this one.",
    },
    otherChannels: {
      sentence: "This sniffer measures other channels than the nose was taught on.",
      remedy:
        "Use the sniffer it was taught on, move it by plates sniffed on both (Nose, Another sniffer), or teach a nose for this one.",
    },
    drifted: {
      sentence: "The check jar says this sniffer has drifted.",
      remedy: "Let it run in clean air, sniff the check jar again, and teach anew if it stays.",
    },
    unlikeTaught: {
      sentence: "This plate smells unlike anything the nose was taught.",
      remedy: "Ask the kitchen. If you learn what it was, keep it as a sample.",
    },
    groupNotTaught: {
      sentence: "The nose was never taught this group.",
      remedy: "Collect samples with it and without it, then teach.",
    },
    tooFewPresent: {
      sentence: (plates: string, best: string, more: string) =>
        `Only ${plates} ${plural(plates, "plate with it has", "plates with it have")} been tried: that can show no better than ${best} missed. Your accepted rate takes ${more} more, none of them missed.`,
      remedy: "Collect more plates with it, or accept a higher miss rate under You.",
    },
    tooFewAbsent: {
      sentence: (plates: string, more: string) =>
        `Only ${plates} ${plural(plates, "plate without it has", "plates without it have")} been tried; ${more} more ${plural(more, "is", "are")} needed.`,
      remedy: "Collect more plates without it.",
    },
    missRateNotShown: {
      sentence: (misses: string, plates: string, upper: string, accepted: string, more: string) =>
        `The nose missed ${misses} of ${plates} ${plural(plates, "plate", "plates")} with it. That could mean up to ${upper} missed; you accept ${accepted}. That takes ${more} more ${plural(more, "plate", "plates")} with it, none missed.`,
      remedy: "Collect more samples and teach again, or accept a higher miss rate under You.",
    },
    bothPossible: {
      sentence: "Plates with it and plates without it smell like this.",
      remedy: "Ask the kitchen. More samples of such dishes may tell them apart.",
    },
    neitherFits: {
      sentence: "Neither plates with it nor plates without it smell like this.",
      remedy: "Ask the kitchen. If you learn what it was, keep it as a sample.",
    },
    allergy: {
      sentence: "You are allergic to it, and no nose can clear an allergen.",
      remedy: "Ask the kitchen, and follow your doctor’s plan.",
    },
    unknown: {
      sentence: "This reason comes from another version of the app.",
      remedy: "Take the finding as uncertain.",
    },
  },
};
