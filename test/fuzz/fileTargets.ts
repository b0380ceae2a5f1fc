/** Files that people bring in: sniff file, nose file, backup. Refused with a reason or taken whole; never half. */
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import type { RandomSource } from "../../src/kernel/random.js";
import { MAX_BACKUP_DEPTH, readBackup, writeBackup } from "../../src/meals/backup.js";
import { BACKUP_TABLES, type BackupContents, type BackupRecord } from "../../src/meals/backupContents.js";
import { canonicalJson } from "../../src/meals/canonicalJson.js";
import { parseNose, serialiseNose } from "../../src/nose/noseFile.js";
import { answerSniff } from "../../src/nose/answer.js";
import type { Nose } from "../../src/nose/nose.js";
import { readSniffFile, writeSniffFile } from "../../src/sniff/sniffFile.js";
import type { Sniff } from "../../src/sniff/sniff.js";
import { CHANNELS, handMadeNose, spread } from "../finding/handMadeNose.js";
import { below, jsonText, mutateText, mutateValue, pick, randomBytes } from "./mutate.js";
import type { FuzzTarget } from "./runTarget.js";
import { assertSame } from "./sameJson.js";

export const SNIFF: Sniff = {
  format: "nidor-sniff/1",
  id: "sniff-1",
  takenAt: "2026-11-25T18:30:00Z",
  sniffer: { id: "sniffer-a", channels: CHANNELS },
  plate: "bowl 3",
  occasion: "market-evening-2",
  dish: "clear broth with lotus filling",
  groups: { meat: "absent", fish: "present", egg: "unknown" },
  cleanAir: {
    atMs: [0, 1000, 2000],
    ohm: [
      [1000, 900],
      [1001, 901],
      [1002, 902],
    ],
  },
  headspace: {
    atMs: [0, 10_000, 20_000, 30_000],
    ohm: [
      [900, 800],
      [700, 600],
      [650, 580],
      [640, 570],
    ],
  },
  air: {
    cleanAir: { temperatureC: 22.1, humidityPct: 41, pressurePa: 101_300 },
    headspace: { temperatureC: 24, humidityPct: 55 },
  },
  cleanAirAgeMs: 4000,
  flags: [],
};

const LINE_ENDS = ["\n", "\r\n"];
const isBlank = (line: string) => line.trim() === "";

/** Every line that holds anything is either a sniff, as it was written, or a fault under its number. */
const sniffFile: FuzzTarget = {
  name: "sniff file",
  run: (random) => {
    const lines = Array.from({ length: 1 + below(random, 4) }, (_, i) => anyLine(random, i));
    const text =
      pick(random, ["", "\ufeff"]) + lines.map(({ text: line }) => line).join(pick(random, LINE_ENDS));
    const { sniffs, faults } = readSniffFile(text);
    // A mutation can put a line end into a line: what counts is the text as it lies in the file.
    const written = text.replace(/^\ufeff/, "").split(/\r?\n/);
    const bad = new Set(faults.map(({ line }) => line));
    assert.equal(bad.size, faults.length, "two faults for one line");
    const good = written.filter((line, i) => !isBlank(line) && !bad.has(i + 1));
    assert.equal(sniffs.length, good.length, "a line vanished");
    assert.ok(
      [...bad].every((line) => !isBlank(written[line - 1] ?? "")),
      "a fault for an empty line",
    );
    for (const { text: line, sound } of lines)
      if (sound && written.includes(line))
        assert.ok(good.includes(line), "a good line was lost with a bad one");
    sniffs.forEach((sniff, i) => {
      assertSame(sniff, JSON.parse(good[i] ?? ""), "the sniff is not what the line says");
      assert.ok(!Number.isNaN(Date.parse(sniff.takenAt)), `no such instant: ${sniff.takenAt}`);
    });
    const again = readSniffFile(writeSniffFile(sniffs));
    assert.deepEqual(again.faults, [], "what was read cannot be written and read again");
    assertSame(again.sniffs, sniffs, "writing and reading changed it");
    return sniffs.length > 0;
  },
};

function anyLine(random: RandomSource, i: number): { text: string; sound: boolean } {
  const sniff = { ...SNIFF, id: `sniff-${i}` };
  const how = random();
  if (how < 0.2) return { text: JSON.stringify(sniff), sound: true };
  if (how < 0.25) return { text: pick(random, ["", " ", "\t"]), sound: false };
  if (how < 0.75) return { text: jsonText(mutateValue(random, sniff)), sound: false };
  return { text: mutateText(random, JSON.stringify(sniff)), sound: false };
}

