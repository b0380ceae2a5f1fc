import type { GroupTruths } from "../kernel/groups.js";
import type { Sniff } from "../sniff/sniff.js";
import { isVirtualSniffer } from "../virtual/virtualSnifferId.js";

/** Practice time runs this much faster than a real sniffer's, and the screen says so. */
export const PRACTICE_SPEED = 8;

/** A dish that the virtual cook can serve, and what is in it. */
export interface PracticeDish {
  readonly id: string;
  readonly name: string;
  readonly groups: GroupTruths;
}

/** Dish that stands in for the check jar in practice: the same serving each time. */
export const PRACTICE_JAR = "wine-clams";

/** Was it taken with the virtual sniffer? A sniff that was cut short tells so too, after any reload. */
export const isPractice = ({ sniffer }: Pick<Sniff, "sniffer">): boolean => isVirtualSniffer(sniffer.id);
