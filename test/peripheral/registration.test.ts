// Adapters, phones and BlueZ itself go and come back: the sniffer on a real D-Bus daemon, with a stand-in for BlueZ.
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { encodeControl } from "../../src/profile/control.js";
import { decodeSweepFrame } from "../../src/profile/sweepFrame.js";
import * as uuids from "../../src/profile/uuids.js";
import type { Problem } from "../../src/peripheral/problem.js";
import { startBus, type BusDaemon } from "./busDaemon.js";
import { meetBluez, serveDevice, type ServedDevice } from "./servedDevice.js";
import { startStandInBluez, type StandInBluez } from "./standInBluez.js";

const STATUS = uuids.STATUS.characteristic;
const CONTROL = uuids.CONTROL.characteristic;
const SWEEP = uuids.SWEEP.characteristic;
const PHONE = "/org/bluez/hci0/dev_1";

let daemon: BusDaemon;
let sniffer: ServedDevice;
beforeAll(async () => {
  daemon = await startBus();
}, 120_000);
afterAll(() => daemon.stop());
afterEach(() => sniffer.close());

describe("a run that nobody follows any more", () => {
  const measuring = () => sniffer.device.core().activity.kind === "measuring";

  it("goes on for 60 s after the phone left, and then ends", async () => {
    sniffer = await serveDevice(daemon);
    await sniffer.warmAndStart(7);
    await sniffer.bluez.subscribe(SWEEP);
    await sniffer.bluez.subscribe(SWEEP, false);
    sniffer.bluez.disconnect(PHONE);
    await sniffer.settled();
    sniffer.nowMs += 59_999;
    sniffer.server.tick();
    expect(measuring()).toBe(true);
    sniffer.nowMs += 1;
    sniffer.server.tick();
    expect(measuring()).toBe(false); // 60 s: PROFILE.md section 2
  });

  it("goes on while the phone is there, and when it came back in time", async () => {
    sniffer = await serveDevice(daemon);
    await sniffer.warmAndStart(7);
    sniffer.nowMs += 3_600_000;
    sniffer.server.tick();
    expect(measuring()).toBe(true);
    sniffer.bluez.disconnect(PHONE);
    await sniffer.settled();
    sniffer.nowMs += 40_000;
    await sniffer.hexOf(STATUS);
    sniffer.nowMs += 40_000;
    sniffer.server.tick();
    expect(measuring()).toBe(true);
  });

  it("does not end a purge", async () => {
    sniffer = await serveDevice(daemon);
    await sniffer.warmAndStart(7);
    await sniffer.bluez.write(CONTROL, encodeControl({ kind: "purge" }));
    sniffer.bluez.disconnect(PHONE);
    await sniffer.settled();
    sniffer.nowMs += 60_000; // of the 90 s it takes
    sniffer.server.tick();
    expect(sniffer.device.core().activity.kind).toBe("purging");
  });
});

