import { beforeEach, describe, expect, it, vi } from "vitest";
import type { Link } from "../../src/kernel/link.js";
import { connectSniffer } from "../../src/radio/connectSniffer.js";
import { asDevice, FakeDevice } from "./fakeBluetooth.js";

const LEVEL = { service: "battery", characteristic: "level" };
const DATA = { service: "sniffer", characteristic: "data" };
const CONTROL = { service: "sniffer", characteristic: "control" };
const error = (name: string) => new DOMException(`a ${name}`, name);

let device: FakeDevice;
const connected = async (): Promise<Link> => {
  const link = await connectSniffer(asDevice(device));
  if (!link.ok) throw new Error(`not connected: ${link.error.kind}`);
  return link.value;
};

beforeEach(() => {
  device = new FakeDevice({ battery: { level: [88] }, sniffer: { data: [1, 2], control: [] } });
});

describe("connecting", () => {
  it("gives a link with the device's name", async () => {
    expect((await connected()).name).toBe("Sniffer");
  });

  it("tries once more after a first failure of the radio", async () => {
    device.connectFailures.push(error("NetworkError"));
    await connected();
    expect(device.log).toEqual(["connect", "connect"]);
  });

  it("out of range twice is lost", async () => {
    device.connectFailures.push(error("NetworkError"), error("NetworkError"));
    expect(await connectSniffer(asDevice(device))).toEqual({ ok: false, error: { kind: "lost" } });
  });

  it("does not repeat what will not mend", async () => {
    device.connectFailures.push(error("SecurityError"));
    const link = await connectSniffer(asDevice(device));
    expect(link).toEqual({
      ok: false,
      error: { kind: "unexpected", detail: "SecurityError: a SecurityError" },
    });
    expect(device.log).toEqual(["connect"]);
  });

  it("can be given up while it takes too long", async () => {
    device.connectTakesForever = true;
    const patience = new AbortController();
    const link = connectSniffer(asDevice(device), patience.signal);
    setTimeout(() => patience.abort(), 5);
    expect(await link).toEqual({ ok: false, error: { kind: "lost" } });
    expect(device.log).toEqual(["connect", "disconnect"]);
    expect(await connectSniffer(asDevice(device), patience.signal)).toEqual({
      ok: false,
      error: { kind: "lost" },
    });
  });
});

describe("calls", () => {
  it("bring octets, discovering each characteristic once", async () => {
    const link = await connected();
    expect(await link.read(LEVEL)).toEqual({ ok: true, value: Uint8Array.of(88) });
    expect(await link.read(LEVEL)).toEqual({ ok: true, value: Uint8Array.of(88) });
    expect(device.log.slice(1)).toEqual([
      "service battery",
      "characteristic level",
      "read battery level",
      "read battery level",
    ]);
  });

  it("asked all at once run one after the other, in order", async () => {
    const link = await connected();
    const results = await Promise.all([
      link.read(LEVEL),
      link.write(CONTROL, Uint8Array.of(1, 7)),
      link.subscribe(DATA, () => undefined),
      link.read(DATA),
    ]);
    expect(results.every(({ ok }) => ok)).toBe(true);
    expect(device.log.filter((entry) => /^(read|write|subscribe)/.test(entry))).toEqual([
      "read battery level",
      "write sniffer control 1,7",
      "subscribe sniffer data",
      "read sniffer data",
    ]);
  });

  it("of another page's making get in the way once, and are tried again", async () => {
    const link = await connected();
    await link.read(LEVEL);
    device.failures.push(error("NetworkError"));
    expect((await link.read(LEVEL)).ok).toBe(true);
    device.failures.push(error("NetworkError"), error("NetworkError"));
    const failed = await link.read(LEVEL);
    expect(failed).toMatchObject({ ok: false, error: { kind: "unexpected" } });
  });

  it.each([
    ["service", { service: "none", characteristic: "level" }],
    ["characteristic", { service: "battery", characteristic: "none" }],
  ])("to a %s that is not there say so, with its address", async (_what, address) => {
    const link = await connected();
    expect(await link.read(address)).toEqual({ ok: false, error: { kind: "absent", address } });
    expect((await link.read(LEVEL)).ok).toBe(true);
  });

  it.each(["NotSupportedError", "SecurityError", "NotAllowedError", "InvalidModificationError"])(
    "refused with a %s are not repeated",
    async (name) => {
      const link = await connected();
      await link.write(CONTROL, Uint8Array.of(2));
      device.failures.push(error(name));
      const refused = await link.write(CONTROL, Uint8Array.of(2));
      expect(refused).toEqual({ ok: false, error: { kind: "refused", detail: `${name}: a ${name}` } });
      expect(device.log.filter((entry) => entry.startsWith("write"))).toHaveLength(2);
    },
  );
});

