// What a builder types and reads: the command line, the adapters to choose from, the words of a failure.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import {
  ADAPTER,
  ADVERTISING_MANAGER,
  chooseAdapter,
  GATT_MANAGER,
  parseObjects,
  type ManagedObjects,
} from "../../src/peripheral/adapters.js";
import { HELP, parseArguments } from "../../src/peripheral/arguments.js";
import { gattTree } from "../../src/peripheral/gattTree.js";
import { mayPass, problemText, waitingText, type Problem } from "../../src/peripheral/problem.js";
import { keepIdentity, loadIdentity } from "../../src/peripheral/snifferIdentity.js";
import { LAYOUT, SNIFFER_SERVICE, TEMPERATURE } from "../../src/profile/uuids.js";

describe("the command line", () => {
  const source = (...given: string[]) => {
    const parsed = parseArguments(given);
    return parsed.ok ? parsed.value?.source : parsed.error.kind;
  };

  it("knows its three sources", () => {
    expect(source("--source", "iio:device0")).toEqual({ kind: "iio", device: "device0" });
    expect(source("--source", "virtual")).toEqual({ kind: "virtual" });
    expect(source("--source", "samples.jsonl")).toEqual({ kind: "recording", file: "samples.jsonl" });
  });

  it.each([
    [],
    ["--source", ""],
    ["--source", "iio:"],
    ["--source", "virtual", "--colour", "red"],
    ["--source", "virtual", "extra"],
    ["--source", "virtual", "--seed", "1.5"],
    ["--source", "virtual", "--name", "x".repeat(30)],
    ["--source", "virtual", "--name", "ü".repeat(15)],
    ["--source", "virtual", "--channels", "table.json"],
    ["--source", "virtual", "--fault", "hiccup=1"],
    ["--source", "virtual", "--fault", "lost"],
    ["--source", "virtual", "--fault", "lost=2"],
    ["--source", "virtual", "--fault", "stuck=0"],
    ["--source", "virtual", "--fault", "stuck=999"],
    ["--source", "virtual", "--fault", "toString=1"],
    ["--source", "virtual", "--fault", "spread=1"],
    ["--source", "virtual", "--age", "-3"],
    ["--source", "iio:device0", "--fault", "lost=0.1"],
    ["--source", "samples.jsonl", "--age", "3"],
  ])("refuses %j", (...given: string[]) => {
    expect(source(...given)).toBe("usage");
  });

  it("takes faults of the virtual sniffer, as many as are named", () => {
    const given = [
      "lost=0.1",
      "garbled=0.05",
      "stuck=2",
      "poisoned=0.02",
      "steam=8",
      "reboot=90",
      "heater=120",
      "spread=2",
    ];
    const parsed = parseArguments([
      "--source",
      "virtual",
      "--age",
      "60",
      ...given.flatMap((one) => ["--fault", one]),
    ]);
    expect(parsed.ok && parsed.value).toMatchObject({
      ageDays: 60,
      faults: {
        lostFraction: 0.1,
        garbledFraction: 0.05,
        stuckChannel: { channel: 1, ohm: 100_000 },
        sensitivityLossPerDay: 0.02,
        steamFactor: 8,
        rebootAtMs: 90_000,
        heaterFailsAtMs: 120_000,
        unitNumber: 2,
      },
    });
  });

  it("takes a name of 29 octets, which fill a scan response", () => {
    const parsed = parseArguments(["--source", "virtual", "--name", `${"ü".repeat(14)}x`]);
    expect(parsed.ok).toBe(true);
  });

  it("explains every option it takes, and says that it can be wrong", () => {
    for (const option of [
      "source",
      "channels",
      "adapter",
      "name",
      "state",
      "wait",
      "seed",
      "age",
      "fault",
      "sysfs",
      "help",
    ]) {
      expect(HELP).toContain(`--${option}`);
    }
    expect(HELP).toContain("no medical device");
    expect(parseArguments(["--help"])).toEqual({ ok: true, value: null });
  });
});

