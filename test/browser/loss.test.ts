// The link lost in each phase, and everything that goes wrong on the air, over real `navigator.bluetooth` calls:
// nothing recorded is lost, and nothing is invented.
import { describe, expect, inject, it } from "vitest";
import type { Sniff } from "../../src/sniff/sniff.js";
import { fromHex } from "../../src/profile/bytes.js";
import { BATTERY_SERVICE, DEVICE_INFORMATION_SERVICE, LAYOUT, SWEEP } from "../../src/profile/uuids.js";
import type { Sweep } from "../../src/profile/sweepFrame.js";
import { beginOverPlate, button, heading, keptSniffs, pair, phase, type LossTable } from "./lossTable.js";
import { MAY_CRASH } from "./mayCrash.js";
import type { Garble } from "./tableSniffer.js";
import { useLossTables } from "./useLossTables.js";

const lay = useLossTables();

/** So slow that a phase of a few device seconds is not over before the test has seen it and lost the link in it. */
const UNHURRIED = 4;

/** Ends the check and gives the sniff as it is kept. */
async function finished({ page }: LossTable): Promise<Sniff> {
  await button(page, "Save as a meal").waitFor();
  await expect.poll(async () => (await keptSniffs(page)).length).toBe(1);
  const [sniff] = await keptSniffs(page);
  if (sniff === undefined) throw new Error("the sniff was not kept");
  return sniff;
}

/** The made sweeps that a kept phase holds, in order; a kept sweep that was never made fails the test. */
function madeOf(kept: Sniff["headspace"], made: readonly Sweep[]): Sweep[] {
  return kept.ohm.map((ohm) => {
    const same = made.filter((sweep) => sweep.ohm.every((value, channel) => value === ohm[channel]));
    expect(same, "a kept sweep is one that the sniffer made").toHaveLength(1);
    return same[0]!;
  });
}

/** Counters that lie between the first and the last kept sweep and are not there. */
function missing(kept: readonly Sweep[]): number[] {
  const [first, last] = [kept[0]!.counter, kept.at(-1)!.counter];
  const there = new Set(kept.map(({ counter }) => counter));
  return Array.from({ length: last - first + 1 }, (_, i) => first + i).filter(
    (counter) => !there.has(counter),
  );
}

const starts = ({ peripheral }: LossTable) =>
  peripheral.log.filter((entry) => entry.startsWith("write 0004 01"));

// Lost while it discovers, as it comes back.
describe("the link is lost", MAY_CRASH, () => {
  it("while warming up: it comes back by itself, and the same run goes on to a finding", async () => {
    const at = await lay(undefined, { speed: UNHURRIED });
    await pair(at);
    await button(at.page, "Check this plate").click();
    await heading(at.page, "Warming up").waitFor();
    await at.lose();
    await phase(at.page, "interrupted").waitFor();
    await at.page.getByText(/Next try in|Connecting: try/).waitFor();
    await at.comeBackAfter(20_000);
    await heading(at.page, "The air is steady").waitFor();
    expect(starts(at)).toHaveLength(1);
  });

  it("in clean air: a short hole is read across, a long one begins clean air anew", async () => {
    const at = await lay(undefined, { speed: UNHURRIED });
    await pair(at);
    await button(at.page, "Check this plate").click();
    await heading(at.page, "Hold it in clean air").waitFor();
    await at.lose();
    await at.comeBackAfter(4000);
    await phase(at.page, "cleanAir").waitFor();
    expect(starts(at)).toHaveLength(1);
    await at.lose();
    await at.comeBackAfter(45_000);
    await expect.poll(() => starts(at).length).toBe(2);
    await heading(at.page, "The air is steady").waitFor();
  });

  it("over the plate for a moment: the sniff goes on, whole but for the sweeps of the hole", async () => {
    const at = await lay();
    await pair(at);
    await beginOverPlate(at, "beef-broth");
    await at.lose();
    await phase(at.page, "interrupted").waitFor();
    await at.comeBackAfter(6000);
    await phase(at.page, "headspace").waitFor();
    const sniff = await finished(at);
    const kept = madeOf(sniff.headspace, at.sniffer.made());
    expect(starts(at)).toHaveLength(1);
    expect(missing(kept).length).toBeGreaterThanOrEqual(2); // 6 s are three sweeps of 2 s, cut anywhere
    expect(missing(kept).length).toBeLessThanOrEqual(4);
    expect(sniff.flags ?? []).not.toContain("linkLost");
    const [first] = kept;
    expect(sniff.headspace.atMs).toEqual(kept.map(({ atMs }) => atMs - first!.atMs));
    // The draft of the break is done with: nothing is offered twice.
    await button(at.page, "Done").click();
    await heading(at.page, "What is on the plate?").waitFor();
    expect(await at.page.getByText(/cut short/i).count()).toBe(0);
  });

  it("over the plate for long: the part before is kept and offered with the reason, and nothing is added to it", async () => {
    const at = await lay();
    await pair(at);
    await beginOverPlate(at, "beef-broth");
    await at.lose();
    await phase(at.page, "interrupted").waitFor();
    const before = at.sniffer.made().length;
    await at.comeBackAfter(40_000);
    await heading(at.page, "The sniffer is back, but this sniff cannot go on").waitFor();
    await at.page.getByText(/more than ten seconds/i).waitFor();
    await button(at.page, "Use what was gathered").click();
    const sniff = await finished(at);
    const kept = madeOf(sniff.headspace, at.sniffer.made().slice(0, before));
    expect(missing(kept)).toEqual([]);
    expect(sniff.flags).toContain("linkLost");
    const verdicts = at.page.locator("[data-group] .finding__verdict");
    for (const verdict of await verdicts.allTextContents()) expect(verdict).toMatch(/uncertain/i);
  });

  it("over the plate because the power went: the part before is kept, and the restart is told", async () => {
    const at = await lay();
    await pair(at);
    await beginOverPlate(at, "beef-broth");
    await at.lose();
    at.sniffer.reboot();
    await at.comeBackAfter(500);
    await at.page.getByText(/lost power in between/i).waitFor();
    await button(at.page, "Start again").click();
    await heading(at.page, "Warming up").waitFor();
  });

  it("while it purges: the finding stands, and the sniffer is there again for the next plate", async () => {
    const at = await lay();
    await pair(at);
    await beginOverPlate(at, "beef-broth");
    const sniff = await finished(at);
    await expect.poll(() => at.peripheral.log.at(-1)).toMatch(/write 0004 03|notify|read/);
    await at.lose();
    await at.comeBackAfter(2000);
    await button(at.page, "Done").click();
    await button(at.page, "Disconnect").waitFor();
    expect(await keptSniffs(at.page)).toEqual([sniff]);
    await button(at.page, "Check this plate").click();
    await heading(at.page, "The air is steady").waitFor();
  });

  it("and stays lost: the person can stop the tries, and begin them again", async () => {
    const at = await lay();
    await pair(at);
    await at.lose();
    await button(at.page, "Stop trying").click();
    await at.page.getByText("The app no longer tries by itself.").waitFor();
    const tried = at.peripheral.log.filter((entry) => entry === "connection").length;
    await at.page.waitForTimeout(1500);
    expect(at.peripheral.log.filter((entry) => entry === "connection")).toHaveLength(tried);
    await button(at.page, "Connect again").click();
    await at.comeBackAfter(0);
    await button(at.page, "Disconnect").waitFor();
  });
});

