/** Work behind the scenes goes on all the same, however busy the page is. Common practice. */
const LONGEST_WAIT_MS = 250;

/** Lets everything that the person waits for go first. Where a browser cannot tell when it is idle, a tap has its turn. */
export const untilIdle = (): Promise<void> =>
  new Promise((resume) => {
    if (typeof requestIdleCallback === "function")
      requestIdleCallback(() => resume(), { timeout: LONGEST_WAIT_MS });
    else setTimeout(resume, 0);
  });