describe("the adapter", () => {
  const adapter = (powered: boolean, able = true): ManagedObjects[string] => ({
    [ADAPTER]: { Powered: powered },
    ...(able ? { [GATT_MANAGER]: {}, [ADVERTISING_MANAGER]: {} } : {}),
  });
  const objects = (list: Readonly<Record<string, ManagedObjects[string]>>): ManagedObjects => ({
    "/org/bluez": { "org.bluez.AgentManager1": {} },
    ...Object.fromEntries(Object.entries(list).map(([name, value]) => [`/org/bluez/${name}`, value])),
  });

  it("is the first that can and is on, or the one that is wanted", () => {
    const three = objects({
      hci0: adapter(true, false),
      hci1: adapter(false),
      hci2: adapter(true),
      hci3: adapter(true),
    });
    expect(chooseAdapter(three, null)).toEqual({ ok: true, value: "/org/bluez/hci2" });
    expect(chooseAdapter(three, "hci3")).toEqual({ ok: true, value: "/org/bluez/hci3" });
    expect(chooseAdapter(three, "hci1")).toEqual({
      ok: false,
      error: { kind: "adapterOff", adapter: "hci1" },
    });
    expect(chooseAdapter(three, "hci0")).toEqual({
      ok: false,
      error: { kind: "noPeripheralRole", adapter: "hci0" },
    });
    expect(chooseAdapter(three, "hci7")).toEqual({
      ok: false,
      error: { kind: "noAdapter", wanted: "hci7", present: ["hci0", "hci1", "hci2", "hci3"] },
    });
  });

  it("that is off is told to be off, though it offers nothing", () => {
    expect(chooseAdapter(objects({ hci0: adapter(false, false) }), null)).toMatchObject({
      error: { kind: "adapterOff" },
    });
  });

  it("is not looked for in what is no list of objects", () => {
    expect(parseObjects({ "/a": { x: { y: 1 } } })).not.toBeNull();
    for (const odd of [null, 1, "x", { "/a": 1 }, { "/a": { x: null } }])
      expect(parseObjects(odd)).toBeNull();
  });
});

describe("the tree of services", () => {
  it("has no service without a characteristic", () => {
    const tree = gattTree([LAYOUT]);
    expect(tree.map(({ uuid }) => uuid)).toEqual([SNIFFER_SERVICE]);
    expect(gattTree([TEMPERATURE, LAYOUT]).map(({ characteristics }) => characteristics.length)).toEqual([
      1, 1,
    ]);
  });
});