describe("on the air", () => {
  it("frames that come twisted, twice or out of order: whole sweeps are used as made, no other is", async () => {
    let frames = 0;
    const garble: Garble = (address, bytes) => {
      if (address.characteristic !== SWEEP.characteristic) return bytes;
      frames += 1;
      if (frames % 29 !== 0) return bytes; // one sweep in seven loses a frame
      const copy = Uint8Array.from(bytes);
      copy[11] = (copy[11] ?? 0) ^ 0x40;
      return copy;
    };
    let batches = 0;
    const reorder = (batch: Uint8Array[]) => {
      batches += 1;
      const [first, second, ...rest] = batch;
      // Each tenth time only: a batch may be a single sweep, and a sniff of none is another test's matter.
      const isKept = first === undefined || second === undefined || batches % 10 !== 0;
      return isKept ? batch : [second, first, first, ...rest];
    };
    const at = await lay(garble, { reorder });
    await pair(at);
    await beginOverPlate(at, "beef-broth");
    const sniff = await finished(at);
    const kept = madeOf(sniff.headspace, at.sniffer.made());
    expect(kept.length).toBeGreaterThan(5);
    expect(missing(kept).length).toBeLessThanOrEqual(Math.ceil(kept.length / 5));
    madeOf(sniff.cleanAir!, at.sniffer.made());
  });

  it("a sequence number that wraps in mid-sniff loses nothing", async () => {
    // 65536 less some seconds of frames: it wraps in clean air, and again is far off.
    const at = await lay(undefined, { firstSequence: 65_520 });
    await pair(at);
    await beginOverPlate(at, "beef-broth");
    const sniff = await finished(at);
    expect(missing(madeOf(sniff.headspace, at.sniffer.made()))).toEqual([]);
    expect(missing(madeOf(sniff.cleanAir!, at.sniffer.made()))).toEqual([]);
    expect(sniff.flags).toBeUndefined();
  });
});

// Refused right after it was discovered.
describe("a sniffer that is not as usual", MAY_CRASH, () => {
  it("of another profile version is refused with both versions named", async () => {
    // PROFILE.md section 4: the example of a later major version.
    const later = fromHex("0200 00a1b2c3d4e5f607 e8030000 20bf0200 01 00c800fa00 6d7d".replaceAll(" ", ""));
    const at = await lay((address, bytes) =>
      address.characteristic === LAYOUT.characteristic ? later : bytes,
    );
    await button(at.page, "Pair a sniffer").click();
    await at.peripheral.answerChooser("choose");
    await at.page.getByText(/profile version 2\.0; this app knows 1\.0/).waitFor();
    expect(await button(at.page, "Check this plate").getAttribute("aria-disabled")).toBe("true");
  });

  it("without Battery and Device Information works, and what it does not tell is not made up", async () => {
    const at = await lay(undefined, { without: [BATTERY_SERVICE, DEVICE_INFORMATION_SERVICE] });
    await pair(at);
    await at.page.getByText("not told").waitFor();
    await beginOverPlate(at, "beef-broth");
    await finished(at);
  });
});

// The reload and the radio that goes cut a discovery short.
describe("a sniffer met before", MAY_CRASH, () => {
  it("is connected to without the chooser after a reload, and can be forgotten", async () => {
    const at = await lay();
    await pair(at);
    await at.reload();
    await button(at.page, "Connect to Table sniffer").click();
    await button(at.page, "Disconnect").waitFor();
    await at.page.goto(`${inject("appUrl")}#/nose/sniffers`);
    await at.page.getByText("connected now").waitFor();
    await button(at.page, "Forget Table sniffer").click();
    await at.page.getByText(/None yet/).waitFor();
    await at.page.goto(`${inject("appUrl")}#/plate`);
    await button(at.page, "Pair a sniffer").waitFor();
  });

  it("cannot be reached while the phone has no radio, and the app says so", async () => {
    const at = await lay();
    await at.peripheral.setRadio("absent");
    await at.page.reload();
    await at.page.getByText(/Bluetooth is off or not allowed/).waitFor();
  });
});
