/** The sniffer: pairing, its state, what went wrong. */
export const sniffer = {
  title: "Sniffer",
  none: "No sniffer yet",
  noneText: "Pair yours, or try everything with the virtual one.",
  notConnected: "No sniffer connected",
  notConnectedText: "Connect to one you know, pair another, or use the virtual one.",
  choosing: "Choose it in the browser’s list",
  choosingText: "If it is missing there, switch it on and bring it close.",
  connecting: (name: string) => `Connecting to ${name}`,
  connectingText: "Reading its channels and its state.",
  lost: (name: string) => `${name} is out of reach`,
  lostText: "Bring the phone closer and check that the sniffer is on.",
  reconnecting: {
    waiting: (seconds: string) => `Next try in ${seconds}`,
    trying: (tries: string, most: string) => `Connecting: try ${tries} of ${most}`,
    paused: {
      hidden: "Waiting until this page is in sight again",
      radioOff: "Waiting until Bluetooth is on again",
    },
    gaveUp: {
      bound: "It did not answer for a minute, so the app no longer tries by itself.",
      person: "The app no longer tries by itself.",
      willNotMend: "Another try would change nothing.",
    },
    tryNow: "Try now",
    giveUp: "Stop trying",
  },
  radioOff: "The browser says that Bluetooth is off or not allowed. Switch it on in the phone’s settings.",
  connectTo: (name: string) => `Connect to ${name}`,
  pairAnother: "Pair another sniffer",
  failed: "The sniffer could not be used",
  virtualName: "Virtual sniffer",
  practice: (times: string) => `Practice: no real air is measured. Time runs ${times} times faster.`,
  pair: "Pair a sniffer",
  chooseAgain: "Choose it again",
  useVirtual: "Use the virtual sniffer",
  reconnect: "Connect again",
  disconnect: "Disconnect",
  states: {
    unknown: "state not told yet",
    cold: "cold",
    warming: "warming up",
    ready: "warm and ready",
    measuring: "measuring",
    purging: "purging in clean air",
    fault: "fault",
  },
  warmUpLeft: (duration: string) => `warm in ${duration}`,
  heaterFault: "A heater does not work as it should: switch the sniffer off and on.",
  battery: "Battery",
  air: "Air",
  batteryUnknown: "not told",
  batteryLow: "Low battery: the heaters may not reach their heat. Charge it before you rely on a sniff.",
  airText: (temperature: string, humidity: string) => `${temperature}, ${humidity} humidity`,
  unsupportedTitle: "This browser cannot reach a sniffer",
  unsupportedText:
    "Pairing needs Web Bluetooth, which Chrome and Edge have on Android, Windows, macOS and ChromeOS. Safari, Firefox and every browser on an iPhone do not have it.",
  unsupportedWorks:
    "Everything else works here: cautions, the kitchen card, meals, backups, teaching, and practice with the virtual sniffer.",
  failures: {
    unsupported: {
      sentence: "This browser has no Web Bluetooth.",
      remedy: "Use Chrome or Edge on Android or a computer, or the virtual sniffer here.",
    },
    notAllowed: {
      sentence: "The browser did not allow Bluetooth for this page.",
      remedy: "Allow it in the browser’s site settings, then tap the button again.",
    },
    unreachable: {
      sentence: "It did not answer.",
      remedy: "Switch it on, bring it close, and make sure no other phone is using it.",
    },
    forgotten: {
      sentence: (name: string) => `This browser does not remember ${name}.`,
      remedy: "Choose it again in the browser’s list.",
    },
    notASniffer: {
      sentence: "That device is not a sniffer: it lacks the sniffer service.",
      remedy: "Choose another device in the list.",
    },
    badLayout: {
      sentence: "What it says about its channels cannot be read.",
      remedy: "Try again. If it stays, the sniffer needs other firmware.",
    },
    newerProfile: {
      sentence: (found: string, known: string) =>
        `It speaks profile version ${found}; this app knows ${known}.`,
      remedy: "Update the app.",
    },
    unexpected: {
      sentence: (detail: string) => `Something unforeseen happened: ${detail}`,
      remedy: "Switch the sniffer off and on, and try again.",
    },
  },
};
