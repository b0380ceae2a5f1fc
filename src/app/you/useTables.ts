import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type * as youTables from "./youTables.js";
import { untilHere } from "../pieces.js";

export type YouTables = typeof youTables;

const tables = signal<YouTables | null>(null);

/** The diet tables behind the pages of You; null until they are here. */
export function useTables(): YouTables | null {
  useEffect(() => {
    void (async () => {
      tables.value ??= await untilHere(() => import("./youTables.js"));
    })();
  }, []);
  return tables.value;
}
