/** Ids of virtual sniffers: by them a practice sniff is known wherever it turns up. */

/** What all of them begin with; the unit's number follows. */
const VIRTUAL_PREFIX = "5e0d1e00";
/** Largest number of a unit: it has 32 bits. */
export const LAST_UNIT = 0xffff_ffff;

/**
 * The id that the virtual sniffer of this number answers with.
 *
 * @param unit - whole, 0 to LAST_UNIT
 */
export const virtualSnifferId = (unit: number): string => VIRTUAL_PREFIX + unit.toString(16).padStart(8, "0");

/** The unit that the demo samples were taken with. */
export const VIRTUAL_SNIFFER_ID = virtualSnifferId(1);

/** Does it exist only as numbers? */
export const isVirtualSniffer = (snifferId: string): boolean => snifferId.startsWith(VIRTUAL_PREFIX);
