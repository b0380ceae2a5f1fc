import { describe, expect, it, vi } from "vitest";
import { ok } from "../../src/kernel/result.js";
import type { FromTeachWorker, TeachJob, ToTeachWorker } from "../../src/worker/protocol.js";
import { handMadeNose, spread } from "../finding/handMadeNose.js";
import { syntheticSniffs } from "../teaching/syntheticSniffs.js";
import { createTeachClient, type TeachPort } from "../../src/worker/teachClient.js";

const job: TeachJob = {
  samples: [],
  seed: 1,
  noseId: "n",
  name: "n",
  taughtAt: "2026-11-25T00:00:00Z",
  wasmPath: "/",
  inUse: null,
  refresh: false,
};

const NOSE = handMadeNose({ present: spread(3, 1, 3), absent: spread(3, -3, -1), fromMs: [5000] });
const TAUGHT = { nose: NOSE, compared: [] };

const told = (data: FromTeachWorker) => ({ data }) as MessageEvent<FromTeachWorker>;

/** A worker that does only what the test says. */
function fakeWorkers() {
  const ports: (TeachPort & { sent: ToTeachWorker[]; ended: boolean })[] = [];
  const start = () => {
    const port = {
      sent: [] as ToTeachWorker[],
      ended: false,
      onmessage: null,
      onerror: null,
      postMessage: (message: ToTeachWorker) => void port.sent.push(message),
      terminate: () => {
        port.ended = true;
      },
    } as TeachPort & { sent: ToTeachWorker[]; ended: boolean };
    ports.push(port);
    return port;
  };
  return { ports, start };
}

describe("the page's side of teaching", () => {
  it("starts no worker before it is needed, and only one for two jobs", async () => {
    const { ports, start } = fakeWorkers();
    const client = createTeachClient(start);
    expect(ports).toHaveLength(0);
    const first = client.teach(job, () => undefined);
    ports[0]?.onmessage?.(told({ kind: "done", request: 1, result: ok(TAUGHT) }));
    expect(await first).toEqual(ok(TAUGHT));
    void client.teach(job, () => undefined);
    expect(ports).toHaveLength(1);
    expect(ports[0]?.sent.map((message) => message.request)).toEqual([1, 2]);
  });

  it("sends many samples a few at a time, then the job, and takes a word to stop in between", async () => {
    const { ports, start } = fakeWorkers();
    const client = createTeachClient(start);
    const samples = syntheticSniffs({ plates: 100, seed: 1 });
    void client.teach({ ...job, samples }, () => undefined);
    await vi.waitFor(() => expect(ports[0]?.sent.at(-1)?.kind).toBe("teach"));
    const ahead = ports[0]?.sent.filter((message) => message.kind === "samples") ?? [];
    expect(ahead.flatMap((message) => message.samples)).toEqual(samples);
    expect(ahead.every((message) => message.samples.length <= 50)).toBe(true);
    client.abandon();
    const stopped = client.teach({ ...job, samples }, () => undefined);
    client.cancel();
    expect(await stopped).toEqual({ ok: false, error: { kind: "cancelled" } });
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(ports[0]?.sent.filter((message) => message.kind === "teach")).toHaveLength(1);
  });

  it("passes progress on, and not that of an earlier request", () => {
    const { ports, start } = fakeWorkers();
    const seen: number[] = [];
    void createTeachClient(start).teach(job, ({ done }) => seen.push(done));
    ports[0]?.onmessage?.(told({ kind: "progress", request: 1, progress: { stage: "teaching", done: 0.5 } }));
    ports[0]?.onmessage?.(told({ kind: "progress", request: 0, progress: { stage: "teaching", done: 0.9 } }));
    expect(seen).toEqual([0.5]);
  });

  it("refuses a second job while one runs", async () => {
    const client = createTeachClient(fakeWorkers().start);
    void client.teach(job, () => undefined);
    expect(await client.teach(job, () => undefined)).toEqual({ ok: false, error: { kind: "busy" } });
  });

  it("tells of a crash and starts a fresh worker for the next job", async () => {
    const { ports, start } = fakeWorkers();
    const client = createTeachClient(start);
    const dying = client.teach(job, () => undefined);
    ports[0]?.onerror?.({ message: "out of memory", preventDefault: () => undefined } as ErrorEvent);
    expect(await dying).toEqual({ ok: false, error: { kind: "workerCrashed", detail: "out of memory" } });
    expect(ports[0]?.ended).toBe(true);
    void client.teach(job, () => undefined);
    expect(ports).toHaveLength(2);
  });

  it("asks for two noses side by side, and not while a nose is being taught", async () => {
    const { ports, start } = fakeWorkers();
    const client = createTeachClient(start);
    const pair = { older: NOSE, newer: NOSE, samples: [] };
    const asked = client.compare(pair);
    expect(await client.teach(job, () => undefined)).toEqual({ ok: false, error: { kind: "busy" } });
    ports[0]?.onmessage?.(told({ kind: "compared", request: 1, compared: [] }));
    expect(await asked).toEqual(ok([]));
    void client.teach(job, () => undefined);
    expect(await client.compare(pair)).toEqual({ ok: false, error: { kind: "busy" } });
  });

  it("leaves the checks out without giving up the nose", async () => {
    const { ports, start } = fakeWorkers();
    const client = createTeachClient(start);
    const taught = client.teach(job, () => undefined);
    client.skipChecks();
    expect(ports[0]?.sent.at(-1)).toEqual({ kind: "skipChecks", request: 1 });
    ports[0]?.onmessage?.(told({ kind: "done", request: 1, result: ok(TAUGHT) }));
    expect(await taught).toEqual(ok(TAUGHT));
  });

  it("sends a cancel for the job that runs, and none where nothing runs", () => {
    const { ports, start } = fakeWorkers();
    const client = createTeachClient(start);
    client.cancel();
    expect(ports).toHaveLength(0);
    void client.teach(job, () => undefined);
    client.cancel();
    expect(ports[0]?.sent.at(-1)).toEqual({ kind: "cancel", request: 1 });
  });
});