describe("adapters that go and come back", () => {
  const both = (adapter: string) => () =>
    sniffer.bluez.applications.has(adapter) && sniffer.bluez.advertisements.get(adapter)?.length === 1;

  it("registers again after the adapter was unplugged, and the run went on meanwhile", async () => {
    sniffer = await serveDevice(daemon);
    await sniffer.warmAndStart(7);
    await sniffer.bluez.subscribe(SWEEP);
    sniffer.bluez.removeAdapter("hci0");
    await sniffer.bluez.until(() => sniffer.problems.length > 0, "the loss to be told");
    expect(sniffer.problems[0]).toEqual({ kind: "noAdapter", wanted: null, present: [] });
    sniffer.at(601_000, { kind: "sweep", startedAtMs: 600_000, ohm: [1, 2, 3] });
    sniffer.bluez.addAdapter("hci0");
    await sniffer.bluez.until(both("hci0"), "the sniffer to be registered again");
    await sniffer.bluez.until(() => sniffer.served.length === 1, "the return to be told");
    expect(sniffer.served).toEqual(["hci0"]);
    // The new adapter knows of no subscription, so nothing is sent until the phone subscribes again.
    sniffer.at(602_000, { kind: "sweep", startedAtMs: 601_000, ohm: [1, 2, 3] });
    await sniffer.bluez.subscribe(SWEEP);
    sniffer.at(603_000, { kind: "sweep", startedAtMs: 602_000, ohm: [1, 2, 3] });
    await sniffer.settled();
    const counters = sniffer.bluez.announced(SWEEP).map((bytes) => {
      const frame = decodeSweepFrame(bytes);
      return frame.ok ? frame.value.counter : -1;
    });
    expect(counters).toEqual([2, 2]);
  });

  it("moves to another adapter that comes instead", async () => {
    sniffer = await serveDevice(daemon);
    sniffer.bluez.removeAdapter("hci0");
    sniffer.bluez.addAdapter("hci1");
    await sniffer.bluez.until(both("hci1"), "the sniffer to be registered with the other");
  });

  it("advertises again after the adapter was switched off and on", async () => {
    sniffer = await serveDevice(daemon);
    sniffer.bluez.power("hci0", false);
    await sniffer.bluez.until(() => sniffer.problems.length > 0, "the loss to be told");
    expect(sniffer.problems[0]).toEqual({ kind: "adapterOff", adapter: "hci0" });
    sniffer.bluez.power("hci0", true);
    await sniffer.bluez.until(() => sniffer.served.length === 1, "the return to be told");
    expect(both("hci0")()).toBe(true);
    expect(sniffer.bluez.advertisements.get("hci0")?.[0]?.["onAir"]).toBe(true);
  });

  it("advertises again when BlueZ released the advertisement", async () => {
    sniffer = await serveDevice(daemon);
    await sniffer.bluez.releaseAdvertisement("hci0");
    await sniffer.bluez.until(both("hci0"), "the advertisement to be back");
  });

  it("registers again with a BlueZ that was restarted", async () => {
    sniffer = await serveDevice(daemon);
    await sniffer.bluez.stop();
    await sniffer.bluez.until(() => sniffer.problems.length > 0, "the loss to be told");
    expect(sniffer.problems[0]).toMatchObject({ kind: "noBluez" });
    sniffer.bluez = await startStandInBluez(daemon.address);
    sniffer.bluez.addAdapter("hci0");
    await sniffer.bluez.until(both("hci0"), "the sniffer to be registered with the new one");
  });

  it("takes both back when it ends", async () => {
    sniffer = await serveDevice(daemon);
    await sniffer.stopKeeping();
    await sniffer.registration.withdraw();
    expect(sniffer.bluez.applications.size).toBe(0);
    expect(sniffer.bluez.advertisements.get("hci0")).toEqual([]);
  });
});

describe("why it cannot be served", () => {
  const refusal = async (prepare: (bluez: StandInBluez) => void): Promise<Problem | null> => {
    sniffer = await meetBluez(daemon, prepare);
    const attempt = await sniffer.registration.attempt();
    return attempt.ok ? null : attempt.error;
  };

  it("no adapter", async () => {
    expect(await refusal(() => undefined)).toEqual({ kind: "noAdapter", wanted: null, present: [] });
  });

  it("an adapter that is off", async () => {
    const off = await refusal((bluez) => bluez.addAdapter("hci0", { powered: false }));
    expect(off).toEqual({ kind: "adapterOff", adapter: "hci0" });
  });

  it("an adapter that cannot be a peripheral", async () => {
    const unable = await refusal((bluez) => bluez.addAdapter("hci0", { peripheral: false }));
    expect(unable).toEqual({ kind: "noPeripheralRole", adapter: "hci0" });
  });

  it("no advertisement left on it", async () => {
    const busy = await refusal((bluez) => bluez.addAdapter("hci0", { slots: 0 }));
    expect(busy).toMatchObject({ kind: "advertisingBusy", adapter: "hci0" });
  });

  it("nothing, where the third of three adapters can and is on", async () => {
    const none = await refusal((bluez) => {
      bluez.addAdapter("hci0", { peripheral: false });
      bluez.addAdapter("hci1", { powered: false });
      bluez.addAdapter("hci2");
    });
    expect(none).toBeNull();
    expect([...sniffer.bluez.applications.keys()]).toEqual(["hci2"]);
  });
});
