/** A page with nothing but the radio in it; the test calls it through `radioPage`. */
import type { CharacteristicAddress, Link, LinkError } from "../../src/kernel/link.js";
import type { Result } from "../../src/kernel/result.js";
import { fromHex, toHex } from "../../src/profile/bytes.js";
import { ALL_SERVICES, SNIFFER_SERVICE } from "../../src/profile/uuids.js";
import { chooseSniffer } from "../../src/radio/chooseSniffer.js";
import { connectSniffer } from "../../src/radio/connectSniffer.js";
import { rememberedSniffers } from "../../src/radio/rememberedSniffers.js";
import { watchAvailability } from "../../src/radio/watchAvailability.js";

type Answer = Result<string, { kind: string }>;

export interface RadioPage {
  /** What the last tap on "pair" came to: the sniffer's name, or why not. */
  paired: Promise<Answer>;
  /** Octets heard by each subscription, in hexadecimal. */
  heard: Record<string, string[]>;
  losses: number;
  availability: string[];
  read(address: CharacteristicAddress): Promise<Answer>;
  write(address: CharacteristicAddress, hex: string): Promise<Answer>;
  subscribe(address: CharacteristicAddress): Promise<Answer>;
  reconnect(waitsMs: readonly number[]): Promise<Answer>;
  close(): void;
  rememberedCount(): Promise<number>;
}

let device: BluetoothDevice | undefined;
let link: Link | undefined;

function adopt(result: Result<Link, LinkError>): Answer {
  if (!result.ok) return result;
  link = result.value;
  link.onLost(() => (page.losses += 1));
  return { ok: true, value: link.name };
}

async function pair(): Promise<Answer> {
  const chosen = await chooseSniffer(navigator.bluetooth, {
    advertised: SNIFFER_SERVICE,
    alsoUsed: ALL_SERVICES,
  });
  if (!chosen.ok) return chosen;
  device = chosen.value;
  return adopt(await connectSniffer(device));
}

const notYet: Answer = { ok: false, error: { kind: "notConnected" } };
const inHex = (result: Result<Uint8Array | undefined, LinkError> | undefined): Answer => {
  if (result === undefined) return notYet;
  return result.ok ? { ok: true, value: toHex(result.value ?? new Uint8Array()) } : result;
};
const done = (result: Result<void, LinkError> | undefined): Answer =>
  result?.ok ? { ok: true, value: "" } : (result ?? notYet);

const page: RadioPage = {
  paired: Promise.resolve(notYet),
  heard: {},
  losses: 0,
  availability: [],
  read: async (address) => inHex(await link?.read(address)),
  write: async (address, hex) => done(await link?.write(address, fromHex(hex))),
  subscribe: async (address) => {
    const heard = (page.heard[address.characteristic] ??= []);
    return done(await link?.subscribe(address, (bytes) => heard.push(toHex(bytes))));
  },
  reconnect: async (waitsMs) => {
    if (device === undefined) return notYet;
    for (const waitMs of waitsMs) {
      await new Promise((resolve) => setTimeout(resolve, waitMs));
      const again = await connectSniffer(device);
      if (again.ok) return adopt(again);
    }
    return { ok: false, error: { kind: "lost" } };
  },
  close: () => link?.close(),
  rememberedCount: async () => (await rememberedSniffers(navigator.bluetooth)).length,
};

Object.assign(globalThis, { radioPage: page });
watchAvailability(navigator.bluetooth, (availability) => page.availability.push(availability));
document.querySelector("button")?.addEventListener("click", () => (page.paired = pair()));
