import { describe, expect, it } from "vitest";
import { createLoneCrew } from "../../src/teaching/crew.js";
import { doPlainJob, type PlainJob } from "../../src/teaching/plainJobs.js";
import { teachNose } from "../../src/teaching/teachNose.js";
import { createWorkerCrew, type FitPort, type FromFitWorker } from "../../src/worker/workerCrew.js";
import { serialiseNose } from "../../src/nose/noseFile.js";
import { syntheticSniffs } from "../teaching/syntheticSniffs.js";

const OPTIONS = { seed: 5, id: "n", name: "n", taughtAt: "2026-11-25T18:30:00Z", withoutNets: true };
const SAMPLES = syntheticSniffs({ plates: 24, seed: 1, sweeps: 6 });
const going = () => false;

/** A worker in this thread: what it is told and says goes through the copying that real ones do. */
function fakeWorker(): FitPort & { jobs: number; isHome: boolean; die(): void } {
  let done: Promise<unknown> = Promise.resolve();
  const port = {
    jobs: 0,
    isHome: false,
    onmessage: null as FitPort["onmessage"],
    onerror: null as FitPort["onerror"],
    postMessage(job: PlainJob) {
      port.jobs += 1;
      const copy = structuredClone(job);
      const pauseMs = port.jobs % 3;
      done = done
        .then(() => new Promise((resolve) => setTimeout(resolve, pauseMs)))
        .then(() => {
          if (port.isHome) return;
          const data: FromFitWorker = { ok: true, answer: structuredClone(doPlainJob(copy)) };
          port.onmessage?.({ data } as MessageEvent<FromFitWorker>);
        });
    },
    terminate() {
      port.isHome = true;
    },
    die() {
      port.isHome = true;
      port.onerror?.({ message: "out of memory" } as ErrorEvent);
    },
  };
  return port;
}

function crewOf(size: number) {
  const ports: ReturnType<typeof fakeWorker>[] = [];
  const crew = createWorkerCrew(() => {
    const port = fakeWorker();
    ports.push(port);
    return port;
  }, size);
  return { crew, ports };
}

async function taughtBy(crew: Parameters<typeof teachNose>[1]["crew"]): Promise<string> {
  const taught = await teachNose(SAMPLES, { ...OPTIONS, crew });
  if (!taught.ok) throw new Error(taught.error.kind);
  return serialiseNose(taught.value.nose);
}

describe("a crew of workers", () => {
  it("teaches the same nose as one thread, and shares the work", async () => {
    const { crew, ports } = crewOf(3);
    const unhelped = { ...crew, help: () => Promise.resolve() };
    expect(await taughtBy(unhelped)).toBe(await taughtBy(createLoneCrew()));
    expect(ports.map(({ jobs }) => jobs > 10)).toEqual([true, true, true]);
    crew.dismiss();
    expect(ports.every(({ isHome }) => isHome)).toBe(true);
  });

  it("is helped by a thread that is idle, as long as it is wanted, and the nose is the same", async () => {
    const { crew, ports } = crewOf(1);
    expect(await taughtBy(crew)).toBe(await taughtBy(createLoneCrew()));
    const { crew: unhelped, ports: others } = crewOf(1);
    await taughtBy({ ...unhelped, help: () => Promise.resolve() });
    expect(ports[0]!.jobs).toBeGreaterThan(0);
    expect(ports[0]!.jobs).toBeLessThan(0.8 * others[0]!.jobs);
    const waiting = [aJob(), aJob(), aJob(), aJob()].map((job) => crew.do(job, going));
    const before = ports[0]!.jobs;
    await crew.help(() => false);
    expect(await Promise.all(waiting)).toHaveLength(4);
    expect(ports[0]!.jobs).toBe(before + 2);
  });

  it("does the work alone where a worker cannot start another", async () => {
    const crew = createWorkerCrew(() => {
      throw new DOMException("no nested workers here", "NotSupportedError");
    }, 2);
    expect(await taughtBy(crew)).toBe(await taughtBy(undefined));
  });

  it("loses no job when workers die in the middle", async () => {
    const { crew, ports } = crewOf(2);
    setTimeout(() => ports[0]?.die(), 20);
    setTimeout(() => ports[1]?.die(), 60);
    expect(await taughtBy(crew)).toBe(await taughtBy(undefined));
    expect(ports).toHaveLength(2);
    expect(ports.every(({ isHome }) => isHome)).toBe(true);
  });

  it("begins no further job once the teaching is cancelled", async () => {
    const { crew, ports } = crewOf(1);
    const result = await teachNose(SAMPLES, {
      ...OPTIONS,
      crew,
      isCancelled: () => (ports[0]?.jobs ?? 0) >= 3,
    });
    expect(result).toEqual({ ok: false, error: { kind: "cancelled" } });
    expect(ports[0]?.jobs).toBe(3);
  });

  it("cancels what waits when it is sent home, and works again with new workers", async () => {
    const { crew, ports } = crewOf(1);
    const job = aJob();
    const waiting = Promise.all([crew.do(job, going), crew.do(job, going)]);
    crew.dismiss();
    expect(await waiting).toEqual([null, null]);
    expect(await crew.do(job, going)).not.toBeNull();
    expect(ports).toHaveLength(2);
  });

  it("tells why a job failed, and goes on with the next", async () => {
    const port = fakeWorker();
    const crew = createWorkerCrew(() => port, 1);
    const failing = crew.do(aJob(), going);
    port.onmessage?.({ data: { ok: false, detail: "not positive definite" } } as MessageEvent<FromFitWorker>);
    await expect(failing).rejects.toThrow("not positive definite");
    expect(await crew.do(aJob(), going)).not.toBeNull();
  });
});

function aJob(): PlainJob {
  const rows = 6;
  const truth = Int8Array.from({ length: rows }, (_, row) => row % 2);
  const numbers = Int32Array.from({ length: rows }, (_, row) => row);
  return {
    kind: "trial",
    raw: {
      rows,
      features: 1,
      values: Float64Array.from(truth, (one, row) => one + row / 10),
      rise: new Float64Array(rows),
      reached: new Uint8Array(rows).fill(1),
    },
    labels: { groups: ["fish"], truth, plates: numbers, dishes: numbers, foods: numbers },
    weight: Float64Array.of(1, 1, 1, 1, 0, 0),
    heldOut: [4, 5],
    seed: 1,
    humidityShare: 0,
    penalties: [1],
  };
}
