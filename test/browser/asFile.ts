/** A text as a file to be chosen on a page; what the app makes of it hangs on its content alone. */
export const asFile = (name: string, text: string) => ({
  name,
  mimeType: "application/json",
  buffer: Buffer.from(text),
});
