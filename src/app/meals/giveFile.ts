import { download } from "../files.js";

/** How a file left the app. */
export type Given =
  | "shared" // through the system's own sheet
  | "saved" // as a download
  | "dropped"; // the person closed the sheet: a normal end

/** Hands a file to the system's share sheet where there is one, else to the downloads. */
export async function giveFile(file: File): Promise<Given> {
  const data = { files: [file], title: file.name };
  if (typeof navigator.canShare === "function" && navigator.canShare(data)) {
    try {
      await navigator.share(data);
      return "shared";
    } catch (cause) {
      if (cause instanceof DOMException && cause.name === "AbortError") return "dropped";
      // Not allowed here, or no target for it: the download is left.
    }
  }
  download(file.name, file, file.type);
  return "saved";
}
