// The examples of PROFILE.md, whose octets were made with Python's struct.pack and binascii.crc_hqx.
import { readFileSync } from "node:fs";

export interface ProfileExample {
  readonly codec: string;
  readonly way?: "decode";
  readonly hex: string;
  readonly value: unknown;
  readonly error?: unknown;
  readonly attError?: number;
  readonly firstSequence: number;
  readonly frames: readonly string[];
}

const profile = readFileSync(new URL("../../src/profile/PROFILE.md", import.meta.url), "utf8");
const all = [...profile.matchAll(/```json example\n(.*?)```/gs)].map(
  (match) => JSON.parse(match[1]!) as ProfileExample,
);

/** The examples of one codec that a sniffer may send or be sent, in the order of the profile. */
export const examplesOf = (codec: string): ProfileExample[] =>
  all.filter((example) => example.codec === codec && example.way !== "decode");

export const octets = (example: string): string => example.replaceAll(" ", "");