describe("a failure", () => {
  const problems: Problem[] = [
    { kind: "usage", detail: "--source is missing." },
    { kind: "noBus", address: "unix:path=/x", detail: "no such file" },
    { kind: "busLost" },
    { kind: "noBluez", detail: "nobody owns it" },
    { kind: "noAdapter", wanted: null, present: [] },
    { kind: "noAdapter", wanted: "hci1", present: ["hci0"] },
    { kind: "noPeripheralRole", adapter: "hci0" },
    { kind: "adapterOff", adapter: "hci0" },
    { kind: "notPermitted", what: "to use BlueZ", detail: "denied" },
    { kind: "advertisingBusy", adapter: "hci0", detail: "maximum reached" },
    { kind: "bluezRefused", step: "application", detail: "failed" },
    { kind: "noSensor", wanted: "device0", present: [] },
    { kind: "noResistance", device: "device0", attributes: ["in_temp_input"] },
    { kind: "noReading", path: "x", detail: "gone" },
    { kind: "badTable", file: "t.json", field: "channels.0.sensor", cause: "must be whole" },
    { kind: "badRecording", file: "s.jsonl", cause: "it holds no sniff" },
    { kind: "badState", file: "s.json", cause: "it is not JSON" },
    { kind: "unreadable", file: "f", detail: "no such file" },
  ];

  it.each(problems.map((problem) => [problem.kind, problem] as const))(
    "of kind %s says what to do",
    (_kind, problem) => {
      const [wrong, remedy, ...more] = problemText(problem).split("\n");
      expect(wrong).toMatch(/[.:?]$/);
      expect(remedy).toMatch(/^ {2}What to do: \S.{10,}$/);
      expect(more).toEqual([]);
      expect(problemText(problem)).not.toMatch(/undefined|null|\[object/);
    },
  );

  it("that may pass is told, while it waits, by what it waits for", () => {
    const first = problems.filter(mayPass).map((problem) => waitingText(problem).split(". ")[0]);
    expect(first).toEqual([
      "Waiting for BlueZ, Linux's Bluetooth service",
      "Waiting for a Bluetooth adapter",
      "Waiting for the Bluetooth adapter hci1",
      "Waiting for an adapter that can be a peripheral",
      "Waiting for the adapter hci0 to be switched on",
      "Waiting for room to advertise on the adapter hci0",
      "Waiting for BlueZ to take it",
    ]);
    for (const problem of problems.filter(mayPass)) {
      const said = waitingText(problem);
      for (const line of problemText(problem).split("\n")) expect(said).toContain(line);
      expect(said).toMatch(/\n {2}It goes on by itself then; Ctrl\+C ends it\.$/);
    }
  });

  it("of the radio may pass by itself, one of the builder's own does not", () => {
    expect(problems.filter(mayPass).map(({ kind }) => kind)).toEqual([
      "noBluez",
      "noAdapter",
      "noAdapter",
      "noPeripheralRole",
      "adapterOff",
      "advertisingBusy",
      "bluezRefused",
    ]);
  });
});

describe("the sniffer's identity", () => {
  const inFolder = async (act: (file: string) => Promise<void>) => {
    const folder = mkdtempSync(join(tmpdir(), "nidor-state-"));
    await act(join(folder, "deep", "sniffer.json"));
    rmSync(folder, { recursive: true, force: true });
  };

  it("is made once and stays, with the hours that are kept", () =>
    inFolder(async (file) => {
      const made = await loadIdentity(file, () => "00a1b2c3d4e5f607");
      expect(made).toEqual({ ok: true, value: { snifferId: "00a1b2c3d4e5f607", heatedMs: 0 } });
      expect(await loadIdentity(file, () => "ffff000000000000")).toEqual(made);
      await keepIdentity(file, { snifferId: "00a1b2c3d4e5f607", heatedMs: 1234 });
      expect(await loadIdentity(file, () => "")).toMatchObject({ value: { heatedMs: 1234 } });
      expect(readFileSync(file, "utf8")).toMatch(/^\{.*\}\n$/);
    }));

  it.each([
    "",
    "{",
    '{"format":"nidor-sniffer/1","snifferId":"0000000000000000","heatedMs":0}',
    '{"format":"nidor-sniffer/1","snifferId":"00a1b2c3d4e5f607","heatedMs":-1}',
    '{"format":"nidor-sniffer/2","snifferId":"00a1b2c3d4e5f607","heatedMs":0}',
  ])("is never made up where a file holds %j", (text) =>
    inFolder(async (file) => {
      await keepIdentity(file, { snifferId: "00a1b2c3d4e5f607", heatedMs: 0 });
      writeFileSync(file, text);
      expect(await loadIdentity(file, () => "1122334455667788")).toMatchObject({
        ok: false,
        error: { kind: "badState" },
      });
      expect(readFileSync(file, "utf8")).toBe(text);
    }),
  );

  it("is not made where it cannot be kept", async () => {
    expect(await loadIdentity("/dev/null/sniffer.json", () => "1122334455667788")).toMatchObject({
      ok: false,
      error: { kind: "unreadable" },
    });
  });
});
