import { ok } from "../kernel/result.js";
import type { Engine, EngineTransaction } from "./engine.js";
import { parseNose, parseNoseHead, type NoseStore } from "./noseStore.js";
import { checkOut, parseNoseEvent } from "./records.js";
import { ACTIVE_NOSE_ID, ALL, noseEventRow, noseRow, settingsRow } from "./rows.js";
import { getOne, readChecked, readOne } from "./setAside.js";

/** The calls on noses. */
export function noseCalls(engine: Engine): NoseStore {
  return {
    addNose: (nose, eventId, at, options = {}) =>
      engine.write(["noses", "noseEvents"], ["noses"], async (tx) => {
        const demo = options.demo === true ? 1 : 0;
        const row = noseRow(nose, { demo });
        if ((await tx.get("noses", nose.id)) !== undefined) return;
        await tx.put("noses", [row]);
        const event = { id: eventId, noseId: nose.id, decision: "taught", at } as const;
        await tx.put("noseEvents", [noseEventRow(event, { demo })]);
      }),
    getNose: (id) => readOne(engine, "noses", id, parseNose),
    async activeNose() {
      const active = await engine.read(["settings"], activeId);
      if (!active.ok) return active;
      if (active.value === null) return ok(null);
      const nose = await readOne(engine, "noses", active.value, parseNose);
      // The demo nose goes with the demo data, even while it is active.
      return !nose.ok && nose.error.kind === "unknownId" ? ok(null) : nose;
    },
    async listNoses() {
      const outcome = await readChecked(engine, "noses", listNoses, ["noseEvents", "settings"]);
      if (!outcome.ok) return outcome;
      return ok({ ...outcome.value.value, setAside: outcome.value.setAside });
    },
    decideNose: (id, decision, eventId, at) =>
      engine.write(["noses", "noseEvents", "settings", "setAside"], ["noses"], async (tx) => {
        await getOne(tx, "noses", id, parseNose);
        const demo = (await tx.get("noses", id))?.demo ?? 0;
        await tx.put("noseEvents", [noseEventRow({ id: eventId, noseId: id, decision, at }, { demo })]);
        if (decision === "rejected") return;
        await tx.put("settings", [settingsRow(ACTIVE_NOSE_ID, { noseId: id, changedAt: at })]);
      }),
  };
}

async function activeId(tx: EngineTransaction): Promise<string | null> {
  const row = await tx.get("settings", ACTIVE_NOSE_ID);
  const noseId = (row?.value as { noseId?: unknown } | undefined)?.noseId;
  return typeof noseId === "string" ? noseId : null;
}

async function listNoses(tx: EngineTransaction) {
  const rows = await tx.range("noses", ALL);
  const { bad } = checkOut(parseNoseHead, rows);
  const noses = rows.flatMap((row) => {
    const head = parseNoseHead(row.value);
    return head.ok ? [{ ...head.value, demo: row.demo === 1 }] : [];
  });
  const events = await tx.range("noseEvents", ALL, { oldestFirst: true });
  const history = checkOut(parseNoseEvent, events).sound;
  const active = await activeId(tx);
  const here = rows.some((row) => row.id === active);
  return { value: { noses, activeId: here ? active : null, history }, bad };
}