describe("notifications", () => {
  const listening = async () => {
    const link = await connected();
    const heard: number[][] = [];
    await link.subscribe(DATA, (bytes) => heard.push([...bytes]));
    return { link, heard };
  };

  it("come in order, each a copy", async () => {
    const { heard } = await listening();
    device.notify("sniffer data", [3]);
    device.notify("sniffer data", [4, 5]);
    expect(heard).toEqual([[3], [4, 5]]);
  });

  it("are not the answers to our own reads (draft: a read fires the same event)", async () => {
    const { link, heard } = await listening();
    expect(await link.read(DATA)).toEqual({ ok: true, value: Uint8Array.of(1, 2) });
    expect(heard).toEqual([]);
  });

  it("that come while we read are delivered all the same, even if they say the same", async () => {
    const { link, heard } = await listening();
    device.during = (operation) => {
      if (operation.startsWith("read")) {
        device.notify("sniffer data", [9]);
        device.notify("sniffer data", [1, 2]);
      }
    };
    await link.read(DATA);
    expect(heard).toEqual([[9], [1, 2]]);
  });

  it("that come while a read fails are delivered", async () => {
    const { link, heard } = await listening();
    device.failures.push(error("NotSupportedError"));
    device.during = () => device.notify("sniffer data", [9]);
    expect((await link.read(DATA)).ok).toBe(false);
    expect(heard).toEqual([[9]]);
  });

  it("are also reads that somebody else makes on the same characteristic", async () => {
    const { heard } = await listening();
    await device.characteristicOf("sniffer data").readValue();
    expect(heard).toEqual([[1, 2]]);
  });

  it("are taken up again after the sniffer's table changed", async () => {
    const { link, heard } = await listening();
    await link.read(LEVEL);
    device.changeTable();
    expect((await link.read(LEVEL)).ok).toBe(true);
    device.notify("sniffer data", [6]);
    expect(heard).toEqual([[6]]);
  });

  it("reach each of two listeners once", async () => {
    const { link, heard } = await listening();
    const second = vi.fn();
    await link.subscribe(DATA, second);
    device.notify("sniffer data", [7]);
    expect(heard).toEqual([[7]]);
    expect(second).toHaveBeenCalledTimes(1);
  });
});

describe("the end", () => {
  it("by loss is told once, and every call after it is lost", async () => {
    const link = await connected();
    const told = vi.fn();
    link.onLost(told);
    device.lose();
    device.dispatchEvent(new Event("gattserverdisconnected"));
    expect(told).toHaveBeenCalledTimes(1);
    expect(await link.read(LEVEL)).toEqual({ ok: false, error: { kind: "lost" } });
    expect(await link.subscribe(DATA, () => undefined)).toEqual({ ok: false, error: { kind: "lost" } });
  });

  it("in the midst of a call makes it and those queued behind it lost", async () => {
    const link = await connected();
    device.during = () => device.lose();
    const results = await Promise.all([link.read(LEVEL), link.read(DATA)]);
    expect(results).toEqual([
      { ok: false, error: { kind: "lost" } },
      { ok: false, error: { kind: "lost" } },
    ]);
  });

  it("while a call is tried a second time makes it lost", async () => {
    const link = await connected();
    await link.read(LEVEL);
    device.failures.push(error("NetworkError"));
    let reads = 0;
    device.during = () => {
      reads += 1;
      if (reads === 2) device.lose();
    };
    expect(await link.read(LEVEL)).toEqual({ ok: false, error: { kind: "lost" } });
    expect(reads).toBe(2);
  });

  it("is told to whoever asks too late", async () => {
    const link = await connected();
    device.lose();
    const told = vi.fn();
    link.onLost(told);
    expect(told).toHaveBeenCalledTimes(1);
  });

  it("by our own hand is no loss", async () => {
    const link = await connected();
    const told = vi.fn();
    link.onLost(told);
    link.close();
    link.close();
    expect(told).not.toHaveBeenCalled();
    expect(device.log.filter((entry) => entry === "disconnect")).toHaveLength(1);
    expect(await link.read(LEVEL)).toEqual({ ok: false, error: { kind: "lost" } });
  });

  it("leaves the old link lost when a new one stands, and the new one discovers anew", async () => {
    const old = await connected();
    await old.read(LEVEL);
    device.lose();
    const fresh = await connected();
    expect(await old.read(LEVEL)).toEqual({ ok: false, error: { kind: "lost" } });
    expect((await fresh.read(LEVEL)).ok).toBe(true);
    expect(device.log.filter((entry) => entry === "characteristic level")).toHaveLength(2);
  });
});
