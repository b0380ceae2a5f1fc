import { describe, expect, it } from "vitest";
import { makeGood, sendCommand } from "../../src/app/sendCommand.js";
import { err, ok } from "../../src/kernel/result.js";
import type { Link, LinkError } from "../../src/kernel/link.js";
import { decodeControl, type ControlCommand } from "../../src/profile/control.js";
import { encodeStatus, type SnifferStatus } from "../../src/profile/status.js";

const IDLE: SnifferStatus = {
  state: "ready",
  heaterFault: false,
  run: 3,
  warmUpLeftMs: 0,
  deviceTimeMs: 90_000,
  burnInHours: 60,
};
const MEASURING: SnifferStatus = { ...IDLE, state: "measuring", run: 4 };
const START = { kind: "start", run: 4 } as const;

/** Broke on the way: a browser does not tell whether it arrived. */
const HALF: LinkError = { kind: "unexpected", detail: "GATT operation failed for unknown reason." };
const REFUSED: LinkError = { kind: "refused", detail: "GATT error 0x80" };
const LOST: LinkError = { kind: "lost" };

/** A link whose writes fare as told, one after the other, then well; STATUS says what it is given. */
function bench(fates: (LinkError | null)[], told: SnifferStatus | LinkError = IDLE) {
  const written: ControlCommand[] = [];
  const link: Link = {
    name: "bench",
    write: (_address, bytes) => {
      const command = decodeControl(bytes);
      if (!command.ok) throw new Error("not a command");
      written.push(command.value);
      const fate = fates.shift() ?? null;
      return Promise.resolve(fate === null ? ok(undefined) : err(fate));
    },
    read: () => Promise.resolve("kind" in told ? err(told) : ok(encodeStatus(told))),
    subscribe: () => Promise.resolve(ok(undefined)),
    onLost: () => undefined,
    close: () => undefined,
  };
  return { link, written };
}

describe("a command whose write broke half-way", () => {
  it("is written once more where STATUS says that it was not obeyed", async () => {
    const { link, written } = bench([HALF]);
    expect(await sendCommand(link, START)).toBe("taken");
    expect(written).toEqual([START, START]);
  });

  it("is not written again where STATUS says that it was obeyed: a second start would be another run", async () => {
    const { link, written } = bench([HALF], MEASURING);
    expect(await sendCommand(link, START)).toBe("taken");
    expect(written).toEqual([START]);
  });

  it("is told as refused after two tries, not tried for ever", async () => {
    const { link, written } = bench([HALF, HALF, HALF]);
    expect(await sendCommand(link, START)).toBe("refused");
    expect(written).toHaveLength(2);
  });

  it("is written again where STATUS cannot be read either", async () => {
    const { link, written } = bench([HALF], REFUSED);
    expect(await sendCommand(link, { kind: "stop" })).toBe("taken");
    expect(written).toHaveLength(2);
  });
});

describe("a command that the sniffer answers", () => {
  it("is not repeated where it said no", async () => {
    const { link, written } = bench([REFUSED]);
    expect(await sendCommand(link, START)).toBe("refused");
    expect(written).toHaveLength(1);
  });

  it.each([
    ["the link goes before its answer", bench([LOST]).link],
    ["there is no link", null],
  ])("is lost where %s", async (_how, link) => {
    expect(await sendCommand(link, START)).toBe("lost");
  });
});

describe("a command that a loss cut off, once the sniffer is back", () => {
  it.each([
    ["a stop, while it still measures", { kind: "stop" }, MEASURING, 1],
    ["a stop that had arrived", { kind: "stop" }, IDLE, 0],
    ["a purge that had not", { kind: "purge" }, IDLE, 1],
    ["a purge that had arrived", { kind: "purge" }, { ...IDLE, state: "purging" }, 0],
    ["a start: whoever wants sweeps asks anew", START, IDLE, 0],
    ["a stop of a sniffer that does not tell", { kind: "stop" }, null, 0],
  ] as const)("%s", async (_what, command, status, writes) => {
    const { link, written } = bench([]);
    await makeGood(link, command, status);
    expect(written).toEqual(Array(writes).fill(command));
  });
});
