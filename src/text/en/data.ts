import { plural } from "./plural.js";

/** Data in and out, about, words explained, the first run. */
export const data = {
  title: "Your data",
  back: "You",
  text: "All data are on this phone, in this browser’s storage. Nothing is sent anywhere: there is no server and no account.",
  counts: {
    meals: "Meals",
    photos: "Photos",
    sniffs: "Sniffs",
    noses: "Noses",
    size: "Space used",
  },
  persisted: "The browser has promised not to clear this storage by itself.",
  notPersisted: "The browser may clear this storage when space runs short. Save a backup now and then.",
  askPersist: "Ask the browser to keep it",
  lastBackup: (when: string) => `Last backup ${when}`,
  noBackup: "No backup yet",
  setAside: (count: string) =>
    `${count} ${plural(count, "damaged record was set aside. It is", "damaged records were set aside. They are")} part of the next backup.`,
  outTitle: "Backup",
  out: "Save a backup",
  outNoPhotos: "Save without photos",
  outText:
    "One file with everything, with a checksum. It holds health data and is not encrypted: keep it where only you can read it.",
  saving: "Saving",
  saved: (meals: string, photos: string) =>
    `Backup done: ${meals} ${plural(meals, "meal", "meals")}, ${photos} ${plural(photos, "photo", "photos")}.`,
  savedNoPhotos: (meals: string) => `Backup done: ${meals} ${plural(meals, "meal", "meals")}, no photos.`,
  reminder: {
    text: (count: string) => `${count} new meals and samples are on this phone only.`,
    open: "Save a backup",
    later: "Later",
  },
  inTitle: "Bring in a backup",
  in: "Choose a backup file",
  inText: "First you see what it would do. Nothing is written over without your word.",
  demoTitle: "Demo data",
  demoText: "Made-up samples and meals, marked as demo.",
  dropDemo: "Remove the demo data",
  eraseTitle: "Delete everything",
  eraseText: "Meals, photos, sniffs, samples, noses and settings, for real. There is no way back.",
  erase: "Delete everything",
  eraseSheet: "Delete everything on this phone?",
  eraseSure: "I have a backup, or want none",
  eraseNow: "Delete it all",
  faults: {
    tooLarge: "The file is too large. Save without photos, or delete some.",
    notABackup: "This is no backup file.",
    newerFormat: (format: string) => `It was written by a newer version (${format}). Update the app first.`,
    damaged: "It was cut short or changed since it was written. Use another copy. Nothing was changed here.",
    badRecord: (line: string, cause: string) =>
      `Line ${line} cannot be read: ${cause}. Nothing was changed here.`,
  },
  plan: {
    title: "What this backup would do",
    text: (when: string) => `Written ${when}. Nothing has been done yet.`,
    fresh: (count: string) =>
      `${count} ${plural(count, "record is new and comes in", "records are new and come in")}`,
    same: (count: string) =>
      `${count} ${plural(count, "is here already, the same", "are here already, the same")}`,
    differing: (count: string) => `${count} ${plural(count, "is here and differs", "are here and differ")}`,
    differTitle: "Where both differ",
    mine: (when: string) => `here: ${when}`,
    theirs: (when: string) => `in the file: ${when}`,
    noDate: "no date",
    choices: { keepMine: "keep mine", takeTheirs: "take the file’s", keepBoth: "keep both" },
    tables: {
      settings: "Settings",
      sniffers: "Sniffer",
      checkJar: "Check jar reading",
      noses: "Nose",
      noseEvents: "Decision on a nose",
      sniffs: "Sniff",
      sniffNotes: "Note on a sniff",
      drafts: "Draft",
      meals: "Meal",
      photos: "Photo",
      setAside: "Damaged record",
    },
    activeNose: "Nose in use",
    done: (count: string) => `${count} ${plural(count, "record", "records")} came in.`,
    more: (count: string) => `and ${count} more, as proposed`,
    allSame: "Everything in it is here already.",
    do: "Bring it in",
    doing: "Bringing it in",
  },
  about: {
    title: "About and limits",
    paragraphs: [
      "Nidor helps you decide at the table: eat, ask, or send back. It listens to a gas sensor held over the plate, and says when the answer is worthless.",
      "It is no medical device. It diagnoses nothing, treats nothing and prevents nothing.",
      "A nose can only raise caution. Allergens are proteins and have no smell. Traces, gluten and lactose have none at the amounts that matter. “Not smelled” never means that it is not there.",
      "The cautions come from tables of dishes and ingredients, with their sources. They do not know this kitchen. Ask, and follow local rules and your doctor.",
      "The virtual sniffer and the demo nose are made up, for practice. They know nothing of real food.",
    ],
    version: (version: string) => `Version ${version}`,
    licence: "Open source, MIT licence.",
  },
  install: {
    title: "Put it on your phone",
    text: "Then it opens like any other app, without a network.",
    address: {
      title: "First: the right address",
      lines: [
        "The address must begin with https://. The s stands for a protected connection. On any other address the phone’s browser refuses two things that Nidor needs: Bluetooth, for the sniffer, and keeping the app on the phone, so that it works without a network.",
        "Ask whoever gave you Nidor for this address: the person or group that runs it for you. Nobody else has it, and no app shop does.",
      ],
      sound: (address: string) =>
        `This page is at ${address}. That is a right address: open it on your phone.`,
      unsound: (address: string) =>
        `This page is at ${address}. That does not begin with https://, so it will not do on a phone. Ask for one that does.`,
    },
    android: {
      title: "Android, with Chrome",
      steps: [
        "Open Chrome and type the address, with https:// in front.",
        "Tap the three dots at the top right.",
        "Tap “Add to home screen”, then “Install”.",
        "Open Nidor from the home screen once while you have a network. From then on it needs none.",
        "To pair a sniffer, turn Bluetooth on. Where Chrome asks for nearby devices, allow it.",
      ],
    },
    iphone: {
      title: "iPhone and iPad",
      steps: [
        "No sniffer can be paired there: the browsers on an iPhone have no Bluetooth for web pages. Cautions, kitchen card, meals and the virtual sniffer work.",
        "Open the address in Safari and tap Share.",
        "Tap “Add to Home Screen”, then “Add”.",
      ],
    },
    computer: {
      title: "Computer, with Chrome or Edge",
      steps: ["Open the address, and choose the install sign at the end of the address bar."],
    },
    button: "Install now",
  },
  glossary: {
    title: "Words explained",
    entries: {
      sniffer: ["Sniffer", "The pocket device: heated gas sensors, with temperature, humidity and pressure."],
      channel: ["Channel", "One resistance that the sniffer reports: a sensor at one heater step."],
      sweep: ["Sweep", "One pass over all channels."],
      sniff: ["Sniff", "One occasion: sweeps in clean air, then sweeps over a plate."],
      headspace: ["Headspace", "The air just above the food."],
      group: ["Food group", "What a sniff is judged for, such as meat or fish. A plate can hold several."],
      sample: ["Sample", "A sniff whose groups are known, kept for teaching."],
      nose: ["Nose", "What the phone has learned from samples, with the evidence of how good that is."],
      finding: ["Finding", "Smelled, not smelled, or uncertain: do not rely on this."],
      missRate: [
        "Accepted miss rate",
        "How often, at most, you accept that something there is called “not smelled”.",
      ],
      interval: ["Interval", "The stretch in which the true value lies, 95% sure."],
      checkJar: [
        "Check jar",
        "A closed jar of the same vinegar or coffee, sniffed now and then to see drift.",
      ],
      drift: ["Drift", "A sensor slowly reading differently for the same air."],
      heldOut: ["Plates it had not met", "Plates kept back from teaching, to try the nose on."],
    } as Record<string, readonly [string, string]>,
  },
};
