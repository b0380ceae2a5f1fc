import { plural } from "./plural.js";

/** The phases of one check. */
export const check = {
  stepsLabel: "Steps of the check",
  steps: { warming: "Warm up", cleanAir: "Clean air", overPlate: "Plate", done: "Finding" },
  stop: "Stop the check",
  warming: {
    title: "Warming up",
    text: "A cold heater measures nothing. Leave the sniffer on the table, away from the food.",
    left: (duration: string) => `${duration} left`,
    progress: "Warm-up",
  },
  cleanAir: {
    title: "Hold it in clean air",
    text: "Keep it in one place until the air is steady.",
    away: "An arm’s length from the plate, or more; not by smoke or the kitchen door.",
    open: "Openings free, nothing over them, not in a bag.",
    lungs: "Do not breathe on it.",
    atLeast: (duration: string) => `At least ${duration} more`,
    air: {
      tooFewSweeps: { status: "Measuring until a trend can be seen", remedy: "A few more seconds." },
      drifting: {
        status: "The air is still changing",
        remedy: "Step away from the food, or let the sniffer clear itself of the last smell.",
      },
      scattered: {
        status: "The readings jump about",
        remedy: "Shield it from draughts and breath, and lay it down if you can.",
      },
    },
    drift: "Drift",
    scatter: "Scatter",
    ofLimit: (value: string, limit: string) => `${value} of at most ${limit}`,
    notYet: "not known yet",
    within: "within the limit",
    beyond: "beyond the limit",
    waited: (duration: string) => `Waiting for ${duration}`,
  },
  overPlate: {
    title: "The air is steady",
    text: "Start the countdown, and bring the sniffer over the plate while it runs.",
    moving: "Bring it over the plate and hold it still.",
    distance: "A hand’s breadth above the food, openings down. Never touch it.",
    cover: "Cup the other hand beside it against draughts. Do not close the plate off: the sniffer gets wet.",
    still: "Keep still until the finding is there.",
    startNow: "I am there: start now",
    button: "Start the countdown",
    again: "The clean air only keeps for two minutes.",
    practice: "The practice kitchen has put the plate down.",
  },
  headspace: {
    title: "Sniffing the plate",
    text: "Keep a hand’s breadth above it. Do not touch the food.",
    elapsed: (elapsed: string, limit: string) => `${elapsed} of at most ${limit}`,
    likely: (duration: string) => `likely about ${duration} more`,
    longer: "longer than most plates take",
    left: (duration: string) => `at most ${duration} more`,
    progress: "Time over the plate",
    settled: "The answer has come to rest",
    moving: "The answer is still moving",
    first: "The first sweeps are coming in",
    evidence: "Evidence so far",
    soFar: "So far, not a finding",
    leaningThere: "leaning yes",
    leaningNot: "leaning no",
    leaningNone: "no lean yet",
    traces: "Change against clean air, by channel",
    tracesSpoken: (channels: string, largest: string) =>
      `${channels} ${plural(channels, "channel", "channels")}; the largest change so far is ${largest} times.`,
    lost: (count: string) => `${count} ${plural(count, "sweep", "sweeps")} lost on the way`,
    finish: "Finish now",
  },
  interrupted: {
    during: (phase: string) => `It happened during: ${phase}`,
    useGathered: "Use what was gathered",
    goOn: "Go on all the same",
    restart: "Start again",
    kept: (sweeps: string) =>
      `Kept: ${sweeps} ${plural(sweeps, "sweep", "sweeps")} over the plate. A finding from them names the reason.`,
    nothingKept: "Nothing had been sniffed over the plate yet, so nothing is lost.",
    goOnText: "If you go on, every finding of this sniff will be uncertain and will say why.",
    back: {
      title: "The sniffer is back, but this sniff cannot go on",
      remedy: "Start again, or use what was gathered before the break.",
    },
    refused: {
      otherSniffer: "What answers now is another sniffer, or has other channels.",
      restarted: "It lost power in between, so its heater began cold.",
      runEnded: "It stopped measuring in between.",
      gapTooLong: "More than ten seconds over the plate were not heard: too much to read across.",
    },
    causes: {
      linkLost: {
        title: "The sniffer went out of reach",
        what: "The radio link broke, or the sniffer was switched off.",
        remedy: "Bring the phone closer. The app connects again by itself, and goes on where that is sound.",
      },
      neverSteady: {
        title: "The air does not settle",
        what: "After three minutes the readings still move.",
        remedy: "Go further from the kitchen, to a window or outside, and start again.",
      },
      snifferFault: {
        title: "The sniffer reports a fault",
        what: "A heater draws no current, or too much: its readings mean nothing.",
        remedy: "Switch the sniffer off and on. If it stays, it needs repair.",
      },
      snifferRestarted: {
        title: "The sniffer began anew",
        what: "It lost power or restarted in the middle of the sniff.",
        remedy: "Check its battery, then start again.",
      },
      commandRefused: {
        title: "The sniffer did not start",
        what: "It did not take the command.",
        remedy: "Wait a few seconds. If it still refuses, switch it off and on.",
      },
      noSweeps: {
        title: "The sniffer is silent",
        what: "It is connected, but no sweeps arrive.",
        remedy: "Switch it off and on, then start again.",
      },
    },
  },
  announce: {
    warming: "Warming up.",
    cleanAir: "Hold the sniffer in clean air.",
    overPlate: "The air is steady. Start the countdown, then bring the sniffer over the plate.",
    headspace: "Sniffing the plate.",
    interrupted: "The check stands still.",
    done: "The finding is there.",
    countdown: (seconds: string) =>
      `It begins in ${seconds} seconds. Bring the sniffer over the plate and hold it still.`,
  },
  /** What a reading of the check jar says in place of the plate's words. */
  jar: {
    name: "Check jar",
    text: "Start the countdown, open the jar, and bring the sniffer over it while it runs.",
    moving: "Bring it over the open jar and hold it still.",
    practice: "The practice kitchen has opened the jar.",
    title: "Sniffing the jar",
    headspace: "Hold it as high above the jar as every time.",
    announce: {
      overPlate: "The air is steady. Start the countdown, then bring the sniffer over the open jar.",
      countdown: (seconds: string) =>
        `It begins in ${seconds} seconds. Bring the sniffer over the open jar and hold it still.`,
      headspace: "Sniffing the jar.",
      done: "The check jar has been sniffed.",
    },
  },
};
