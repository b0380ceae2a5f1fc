import type { SnifferStatus } from "../profile/status.js";

/** Can the sniffer measure no more? Either word of it is enough. */
export const tellsFault = ({ state, heaterFault }: SnifferStatus): boolean =>
  heaterFault || state === "fault";
