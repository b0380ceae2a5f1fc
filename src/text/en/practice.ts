/** Practice with faults of the virtual sniffer. */
export const practice = {
  link: "Practise with faults",
  linkText: "Of the virtual sniffer only",
  title: "Practise with faults",
  text: "Choose what goes wrong with the virtual sniffer, check a plate, and see what the app says. A real sniffer has none of it, and after a reload all is off.",
  real: "A real sniffer is connected: nothing can go wrong here on purpose. Disconnect it to practise.",
  faultsTitle: "What goes wrong",
  faults: {
    lost: { name: "Lost notifications", hint: "One in five never arrives. The sniff has gaps." },
    link: {
      name: "Lost link",
      hint: "It breaks over the plate. The app reaches the sniffer again by itself.",
    },
    garbled: {
      name: "Garbled notifications",
      hint: "One in five comes with a wrong octet. The check value finds it, and it counts as lost.",
    },
    stuck: { name: "Stuck channel", hint: "The third channel shows one value, whatever it meets." },
    poisoned: {
      name: "Poisoning",
      hint: "It grows less sensitive with each sniff. The check jar shows it, once it has ten readings from before.",
    },
    steam: { name: "Much steam", hint: "Far more than an ordinary plate gives: the sniffer gets wet." },
    heater: { name: "Broken heater", hint: "It fails over the plate." },
    reboot: { name: "Restart in mid-sniff", hint: "It loses power for a moment over the plate." },
    spread: {
      name: "Another sniffer",
      hint: "A second unit off the same line. The nose was not taught on it.",
    },
  },
  otherUnit: "Other virtual sniffer",
  toPlate: "To the plate",
  onTitle: "Practice: faults are on",
  onText: (faults: string) => `${faults}. Of the virtual sniffer only.`,
  allOff: "Turn all off",
};
