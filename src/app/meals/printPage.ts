/**
 * Prints what is on the page, dark on white whatever the theme, and tells when the person is done. Where the browser
 * does not tell, the page stays as it is and its own way back leads on.
 *
 * @returns puts the theme back
 */
export function printPage(onDone: () => void): () => void {
  const { dataset } = document.documentElement;
  const theme = dataset["theme"];
  dataset["theme"] = "light";
  addEventListener("afterprint", onDone, { once: true });
  // The page must have been drawn as it is to be printed.
  const timer = setTimeout(() => print(), 0);
  return () => {
    clearTimeout(timer);
    removeEventListener("afterprint", onDone);
    if (theme === undefined) delete dataset["theme"];
    else dataset["theme"] = theme;
  };
}
