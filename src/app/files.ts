/** Hands text or bytes to the person as a file, by the browser's own download. */
export function download(name: string, content: BlobPart, mime: string): void {
  const url = URL.createObjectURL(new Blob([content], { type: mime }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  // The download has its own hold on the data once it has begun.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** A name that any file system takes. */
export const fileName = (...parts: readonly string[]): string =>
  parts
    .join("-")
    .toLowerCase()
    .replace(/[^a-z0-9.-]+/g, "-");
