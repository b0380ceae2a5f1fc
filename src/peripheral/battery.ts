import type { Sysfs } from "./sysfs.js";

/** Where the kernel lists them. */
const SUPPLIES = "class/power_supply";

/**
 * Finds the board's own battery.
 *
 * @returns what reads its charge in per cent (null where it does not tell), or null where there is no battery
 * @see Linux, Documentation/ABI/testing/sysfs-class-power: `type`, `capacity` (0 to 100 per cent), and `scope`, which
 *   is "Device" for the battery of something attached, such as a mouse
 */
export async function findBattery(sysfs: Sysfs): Promise<(() => Promise<number | null>) | null> {
  for (const name of await sysfs.list(SUPPLIES)) {
    const folder = `${SUPPLIES}/${name}`;
    const type = await sysfs.read(`${folder}/type`);
    const scope = await sysfs.read(`${folder}/scope`);
    const attached = scope.ok && scope.value === "Device";
    if (!type.ok || type.value !== "Battery" || attached) continue;
    if ((await sysfs.read(`${folder}/capacity`)).ok) return () => readCharge(sysfs, `${folder}/capacity`);
  }
  return null;
}

async function readCharge(sysfs: Sysfs, path: string): Promise<number | null> {
  const text = await sysfs.read(path);
  const pct = text.ok && /^\d+$/.test(text.value) ? Number(text.value) : Number.NaN;
  return pct <= 100 ? pct : null;
}
