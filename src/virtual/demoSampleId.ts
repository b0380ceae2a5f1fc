/** What the id of every demo sample begins with. */
export const DEMO_NAME = "demo";

/** Is it one of the samples that come with the app? A plate of one's own from the practice kitchen is not. */
export const isDemoSample = (sniffId: string): boolean => sniffId.startsWith(`${DEMO_NAME}-`);
