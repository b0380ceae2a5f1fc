// The radio in a real Chromium, against a peripheral that Chromium emulates: what the page calls is the browser's own
// Web Bluetooth. What each exception should be: Web Bluetooth draft.
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { CharacteristicAddress } from "../../src/kernel/link.js";
import {
  assembleSweeps,
  beginSweeps,
  finishSweeps,
  type LinkFault,
} from "../../src/profile/assembleSweeps.js";
import { fromHex, toHex } from "../../src/profile/bytes.js";
import { decodeLayout } from "../../src/profile/layout.js";
import { decodeStatus, encodeStatus } from "../../src/profile/status.js";
import type { Sweep } from "../../src/profile/sweepFrame.js";
import * as uuids from "../../src/profile/uuids.js";
import { countOf, lostCounters } from "../profile/sweepArbitraries.js";
import { launchChromium, startEmulatedPeripheral, type EmulatedPeripheral } from "./emulatedPeripheral.js";
import { profileSniffer, type ProfileSniffer } from "./profileSniffer.js";
import type { RadioPage } from "./radioPage.js";
import { serveModule, type ServedModule } from "./serveModule.js";

const ENTRY = fileURLToPath(new URL("./radioPage.ts", import.meta.url));
declare const radioPage: RadioPage;

let served: ServedModule;
let browser: Browser;
let page: Page;
let sniffer: ProfileSniffer;
let peripheral: EmulatedPeripheral;

beforeAll(async () => {
  served = await serveModule(ENTRY, "<button type=button>pair</button>");
  browser = await launchChromium();
});
afterAll(async () => {
  await browser.close();
  await served.close();
});

beforeEach(async () => {
  page = await browser.newPage();
  sniffer = profileSniffer();
  peripheral = await startEmulatedPeripheral(browser, page, sniffer);
  await page.goto(served.url);
  return async () => {
    await peripheral.stop();
    await page.close();
  };
});

async function pair(how: "choose" | "cancel") {
  await page.click("button");
  await peripheral.answerChooser(how);
  return page.evaluate(() => radioPage.paired);
}
const read = (address: CharacteristicAddress) => page.evaluate((there) => radioPage.read(there), address);
const write = (address: CharacteristicAddress, hex: string) =>
  page.evaluate(([there, octets]) => radioPage.write(there, octets), [address, hex] as const);
const subscribe = (address: CharacteristicAddress) =>
  page.evaluate((there) => radioPage.subscribe(there), address);
const heard = ({ characteristic }: CharacteristicAddress) =>
  page.evaluate((uuid) => radioPage.heard[uuid] ?? [], characteristic);
const yes = (value: string) => ({ ok: true, value });
const lost = { ok: false, error: { kind: "lost" } };

/** What the frames that the page heard make together. */
function assembled(run: number, frames: readonly string[]): { sweeps: Sweep[]; faults: LinkFault[] } {
  let state = beginSweeps(run, sniffer.layout.channels.length);
  const steps = frames.map((hex) => {
    const step = assembleSweeps(state, fromHex(hex));
    state = step.state;
    return step;
  });
  steps.push(finishSweeps(state));
  return { sweeps: steps.flatMap((step) => step.sweeps), faults: steps.flatMap((step) => step.faults) };
}

describe("choosing", () => {
  it("nothing is a normal end, and the next tap may choose", async () => {
    expect(await pair("cancel")).toEqual({ ok: false, error: { kind: "noneChosen" } });
    expect(peripheral.log).toEqual([]);
    expect(await pair("choose")).toEqual(yes("Test sniffer"));
    expect(peripheral.log).toContain("connection");
    expect(await page.evaluate(() => radioPage.rememberedCount())).toBe(1);
  });

  it("knows whether there is a radio, after a reload too", async () => {
    const availability = async () => {
      await page.reload();
      await page.waitForFunction(() => radioPage.availability.length > 0);
      return page.evaluate(() => radioPage.availability);
    };
    expect(await availability()).toEqual(["available"]);
    await peripheral.setRadio("absent");
    expect(await availability()).toEqual(["unavailable"]);
    await peripheral.setRadio("powered-on");
    expect(await availability()).toEqual(["available"]);
    expect(await pair("choose")).toEqual(yes("Test sniffer"));
  });
});

