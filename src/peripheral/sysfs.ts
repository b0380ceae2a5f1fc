/** The kernel's attribute files, below a root that tests may replace. Effects: reads and writes files. */
import { constants } from "node:fs";
import { readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { err, ok, type Result } from "../kernel/result.js";

/** Why an attribute could not be read or set. */
export interface SysfsFault {
  readonly kind:
    | "absent" // no such file: another device, or another driver
    | "denied" // the file may not be touched: run as root, or hand out the right
    | "gone" // the device was taken away, or its driver
    | "busy" // somebody else holds it, or its buffer is running
    | "failed"; // anything else
  readonly path: string;
  readonly detail: string;
}

export interface Sysfs {
  /** Names in a folder, sorted; none where there is no such folder. */
  list(path: string): Promise<string[]>;
  /** An attribute's text without the line end. */
  read(path: string): Promise<Result<string, SysfsFault>>;
  write(path: string, text: string): Promise<Result<void, SysfsFault>>;
}

/** An attribute that is not there must not become a file. */
const NEVER_CREATE = constants.O_WRONLY | constants.O_TRUNC;

/** @see errno(3): what the kernel says, and what it means for a sensor */
const KIND_OF_CODE: Readonly<Record<string, SysfsFault["kind"]>> = {
  ENOENT: "absent",
  ENOTDIR: "absent",
  EACCES: "denied",
  EPERM: "denied",
  EROFS: "denied",
  ENODEV: "gone",
  ENXIO: "gone",
  EBUSY: "busy",
};

/** The attribute files below `root`, which is `/sys` on a running machine. */
export function openSysfs(root: string): Sysfs {
  const attempt = async <T>(
    path: string,
    act: (file: string) => Promise<T>,
  ): Promise<Result<T, SysfsFault>> => {
    try {
      return ok(await act(join(root, path)));
    } catch (cause) {
      return err(sysfsFault(path, cause));
    }
  };
  return {
    list: async (path) => {
      const names = await attempt(path, (file) => readdir(file));
      return names.ok ? names.value.sort() : [];
    },
    read: (path) => attempt(path, async (file) => (await readFile(file, "utf8")).trim()),
    write: (path, text) => attempt(path, (file) => writeFile(file, `${text}\n`, { flag: NEVER_CREATE })),
  };
}

/** What a failed call on a file means. */
export function sysfsFault(path: string, cause: unknown): SysfsFault {
  const code = cause instanceof Error && "code" in cause ? String(cause.code) : "";
  const detail = cause instanceof Error ? cause.message : String(cause);
  return { kind: KIND_OF_CODE[code] ?? "failed", path, detail };
}
