/** Below this the heaters may sag: common practice for small lithium cells. */
export const LOW_BATTERY_PCT = 15;
