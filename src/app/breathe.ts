/** Lets a tap that waits have its turn. */
export const breathe = (): Promise<void> => new Promise((resume) => setTimeout(resume, 0));

/** Work behind the scenes goes on all the same, however busy the page is. Common practice. */
const LONGEST_WAIT_MS = 250;

/** Lets everything that the person waits for go first. Where a browser cannot tell when it is idle, it breathes. */
export const untilIdle = (): Promise<void> =>
  typeof requestIdleCallback === "function"
    ? new Promise((resume) => requestIdleCallback(() => resume(), { timeout: LONGEST_WAIT_MS }))
    : breathe();
