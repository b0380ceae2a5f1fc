import { err, ok } from "../../src/kernel/result.js";
import type { Sysfs, SysfsFault } from "../../src/peripheral/sysfs.js";

export interface MemorySysfs extends Sysfs {
  /** Attribute texts by path; a test may change them. */
  readonly files: Map<string, string>;
  /** What fails, by path. */
  readonly faults: Map<string, SysfsFault["kind"]>;
  /** Every write, in order, as "path=text". */
  readonly written: string[];
  /** What reading an attribute gives, where it is worked out. */
  readonly live: Map<string, () => string>;
}

/** Attributes in memory, for what turns on time or on faults that a file system will not make. */
export function memorySysfs(files: Readonly<Record<string, string>>): MemorySysfs {
  const all = new Map(Object.entries(files));
  const faults = new Map<string, SysfsFault["kind"]>();
  const live = new Map<string, () => string>();
  const written: string[] = [];
  const faultAt = (path: string): SysfsFault | null => {
    const kind = faults.get(path) ?? (all.has(path) ? null : "absent");
    return kind === null ? null : { kind, path, detail: kind };
  };
  return {
    files: all,
    faults,
    live,
    written,
    list: (path) => {
      const names = [...all.keys()]
        .filter((file) => file.startsWith(`${path}/`))
        .map((file) => file.slice(path.length + 1).split("/")[0] ?? "");
      return Promise.resolve([...new Set(names)].sort());
    },
    read: (path) => {
      const fault = faultAt(path);
      return Promise.resolve(fault === null ? ok(live.get(path)?.() ?? all.get(path) ?? "") : err(fault));
    },
    write: (path, text) => {
      const fault = faultAt(path);
      if (fault !== null) return Promise.resolve(err(fault));
      written.push(`${path}=${text}`);
      all.set(path, text);
      return Promise.resolve(ok(undefined));
    },
  };
}
