import { createHash } from "node:crypto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MAX_BACKUP_DEPTH, readBackup, writeBackup } from "../../src/meals/backup.js";
import { BACKUP_TABLES, type BackupContents, type BackupRecord } from "../../src/meals/backupContents.js";
import { anyContents } from "./arbitraries.js";

const digest = async (text: string) => createHash("sha256").update(text, "utf8").digest("hex");

async function written(contents: BackupContents): Promise<string> {
  const outcome = await writeBackup(contents, digest);
  if (!outcome.ok) throw new Error(outcome.error.kind);
  return outcome.value;
}

async function read(text: string): Promise<BackupContents> {
  const outcome = await readBackup(text, digest);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.error));
  return outcome.value;
}

/** A file with these lines, sealed as if it were whole. */
async function sealed(lines: readonly string[]): Promise<string> {
  const body = `${lines.join("\n")}\n`;
  return `${body}{"sha256":"${await digest(body)}"}\n`;
}

const meal: BackupRecord = {
  table: "meals",
  id: "m1",
  demo: false,
  changedAt: "2026-11-25T18:30:00.000Z",
  value: { dish: "plum soup" },
};
const photo: BackupRecord = {
  table: "photos",
  id: "p1",
  demo: true,
  changedAt: null,
  value: { mime: "image/jpeg" },
  bytes: Uint8Array.of(0, 255, 16),
};
const contents: BackupContents = { writtenAt: "2026-11-26T08:00:00.000Z", records: [photo, meal] };

describe("the backup file", () => {
  it("is these lines, in the order of tables and ids", async () => {
    const lines = (await written(contents)).split("\n");
    expect(lines.slice(0, 3)).toEqual([
      '{"format":"nidor-backup/1","records":2,"writtenAt":"2026-11-26T08:00:00.000Z"}',
      '{"changedAt":"2026-11-25T18:30:00.000Z","demo":false,"id":"m1","table":"meals","value":{"dish":"plum soup"}}',
      '{"base64":"AP8Q","changedAt":null,"demo":true,"id":"p1","table":"photos","value":{"mime":"image/jpeg"}}',
    ]);
    // Anyone can check it: all lines but the last, through any SHA-256 program.
    const body = `${lines.slice(0, 3).join("\n")}\n`;
    expect(lines.slice(3)).toEqual([`{"sha256":"${createHash("sha256").update(body).digest("hex")}"}`, ""]);
  });

  it("comes back as it was, and makes the same bytes again", async () => {
    await fc.assert(
      fc.asyncProperty(anyContents, async (any) => {
        const text = await written(any);
        const back = await read(text);
        expect(back.writtenAt).toBe(any.writtenAt);
        const sorted = [...any.records].sort(byTableAndId);
        expect(back.records).toEqual(sorted);
        expect(await written(back)).toBe(text);
        // What goes to the disk as UTF-8 comes back as the same text: no lone surrogate is in it.
        expect(Buffer.from(text, "utf8").toString("utf8")).toBe(text);
      }),
    );
  });

  it("does not depend on the order in which records are given", async () => {
    expect(await written({ ...contents, records: [meal, photo] })).toBe(await written(contents));
  });

  it("holds nothing at all, if there is nothing", async () => {
    expect((await read(await written({ ...contents, records: [] }))).records).toEqual([]);
  });
});

const byTableAndId = (left: BackupRecord, right: BackupRecord) =>
  BACKUP_TABLES.indexOf(left.table) - BACKUP_TABLES.indexOf(right.table) || (left.id < right.id ? -1 : 1);

describe("a file that cannot be brought in", () => {
  const refusal = async (text: string) => {
    const outcome = await readBackup(text, digest);
    return outcome.ok ? "read" : outcome.error;
  };

  it("is damaged wherever one sign of it is lost or changed", async () => {
    const text = await written(contents);
    for (let at = 0; at < text.length; at += 1) {
      const lost = await refusal(text.slice(0, at) + text.slice(at + 1));
      expect(lost).not.toBe("read");
      const changed = text.slice(0, at) + (text[at] === "x" ? "y" : "x") + text.slice(at + 1);
      expect(await refusal(changed)).not.toBe("read");
    }
  });

  it("is damaged if it is cut short anywhere", async () => {
    const text = await written(contents);
    for (let length = 0; length < text.length; length += 1)
      expect(await refusal(text.slice(0, length))).not.toBe("read");
    expect(await refusal(text.slice(0, -40))).toEqual({ kind: "damaged" });
  });

  it("is damaged if a whole line is missing, even under a fresh seal", async () => {
    const [head, first] = (await written(contents)).split("\n");
    expect(await refusal(await sealed([head!, first!]))).toEqual({ kind: "damaged" });
  });

  it.each([
    "",
    "\n",
    "hello",
    "PK\u0003\u0004",
    '{"format":"nidor-sniff/1"}\n',
    "null\n",
    "[]\n",
    '"text"\n',
  ])("is no backup: %j", async (text) => {
    expect(await refusal(text)).toEqual({ kind: "notABackup" });
  });

  it("is of a newer format", async () => {
    const text = await sealed(['{"format":"nidor-backup/2","compressed":true}']);
    expect(await refusal(text)).toEqual({ kind: "newerFormat", format: "nidor-backup/2" });
  });

  const line = (more: object) => JSON.stringify({ ...meal, ...more });
  const nested = (depth: number) => `{"deep":${"[".repeat(depth)}${"]".repeat(depth)}}`;
  it.each([
    ["a table that nobody knows", line({ table: "friends" }), "is of an unknown kind"],
    ["no id", line({ id: "" }), "has no id"],
    ["a list for a value", line({ value: [] }), "holds no object"],
    ["bytes at a meal", line({ base64: "AA==" }), "has bytes where it should not, or none"],
    ["a photo without bytes", line({ table: "photos" }), "has bytes where it should not, or none"],
    ["bytes that are none", line({ table: "photos", base64: "A" }), "has bytes that cannot be read"],
    ["no JSON", "{", /./],
    ["brackets without end", line({}).replace('{"dish":"plum soup"}', nested(MAX_BACKUP_DEPTH)), /./],
  ])("has a record with %s, and says which line", async (_what, second, cause) => {
    const text = await sealed([
      '{"format":"nidor-backup/1","records":1,"writtenAt":"2026-11-26T08:00:00Z"}',
      second,
    ]);
    const expected = {
      kind: "badRecord",
      line: 2,
      cause: cause instanceof RegExp ? expect.stringMatching(cause) : cause,
    };
    expect(await refusal(text)).toEqual(expected);
  });

  it("holds a record twice", async () => {
    const head = '{"format":"nidor-backup/1","records":2,"writtenAt":"2026-11-26T08:00:00Z"}';
    const text = await sealed([head, line({}), line({ value: {} })]);
    expect(await refusal(text)).toEqual({ kind: "badRecord", line: 3, cause: "is in the file twice" });
  });

  it("gives brackets just within the limit their way", async () => {
    const head = '{"format":"nidor-backup/1","records":1,"writtenAt":"2026-11-26T08:00:00Z"}';
    const deep = line({}).replace('{"dish":"plum soup"}', nested(MAX_BACKUP_DEPTH - 2));
    expect((await read(await sealed([head, deep]))).records).toHaveLength(1);
  });
});