describe("a connected sniffer", () => {
  beforeEach(async () => {
    expect(await pair("choose")).toEqual(yes("Test sniffer"));
  });

  it("is read: layout, status, air, battery, firmware", async () => {
    const layout = await read(uuids.LAYOUT);
    expect(layout.ok && decodeLayout(fromHex(layout.value))).toEqual({ ok: true, value: sniffer.layout });
    const status = await read(uuids.STATUS);
    expect(status.ok && decodeStatus(fromHex(status.value))).toEqual({ ok: true, value: sniffer.status });
    expect(await read(uuids.TEMPERATURE)).toEqual(yes("2909"));
    expect(await read(uuids.HUMIDITY)).toEqual(yes("ffff"));
    expect(await read(uuids.BATTERY_LEVEL)).toEqual(yes("58"));
    expect(await read(uuids.FIRMWARE_REVISION)).toEqual(yes("312e30"));
  });

  it("says what it does not have, and what it does not allow", async () => {
    const error = { kind: "absent", address: uuids.PRESSURE };
    expect(await read(uuids.PRESSURE)).toEqual({ ok: false, error });
    expect(await read(uuids.SWEEP)).toMatchObject({ ok: false, error: { kind: "refused" } });
    expect(await subscribe(uuids.TEMPERATURE)).toMatchObject({ ok: false, error: { kind: "refused" } });
    expect(await write(uuids.CONTROL, "04")).toMatchObject({ ok: false, error: { kind: "refused" } });
    expect(peripheral.log.filter((entry) => entry.startsWith("write"))).toEqual(["write 0004 04"]);
  });

  it("that the page may not reach by its service is refused by the browser", async () => {
    const elsewhere = { service: uuids.canonicalUuid(0x1805), characteristic: uuids.canonicalUuid(0x2a2b) };
    expect(await read(elsewhere)).toMatchObject({ ok: false, error: { kind: "refused" } });
  });

  it("measures: every sweep arrives whole, across the wrap of the sequence number", async () => {
    expect(await subscribe(uuids.SWEEP)).toEqual(yes(""));
    expect(await write(uuids.CONTROL, "0107")).toEqual(yes(""));
    const sent = [sniffer.measure(), sniffer.measure(), sniffer.measure()];
    expect(await peripheral.pump(uuids.SWEEP)).toBe(6); // counted by hand: three sweeps of two frames
    expect(assembled(7, await heard(uuids.SWEEP))).toEqual({ sweeps: sent, faults: [] });
    expect(peripheral.log.filter((entry) => entry === "notify 0005")).toHaveLength(6);
  });

  it("tells a notification from the answer to a read, asked for at once", async () => {
    await subscribe(uuids.STATUS);
    await write(uuids.CONTROL, "0107");
    const answers = page.evaluate(
      ([status, level]) =>
        Promise.all([
          radioPage.read(status),
          radioPage.read(level),
          radioPage.read(status),
          radioPage.read(level),
        ]),
      [uuids.STATUS, uuids.BATTERY_LEVEL] as const,
    );
    expect(await peripheral.pump(uuids.STATUS)).toBe(1);
    const measuring = toHex(encodeStatus(sniffer.status));
    expect(await answers).toEqual([yes(measuring), yes("58"), yes(measuring), yes("58")]);
    expect(await heard(uuids.STATUS)).toEqual([measuring]);
  });

  it("pumps by itself when the test says so", async () => {
    await subscribe(uuids.SWEEP);
    await write(uuids.CONTROL, "0107");
    const stop = peripheral.pumpEvery(20);
    const sent = [sniffer.measure()];
    await page.waitForFunction((uuid) => radioPage.heard[uuid]?.length === 2, uuids.SWEEP.characteristic);
    sent.push(sniffer.measure());
    await page.waitForFunction((uuid) => radioPage.heard[uuid]?.length === 4, uuids.SWEEP.characteristic);
    await stop();
    expect(assembled(7, await heard(uuids.SWEEP)).sweeps).toEqual(sent);
  });

  it("lost in mid-run is told once; it comes back, is discovered anew, and what was missed is counted", async () => {
    await subscribe(uuids.SWEEP);
    await write(uuids.CONTROL, "0107");
    const before = [sniffer.measure(), sniffer.measure()];
    await peripheral.pump(uuids.SWEEP);

    await peripheral.disconnect();
    await page.waitForFunction(() => radioPage.losses > 0);
    expect(await read(uuids.BATTERY_LEVEL)).toEqual(lost);
    expect(await page.evaluate(() => radioPage.reconnect([0, 20]))).toEqual(lost);
    sniffer.measure();
    sniffer.dropWaiting();

    peripheral.comeBack();
    expect(await page.evaluate(() => radioPage.reconnect([0, 20, 40]))).toEqual(yes("Test sniffer"));
    expect(await page.evaluate(() => radioPage.losses)).toBe(1);
    await subscribe(uuids.SWEEP);
    const after = [sniffer.measure(), sniffer.measure()];
    await peripheral.pump(uuids.SWEEP);

    const { sweeps, faults } = assembled(7, await heard(uuids.SWEEP));
    expect(sweeps).toEqual([...before, ...after]);
    expect(countOf(faults, "framesLost")).toBe(2); // counted by hand: one sweep of two frames
    expect(lostCounters(faults)).toEqual([2]);
    expect(peripheral.log.filter((entry) => entry === "discovery")).toHaveLength(2);
  });

  it("is out of range before it answers: nobody asks any more, and the test goes on", async () => {
    const { read: answer } = sniffer;
    let gone: Promise<void> | undefined;
    sniffer.read = (address) => {
      gone = peripheral.disconnect();
      return answer(address);
    };
    await page.evaluate((there) => void radioPage.read(there), uuids.BATTERY_LEVEL);
    await expect.poll(() => peripheral.log).toContain("unanswered read 2a19");
    await gone;
  });

  it("closed by the page is no loss", async () => {
    await page.evaluate(() => radioPage.close());
    expect(await read(uuids.BATTERY_LEVEL)).toEqual(lost);
    expect(await page.evaluate(() => radioPage.losses)).toBe(0);
    expect(await page.evaluate(() => radioPage.reconnect([0]))).toEqual(yes("Test sniffer"));
    expect(await read(uuids.BATTERY_LEVEL)).toEqual(yes("58"));
  });
});
