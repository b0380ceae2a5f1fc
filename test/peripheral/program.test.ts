// The program itself, as a builder starts it: on a real D-Bus daemon, with a tree of files for the kernel's.
import { spawn, type ChildProcess } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { encodeControl } from "../../src/profile/control.js";
import { decodeLayout } from "../../src/profile/layout.js";
import { decodeSweepFrame } from "../../src/profile/sweepFrame.js";
import { CONTROL, LAYOUT, SWEEP } from "../../src/profile/uuids.js";
import { writeSniffFile } from "../../src/sniff/sniffFile.js";
import { startBus, type BusDaemon } from "./busDaemon.js";
import { twoSensors } from "./channelTables.js";
import { startStandInBluez, type StandInBluez } from "./standInBluez.js";

const PROGRAM = new URL("../../src/peripheral/sniffer.ts", import.meta.url).pathname;

let daemon: BusDaemon;
let folder: string;
let programs: ChildProcess[] = [];

beforeAll(async () => {
  daemon = await startBus();
}, 120_000);
afterAll(() => daemon.stop());
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "nidor-program-"));
  programs = [];
});
afterEach(() => {
  programs.forEach((program) => program.kill("SIGKILL"));
  rmSync(folder, { recursive: true, force: true });
});

interface Running {
  readonly said: () => string;
  readonly ended: Promise<number | null>;
  readonly program: ChildProcess;
}

function start(given: readonly string[], address = daemon.address): Running {
  const program = spawn(process.execPath, ["--import", "tsx", PROGRAM, ...given], {
    env: { ...process.env, DBUS_SYSTEM_BUS_ADDRESS: address, XDG_STATE_HOME: folder, STATE_DIRECTORY: "" },
    stdio: ["pipe", "pipe", "pipe"],
  });
  programs.push(program);
  let said = "";
  program.stdout.on("data", (chunk: Buffer) => (said += chunk.toString("utf8")));
  program.stderr.on("data", (chunk: Buffer) => (said += chunk.toString("utf8")));
  return {
    program,
    said: () => said,
    ended: new Promise((resolve) => program.once("close", (code) => resolve(code))),
  };
}

async function endOf(
  given: readonly string[],
  address?: string,
): Promise<{ code: number | null; said: string }> {
  const running = start(given, address);
  return { code: await running.ended, said: running.said() };
}

function file(name: string, text: string): string {
  const path = join(folder, name);
  mkdirSync(join(path, ".."), { recursive: true });
  writeFileSync(path, text);
  return path;
}

/** A heated sensor as the kernel would show it. */
function layKernelTree(): string {
  const files = {
    in_resistance0_raw: "512",
    in_resistance1_raw: "48",
    in_resistance_scale: "100",
    in_temp_input: "23450",
    in_humidityrelative_input: "56780",
    in_pressure_input: "101.325",
    out_voltage0_raw: "9",
    out_voltage1_raw: "9",
  };
  for (const [name, text] of Object.entries(files))
    file(`sys/bus/iio/devices/iio:device0/${name}`, `${text}\n`);
  return join(folder, "sys");
}
const heater = () =>
  readFileSync(join(folder, "sys/bus/iio/devices/iio:device0/out_voltage0_raw"), "utf8").trim();

const withBluez = async (act: (bluez: StandInBluez) => Promise<void>): Promise<void> => {
  const bluez = await startStandInBluez(daemon.address);
  bluez.addAdapter("hci0");
  try {
    await act(bluez);
  } finally {
    await bluez.stop();
  }
};
const served = (bluez: StandInBluez, running: Running) =>
  bluez.until(
    () => running.said().includes("Advertising"),
    `the sniffer to be served, but it said: ${running.said()}`,
  );

