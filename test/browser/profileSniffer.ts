/** A sniffer of three channels, made of nothing but the profile's encoders: it measures when the test says so. */
import type { CharacteristicAddress } from "../../src/kernel/link.js";
import { encodeBatteryLevel } from "../../src/profile/battery.js";
import { toHex } from "../../src/profile/bytes.js";
import { attErrorOf, decodeControl } from "../../src/profile/control.js";
import { encodeText } from "../../src/profile/deviceInformation.js";
import { encodeHumidity, encodeTemperature } from "../../src/profile/environment.js";
import { encodeLayout, PROFILE_VERSION, type SnifferLayout } from "../../src/profile/layout.js";
import { encodeStatus, type SnifferStatus } from "../../src/profile/status.js";
import { encodeSweep, framesPerSweep, type Sweep } from "../../src/profile/sweepFrame.js";
import * as uuids from "../../src/profile/uuids.js";
import type { EmulatedSniffer } from "./emulatedPeripheral.js";
import { keyOf } from "./notificationPump.js";

export interface ProfileSniffer extends EmulatedSniffer {
  readonly layout: SnifferLayout;
  status: SnifferStatus;
  /** Makes the next sweep of the run and gives it back; its frames wait to be notified. */
  measure(): Sweep;
  /** Drops the frames that wait, as a radio does that nobody hears. */
  dropWaiting(): void;
}

export const LAYOUT_OF_TEST: SnifferLayout = {
  profileVersion: PROFILE_VERSION,
  snifferId: "00a1b2c3d4e5f607",
  channels: [
    { sensor: 0, heaterC: 200, dwellMs: 250 },
    { sensor: 0, heaterC: 320, dwellMs: 250 },
    { sensor: 1, heaterC: null, dwellMs: null },
  ],
  sweepPeriodMs: 1000,
  warmUpMs: 180_000,
};

export function profileSniffer(): ProfileSniffer {
  const waiting: Record<string, Uint8Array[]> = {};
  let sequence = 65_533;
  let counter = 0;
  const values: Record<string, () => Uint8Array> = {
    [keyOf(uuids.LAYOUT)]: () => encodeLayout(LAYOUT_OF_TEST),
    [keyOf(uuids.STATUS)]: () => encodeStatus(sniffer.status),
    [keyOf(uuids.TEMPERATURE)]: () => encodeTemperature(23.45),
    [keyOf(uuids.HUMIDITY)]: () => encodeHumidity(null),
    [keyOf(uuids.BATTERY_LEVEL)]: () => encodeBatteryLevel(88),
    [keyOf(uuids.FIRMWARE_REVISION)]: () => encodeText("1.0"),
  };
  const notify = (address: CharacteristicAddress, ...frames: Uint8Array[]): void => {
    (waiting[keyOf(address)] ??= []).push(...frames);
  };
  const sniffer: ProfileSniffer = {
    name: "Test sniffer",
    layout: LAYOUT_OF_TEST,
    status: {
      state: "ready",
      heaterFault: false,
      run: 0,
      warmUpLeftMs: 0,
      deviceTimeMs: 600_000,
      burnInHours: 312,
    },
    services: {
      [uuids.SNIFFER_SERVICE]: {
        [uuids.LAYOUT.characteristic]: { read: true },
        [uuids.STATUS.characteristic]: { read: true, notify: true },
        [uuids.CONTROL.characteristic]: { write: true },
        [uuids.SWEEP.characteristic]: { notify: true },
      },
      [uuids.ENVIRONMENTAL_SENSING_SERVICE]: {
        [uuids.TEMPERATURE.characteristic]: { read: true },
        [uuids.HUMIDITY.characteristic]: { read: true },
      },
      [uuids.BATTERY_SERVICE]: { [uuids.BATTERY_LEVEL.characteristic]: { read: true } },
      [uuids.DEVICE_INFORMATION_SERVICE]: { [uuids.FIRMWARE_REVISION.characteristic]: { read: true } },
    },
    read(address) {
      const value = values[keyOf(address)];
      if (value === undefined) throw new RangeError(`nothing to read at ${keyOf(address)}`);
      return value();
    },
    write(address, bytes) {
      if (keyOf(address) !== keyOf(uuids.CONTROL)) throw new RangeError(`wrote ${toHex(bytes)} elsewhere`);
      const command = decodeControl(bytes);
      if (!command.ok) return attErrorOf(command.error);
      if (command.value.kind === "start") {
        counter = 0;
        sniffer.status = { ...sniffer.status, state: "measuring", run: command.value.run };
      } else {
        sniffer.status = { ...sniffer.status, state: command.value.kind === "stop" ? "ready" : "purging" };
      }
      notify(uuids.STATUS, encodeStatus(sniffer.status));
      return 0;
    },
    nextNotification: (address) => waiting[keyOf(address)]?.shift() ?? null,
    measure() {
      const { run, deviceTimeMs } = sniffer.status;
      const sweep = {
        run,
        counter,
        atMs: deviceTimeMs,
        ohm: [51_000 - counter, 48_000 + counter, 1_250_000],
      };
      notify(uuids.SWEEP, ...encodeSweep(sweep, sequence));
      sequence = (sequence + framesPerSweep(sweep.ohm.length)) % 65_536;
      counter += 1;
      sniffer.status = { ...sniffer.status, deviceTimeMs: deviceTimeMs + LAYOUT_OF_TEST.sweepPeriodMs };
      return sweep;
    },
    dropWaiting() {
      for (const frames of Object.values(waiting)) frames.length = 0;
    },
  };
  return sniffer;
}
