/** What may go wrong with the virtual sniffer, for practice in the app. */
export const PRACTICE_FAULTS = [
  "lost", // notifications that never come
  "link", // the link breaks over the plate, and can be had again
  "garbled", // notifications with a wrong octet
  "stuck", // a channel that shows one value
  "poisoned", // less sensitive with each sniff
  "steam", // a headspace that wets the sniffer
  "heater", // a heater that fails over the plate
  "reboot", // power lost for a moment over the plate
  "spread", // another unit off the line
] as const;

export type PracticeFault = (typeof PRACTICE_FAULTS)[number];
