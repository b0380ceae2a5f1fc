/** Which adapter to use, read off what BlueZ lists: pure. */
import * as v from "valibot";
import { err, ok, type Result } from "../kernel/result.js";
import type { Problem } from "./problem.js";

/** What GetManagedObjects answers: by path, by interface, by property. */
export type ManagedObjects = Readonly<
  Record<string, Readonly<Record<string, Readonly<Record<string, unknown>>>>>
>;

const objectsSchema = v.record(v.string(), v.record(v.string(), v.record(v.string(), v.unknown())));

export const ADAPTER = "org.bluez.Adapter1";
export const GATT_MANAGER = "org.bluez.GattManager1";
export const ADVERTISING_MANAGER = "org.bluez.LEAdvertisingManager1";

/**
 * The adapter's path.
 *
 * @param wanted - such as "hci0"; null: the first that can serve and is on
 */
export function chooseAdapter(objects: ManagedObjects, wanted: string | null): Result<string, Problem> {
  const all = Object.keys(objects).filter((path) => objects[path]?.[ADAPTER] !== undefined);
  const candidates = all.filter((path) => wanted === null || nameOf(path) === wanted);
  const [first] = candidates;
  if (first === undefined) return err({ kind: "noAdapter", wanted, present: all.map(nameOf) });
  const able = candidates.filter((path) => {
    const interfaces = objects[path] ?? {};
    return GATT_MANAGER in interfaces && ADVERTISING_MANAGER in interfaces;
  });
  const [firstAble] = able;
  // Switched off, an adapter may offer neither: that is the first thing to put right.
  if (firstAble === undefined) {
    const kind = candidates.every((path) => !isOn(objects, path)) ? "adapterOff" : "noPeripheralRole";
    return err({ kind, adapter: nameOf(first) });
  }
  const on = able.find((path) => isOn(objects, path));
  return on === undefined ? err({ kind: "adapterOff", adapter: nameOf(firstAble) }) : ok(on);
}

/** What BlueZ lists, checked; null where it is no such list. */
export function parseObjects(answer: unknown): ManagedObjects | null {
  const checked = v.safeParse(objectsSchema, answer);
  return checked.success ? checked.output : null;
}

/** "hci0" of "/org/bluez/hci0". */
export const nameOf = (path: string): string => path.slice(path.lastIndexOf("/") + 1);

const isOn = (objects: ManagedObjects, path: string): boolean =>
  objects[path]?.[ADAPTER]?.["Powered"] === true;
