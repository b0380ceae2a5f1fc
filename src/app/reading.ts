/** What reads kept data and files: with its schemas a piece of its own, which the first screen does not wait for. */
export { readPreferences } from "../flows/readPreferences.js";
export { parseSniff, readSniffFile, writeSniffFile } from "../sniff/sniffFile.js";
