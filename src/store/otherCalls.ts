import { ok } from "../kernel/result.js";
import type { Engine } from "./engine.js";
import type { Parse } from "../meals/parseWith.js";
import { causeOf, parseCheckJar, parseDraft, parseSniffer } from "./records.js";
import { ALL, SETTINGS_ID, settingsRow } from "./rows.js";
import { putAside, readBucket, readOne } from "./setAside.js";
import { NO_SETTINGS, parseSettings, type Settings } from "./settings.js";
import type { OtherStore } from "./store.js";
import type { Stored } from "./storeError.js";
import type { Page } from "./storeTypes.js";

/** The calls on settings, sniffers, check jar readings and drafts. */
export function otherCalls(engine: Engine): OtherStore {
  return {
    async getSettings() {
      const outcome = await readOne(engine, "settings", SETTINGS_ID, parseSettings);
      if (!outcome.ok && outcome.error.kind === "unknownId") return ok(NO_SETTINGS);
      return outcome;
    },
    changeSettings: (patch, changedAt) =>
      engine.write(["settings", "setAside"], ["settings"], async (tx) => {
        const row = await tx.get("settings", SETTINGS_ID);
        const held = row === undefined ? ok(NO_SETTINGS) : parseSettings(row.value);
        if (row !== undefined && !held.ok)
          await putAside(tx, "settings", [{ row, cause: causeOf(held.error) }]);
        const settings: Settings = { ...(held.ok ? held.value : NO_SETTINGS), ...patch, changedAt };
        await tx.put("settings", [settingsRow(SETTINGS_ID, settings)]);
        return settings;
      }),
    listSniffers: () => wholeBucket(engine, "sniffers", ALL, parseSniffer, false),
    forgetSniffer: (id) => engine.write(["sniffers"], ["sniffers"], (tx) => tx.remove("sniffers", [id])),
    listCheckJar: (snifferId) => wholeBucket(engine, "checkJar", snifferId, parseCheckJar, true),
    listDrafts: () => wholeBucket(engine, "drafts", ALL, parseDraft, false),
  };
}

async function wholeBucket<T>(
  engine: Engine,
  table: "sniffers" | "checkJar" | "drafts",
  bucket: string,
  parse: Parse<T>,
  oldestFirst: boolean,
): Stored<Page<T>> {
  const outcome = await readBucket(engine, table, bucket, parse, oldestFirst);
  if (!outcome.ok) return outcome;
  return ok({ items: outcome.value.value, next: null, setAside: outcome.value.setAside });
}
