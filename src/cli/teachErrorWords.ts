import type { TeachError } from "../teaching/teachNose.js";

/** Why nothing was taught, in words. */
export function teachErrorWords(error: TeachError): string {
  switch (error.kind) {
    case "noSamples":
      return "holds no sniff that could be read";
    case "noKnownGroup":
      return "no sniff says of any group whether it was present or absent";
    case "cancelled":
      return "cancelled";
    case "failed":
      return error.detail;
  }
}