describe("the program", () => {
  it("serves a sensor by its channel table, and leaves its heaters off when it is told to end", () =>
    withBluez(async (bluez) => {
      const channels = file("table.json", JSON.stringify({ ...twoSensors, sweepPeriodMs: 900, warmUpMs: 0 }));
      const running = start(["--source", "iio:device0", "--sysfs", layKernelTree(), "--channels", channels]);
      await served(bluez, running);
      const read = await bluez.read(LAYOUT.characteristic);
      const layout = "bytes" in read ? decodeLayout(read.bytes) : undefined;
      expect(layout).toMatchObject({
        ok: true,
        value: { sweepPeriodMs: 900, channels: [{ heaterC: 200 }, {}, {}] },
      });
      const kept = JSON.parse(readFileSync(join(folder, "nidor/sniffer.json"), "utf8")) as {
        snifferId: string;
      };
      expect(layout?.ok === true && layout.value.snifferId).toBe(kept.snifferId);

      await bluez.subscribe(SWEEP.characteristic);
      expect(
        await bluez.write(CONTROL.characteristic, encodeControl({ kind: "start", run: 5 })),
      ).toHaveProperty("bytes");
      await bluez.until(() => bluez.announced(SWEEP.characteristic).length >= 2, "a sweep");
      const ohm = bluez
        .announced(SWEEP.characteristic)
        .slice(0, 2)
        .flatMap((bytes) => {
          const frame = decodeSweepFrame(bytes);
          return frame.ok ? frame.value.ohm : [];
        });
      expect(ohm).toEqual([51_200, 51_200, 4800]); // 512 and 48 times the scale of 100
      expect(heater()).not.toBe("0");
      running.program.kill("SIGTERM");
      expect(await running.ended).toBe(0);
      expect(heater()).toBe("0");
      expect(bluez.applications.size).toBe(0);
      expect(bluez.advertisements.get("hci0")).toEqual([]);
      const after = JSON.parse(readFileSync(join(folder, "nidor/sniffer.json"), "utf8")) as {
        heatedMs: number;
      };
      expect(after.heatedMs).toBeGreaterThan(0);
    }));

  it("plays a sniff file, and names the lines it cannot use", () =>
    withBluez(async (bluez) => {
      const line = writeSniffFile([
        {
          format: "nidor-sniff/1",
          id: "bowl-7",
          takenAt: "2026-08-07T18:00:00Z",
          sniffer: { id: "00a1b2c3d4e5f607", channels: [{ sensor: 0, heaterC: null, dwellMs: null }] },
          plate: "p",
          occasion: "o",
          dish: "dumplings",
          groups: {},
          headspace: { atMs: [0, 100], ohm: [[123], [456]] },
        },
      ]);
      const running = start(["--source", file("sniffs.jsonl", `${line}{}\n`)]);
      await served(bluez, running);
      expect(running.said()).toContain("line 2");
      await bluez.subscribe(SWEEP.characteristic);
      await bluez.write(CONTROL.characteristic, encodeControl({ kind: "start", run: 1 }));
      await bluez.until(() => bluez.announced(SWEEP.characteristic).length === 2, "both sweeps");
      expect(running.said()).toContain("bowl-7");
      running.program.kill("SIGINT");
      expect(await running.ended).toBe(0);
    }));

  it("serves the virtual sniffer, takes plates by line, and lives through the adapter's removal", () =>
    withBluez(async (bluez) => {
      const running = start(["--source", "virtual", "--name", "Lantern stall"]);
      await served(bluez, running);
      expect(bluez.advertisements.get("hci0")?.[0]?.["LocalName"]).toBe("Lantern stall");
      running.program.stdin?.write("no such dish\n");
      await bluez.until(() => running.said().includes('no dish "no such dish"'), "an answer to the line");
      bluez.removeAdapter("hci0");
      await bluez.until(
        () => running.said().includes("There is no Bluetooth adapter"),
        "the loss to be told",
      );
      bluez.addAdapter("hci0");
      await bluez.until(() => bluez.advertisements.get("hci0")?.length === 1, "the sniffer to be back");
      running.program.kill("SIGTERM");
      expect(await running.ended).toBe(0);
    }));

  it("waits for BlueZ if it is asked to", async () => {
    const running = start(["--source", "virtual", "--wait"]);
    await new Promise<void>((resolve) => running.program.stderr?.once("data", () => resolve()));
    // What it waits for, why, what to do and how it goes on, each in a line of its own.
    expect(running.said()).toMatch(
      /^Waiting for BlueZ, Linux's Bluetooth service\. BlueZ does not run \(.+\)\.$/m,
    );
    expect(running.said()).toMatch(/^ {2}What to do: install it .+ and start its service, bluetooth\.$/m);
    expect(running.said()).toMatch(/^ {2}It goes on by itself then; Ctrl\+C ends it\.$/m);
    await withBluez(async (bluez) => {
      await served(bluez, running);
      running.program.kill("SIGTERM");
      expect(await running.ended).toBe(0);
    });
  });
});

describe("the program ends with a reason and a remedy", () => {
  it("whatever is missing: a source, a file, a sensor, BlueZ, D-Bus, a right table", async () => {
    const table = file("table.json", '{"format":"nidor-channels/1","channels":[{"sensor":0}]}');
    const sensor = ["--source", "iio:device0", "--sysfs"];
    const [source, recording, device, bluez, bus, channels] = await Promise.all([
      endOf([]),
      endOf(["--source", "/nowhere/x.jsonl"]),
      endOf([...sensor, "/nowhere"]),
      endOf(["--source", "virtual"]),
      endOf(["--source", "virtual"], `unix:path=${join(folder, "nothing")}`),
      endOf([...sensor, layKernelTree(), "--channels", table]),
    ]);
    expect(source).toEqual({ code: 2, said: expect.stringContaining("--source is missing") as string });
    expect(recording).toEqual({ code: 1, said: expect.stringContaining("cannot be used") as string });
    expect(device).toEqual({ code: 1, said: expect.stringContaining('no sensor "device0"') as string });
    expect(bluez).toEqual({ code: 1, said: expect.stringContaining("BlueZ does not run") as string });
    expect(bus).toEqual({ code: 1, said: expect.stringContaining("There is no D-Bus") as string });
    const place = "channels.0 needs either resistance or divider";
    expect(channels).toEqual({ code: 1, said: expect.stringContaining(place) as string });
    for (const { said } of [source, recording, device, bluez, bus, channels]) {
      expect(said).toContain("What to do:");
    }
  });

  it("no right to use BlueZ, and the heaters stay off", async () => {
    const strict = await startBus(true);
    const bluez = await startStandInBluez(strict.address);
    const channels = file("table.json", JSON.stringify(twoSensors));
    const given = ["--source", "iio:device0", "--sysfs", layKernelTree(), "--channels", channels];
    const end = await endOf(given, strict.address);
    expect(end.said).toContain("Not permitted");
    expect(end.code).toBe(1);
    expect(heater()).toBe("0");
    await bluez.stop();
    await strict.stop();
  });

  it("the end of D-Bus, with the heaters off", async () => {
    const frail = await startBus();
    const bluez = await startStandInBluez(frail.address);
    bluez.addAdapter("hci0");
    const channels = file("table.json", JSON.stringify(twoSensors));
    const running = start(
      ["--source", "iio:device0", "--sysfs", layKernelTree(), "--channels", channels],
      frail.address,
    );
    await served(bluez, running);
    await bluez.until(() => heater() !== "0", "the heater to be on");
    await frail.stop();
    expect(await running.ended).toBe(1);
    expect(running.said()).toContain("D-Bus ended the connection");
    expect(heater()).toBe("0");
  });
});
