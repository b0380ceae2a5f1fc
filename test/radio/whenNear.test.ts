import { expect, it, vi } from "vitest";
import { forgetDevice } from "../../src/radio/rememberedSniffers.js";
import { whenNear } from "../../src/radio/whenNear.js";

const deviceWith = (parts: object): BluetoothDevice =>
  Object.assign(new EventTarget(), parts) as unknown as BluetoothDevice;
const patience = () => AbortSignal.timeout(20);

it("a remembered device that is heard is near, and is listened to no longer", async () => {
  let listening: AbortSignal | undefined;
  const device = deviceWith({
    watchAdvertisements: async (options: { signal: AbortSignal }) => {
      listening = options.signal;
      setTimeout(() => device.dispatchEvent(new Event("advertisementreceived")), 2);
    },
  });
  expect(await whenNear(device, AbortSignal.timeout(5000))).toBe(true);
  expect(listening?.aborted).toBe(true);
});

it("is not near where it stays silent, where the browser refuses, cannot listen, or nobody waits", async () => {
  expect(await whenNear(deviceWith({ watchAdvertisements: async () => undefined }), patience())).toBe(false);
  const refusing = { watchAdvertisements: () => Promise.reject(new DOMException("no", "InvalidStateError")) };
  expect(await whenNear(deviceWith(refusing), patience())).toBe(false);
  expect(await whenNear(deviceWith({}), patience())).toBe(false);
  const watchAdvertisements = vi.fn();
  expect(await whenNear(deviceWith({ watchAdvertisements }), AbortSignal.abort())).toBe(false);
  expect(watchAdvertisements).not.toHaveBeenCalled();
});

it("forgetting asks the browser where it can, and never throws", async () => {
  const forget = vi.fn().mockRejectedValue(new Error("no"));
  await forgetDevice(deviceWith({ forget }));
  expect(forget).toHaveBeenCalledOnce();
  await forgetDevice(deviceWith({}));
});
