import { err, ok, type Result } from "../kernel/result.js";
import type { Sysfs } from "./sysfs.js";

/** Where the kernel lists them. @see Linux, Documentation/ABI/testing/sysfs-bus-iio */
const DEVICES = "bus/iio/devices";

export interface IioDevice {
  /** Below the root of sysfs. */
  readonly folder: string;
  readonly attributes: readonly string[];
}

/**
 * Finds an Industrial I/O device.
 *
 * @param wanted - "device0" as the kernel numbers it (`iio:device0`), or the device's own `label` or `name`
 * @returns or what there is instead, each as it may be asked for
 */
export async function findDevice(sysfs: Sysfs, wanted: string): Promise<Result<IioDevice, string[]>> {
  const folders = (await sysfs.list(DEVICES)).filter((name) => name.startsWith("iio:"));
  const present: string[] = [];
  for (const name of folders) {
    const folder = `${DEVICES}/${name}`;
    const number = name.slice("iio:".length);
    const names = [await textOf(sysfs, `${folder}/label`), await textOf(sysfs, `${folder}/name`)].filter(
      (text) => text !== "",
    );
    if (number === wanted || name === wanted || names.includes(wanted)) {
      return ok({ folder, attributes: await sysfs.list(folder) });
    }
    present.push(names.length === 0 ? number : `${number} (${names.join(", ")})`);
  }
  return err(present);
}

async function textOf(sysfs: Sysfs, path: string): Promise<string> {
  const text = await sysfs.read(path);
  return text.ok ? text.value : "";
}
