/** Called between the pieces of long work: a promise to wait for when others must have their turn, else undefined. */
export type Breathe = () => Promise<void> | undefined;

/** For work that nobody waits beside. */
export const WITHOUT_BREATH: Breathe = () => undefined;
