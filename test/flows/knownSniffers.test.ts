import { expect, it } from "vitest";
import { knownSniffers } from "../../src/flows/knownSniffers.js";

const note = (id: string, lastSeenAt: string) => ({ id, name: `note ${id}`, lastSeenAt });
const NOTES = [note("a", "2026-11-01T10:00:00Z"), note("b", "2026-11-20T10:00:00Z")];
const DEVICES = [
  { id: "d1", name: "device one" },
  { id: "d2", name: "device two" },
];

it("joins what the browser remembers with what the phone keeps, last used first", () => {
  expect(knownSniffers(NOTES, DEVICES, { d1: "a" })).toEqual([
    { snifferId: "b", deviceId: null, name: "note b", lastSeenAt: "2026-11-20T10:00:00Z" },
    { snifferId: "a", deviceId: "d1", name: "note a", lastSeenAt: "2026-11-01T10:00:00Z" },
    { snifferId: null, deviceId: "d2", name: "device two", lastSeenAt: null },
  ]);
});

it("knows a device by the browser's name once its sniffer was forgotten", () => {
  expect(knownSniffers([], DEVICES.slice(0, 1), { d1: "a" })).toEqual([
    { snifferId: null, deviceId: "d1", name: "device one", lastSeenAt: null },
  ]);
});

it("is empty where nothing was ever met", () => {
  expect(knownSniffers([], [], { d1: "a" })).toEqual([]);
});