/** A nose with every kind of model in it, each as small as it can be. */
export function everyModel(): Nose {
  const nose = handMadeNose({ present: spread(6, 1, 3), absent: spread(6, -3, -1), fromMs: [5000, 20_000] });
  return {
    ...nose,
    nets: {
      members: 1,
      hidden: 2,
      inWeights: Float32Array.of(1, 2, 3, 4, 5, 6, 7, 8),
      inBias: Float32Array.of(0, 1),
      outWeights: Float32Array.of(1, -1),
      outBias: Float32Array.of(0.5),
    },
    groups: nose.groups.map((group) => ({
      ...group,
      horizons: group.horizons.map((horizon, i) => ({
        ...horizon,
        calibration:
          i === 0
            ? { kind: "platt" as const, slope: 1.2, intercept: 0.1 }
            : {
                kind: "isotonic" as const,
                logits: Float32Array.of(-1, 1),
                probabilities: Float32Array.of(0.2, 0.8),
              },
      })),
    })),
    horizons: nose.horizons.map((horizon) => ({
      ...horizon,
      mix: Float32Array.of(0.2, 0.2, 0.2, 0.2, 0.2),
      discriminant: horizon.logistic,
      trees: {
        trees: 1,
        roots: Int32Array.of(0),
        feature: Int16Array.of(0, -1, -1),
        threshold: Float32Array.of(0.5, 0, 0),
        right: Int32Array.of(2, 0, 1),
        leaves: Uint8Array.of(10, 240),
      },
    })),
  };
}

const NOSE_TEXT = serialiseNose(everyModel());
const NOSE_VALUE = JSON.parse(NOSE_TEXT) as unknown;

/** Refused, or read so that writing gives the same again and judging a sniff ends with numbers. */
const noseFile: FuzzTarget = {
  name: "nose file",
  run: (random) => {
    const how = random();
    const sound = how < 0.05;
    const text = sound
      ? NOSE_TEXT
      : how < 0.75
        ? jsonText(mutateValue(random, NOSE_VALUE))
        : mutateText(random, NOSE_TEXT);
    const read = parseNose(text);
    if (sound) assert.ok(read.ok, "a sound nose was refused");
    if (!read.ok) return false;
    const written = serialiseNose(read.value);
    const again = parseNose(written);
    assert.ok(again.ok, "what was read cannot be written and read again");
    assert.equal(serialiseNose(again.value), written, "writing and reading changed it");
    const answer = answerSniff(read.value, SNIFF);
    if (answer.kind === "answered")
      for (const { probabilities } of answer.horizons)
        for (const p of probabilities) assert.ok(p === null || (p >= 0 && p <= 1), `a probability of ${p}`);
    return true;
  },
};

const digest = (text: string) => Promise.resolve(createHash("sha256").update(text).digest("hex"));

function anyRecord(random: RandomSource, i: number): BackupRecord {
  const table = pick(random, BACKUP_TABLES);
  const record: BackupRecord = {
    table,
    id: `record-${i}`,
    demo: below(random, 2) === 0,
    changedAt: pick(random, [null, "2026-11-25T18:30:00.000Z"]),
    value: { dish: pick(random, ["clear broth", "", "\u2028", "\n"]), nested: { list: [1, null, "x"] } },
  };
  return table === "photos" ? { ...record, bytes: randomBytes(random, below(random, 40)) } : record;
}

const anyContents = (random: RandomSource): BackupContents => ({
  writtenAt: "2026-11-25T18:30:00.000Z",
  records: Array.from({ length: below(random, 5) }, (_, i) => anyRecord(random, i)),
});

async function soundBackup(contents: BackupContents): Promise<string> {
  const written = await writeBackup(contents, digest);
  assert.ok(written.ok, "a small backup was not written");
  return written.value;
}

/** A file that was changed on its way is refused, whatever was changed. */
const changedBackup: FuzzTarget = {
  name: "backup, changed on its way",
  run: async (random) => {
    const text = await soundBackup(anyContents(random));
    const changed = random() < 0.1 ? text : mutateText(random, text);
    const read = await readBackup(changed, digest);
    // UTF-8 has no lone surrogates: two texts that differ only there are the same file.
    const same = Buffer.from(changed).equals(Buffer.from(text));
    if (!same) assert.ok(!read.ok, "a changed backup was taken");
    if (changed !== text) return false;
    assert.ok(read.ok, "a sound backup was refused");
    assert.equal(await soundBackup(read.value), text, "reading and writing changed it");
    return true;
  },
};

/** A file made to harm, whose check holds: every record is taken as it is written, or none. */
const forgedBackup: FuzzTarget = {
  name: "backup, forged",
  run: async (random) => {
    const lines = (await soundBackup(anyContents(random))).split("\n").slice(0, -2);
    const at = below(random, lines.length);
    const line = lines[at] ?? "";
    lines[at] = random() < 0.6 ? jsonText(mutateValue(random, JSON.parse(line))) : mutateText(random, line);
    const body = `${lines.join("\n")}\n`;
    const text = `${body}${canonicalJson({ sha256: await digest(body) })}\n`;
    const read = await readBackup(text, digest);
    if (!read.ok) {
      if (read.error.kind === "badRecord")
        assert.ok(read.error.line >= 2 && read.error.line < text.split("\n").length, "no such line");
      return false;
    }
    const written = body.split("\n").slice(1, -1);
    assert.equal(read.value.records.length, written.length, "a record vanished");
    read.value.records.forEach(({ value }, i) => {
      const given = (JSON.parse(written[i] ?? "") as { value: unknown }).value;
      assert.equal(canonicalJson(value), canonicalJson(given), "the record is not what the line says");
    });
    const again = await readBackup(await soundBackup(read.value), digest);
    assert.ok(again.ok, `a depth of at most ${MAX_BACKUP_DEPTH} was taken, and not again`);
    return read.value.records.length > 0;
  },
};

export const fileTargets: readonly FuzzTarget[] = [sniffFile, noseFile, changedBackup, forgedBackup];
