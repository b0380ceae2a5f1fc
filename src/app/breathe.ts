/** Lets a tap that waits have its turn. */
export const breathe = (): Promise<void> => new Promise((resume) => setTimeout(resume, 0));
