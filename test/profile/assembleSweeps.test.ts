import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assembleSweeps, beginSweeps, finishSweeps } from "../../src/profile/assembleSweeps.js";
import { REORDER_WINDOW } from "../../src/profile/frameOrder.js";
import { gatherFrame, NOTHING_GATHERED } from "../../src/profile/gatherSweeps.js";
import { decodeSweepFrame, encodeSweep, framesPerSweep, type Sweep } from "../../src/profile/sweepFrame.js";
import { assembleAll, countOf, framesOf, lostCounters, runs, type Run } from "./sweepArbitraries.js";

/** Device time on the air is modulo 2^32, so the first sweep's time is what unwrapping starts from. */
const asReceived = ({ sweeps }: Run): Sweep[] => {
  const turn = Math.floor(sweeps[0]!.atMs / 2 ** 32) * 2 ** 32;
  return sweeps.map((sweep) => ({ ...sweep, atMs: sweep.atMs - turn }));
};

const isSent = (run: Run, sweep: Sweep): boolean => {
  const sent = run.sweeps[sweep.counter];
  return sent !== undefined && sent.run === sweep.run && sent.ohm.every((ohm, i) => ohm === sweep.ohm[i]);
};

describe("whatever the sweeps", () => {
  it("an undisturbed run comes through whole, in order, without a fault", () => {
    fc.assert(
      fc.property(runs, (run) => {
        expect(assembleAll(run, framesOf(run))).toMatchObject({ sweeps: asReceived(run), faults: [] });
      }),
    );
  });

  it("each sweep is delivered with its own last frame, not later", () => {
    fc.assert(
      fc.property(runs, (run) => {
        let state = beginSweeps(run.run, run.channelCount);
        const perSweep = framesPerSweep(run.channelCount);
        framesOf(run).forEach((bytes, i) => {
          const step = assembleSweeps(state, bytes);
          state = step.state;
          expect(step.sweeps).toHaveLength((i + 1) % perSweep === 0 ? 1 : 0);
        });
      }),
    );
  });

  it("lost frames cost just their sweeps, and every one of both is counted", () => {
    const cases = runs.chain((run) => {
      const count = framesOf(run).length;
      return fc.tuple(fc.constant(run), fc.array(fc.boolean(), { minLength: count, maxLength: count }));
    });
    fc.assert(
      fc.property(cases, ([run, kept]) => {
        const perSweep = framesPerSweep(run.channelCount);
        const arrived = framesOf(run).filter((_, i) => kept[i]);
        const { sweeps, faults } = assembleAll(run, arrived);
        const lastArrived = kept.lastIndexOf(true);
        // After the last frame that came nothing can be known but the sweep left open.
        const knowable = Math.ceil((lastArrived + 1) / perSweep);
        const whole = run.sweeps
          .map(({ counter }) => counter)
          .filter((counter) => kept.slice(counter * perSweep, (counter + 1) * perSweep).every(Boolean));
        expect(sweeps.map(({ counter }) => counter)).toEqual(whole);
        expect(sweeps.every((sweep) => isSent(run, sweep))).toBe(true);
        expect(countOf(faults, "framesLost")).toBe(kept.slice(0, lastArrived + 1).filter((k) => !k).length);
        const missing = Array.from({ length: knowable }, (_, i) => i).filter((i) => !whole.includes(i));
        expect(lostCounters(faults)).toEqual(missing);
      }),
    );
  });

  it("frames that come twice, in any small disorder, change nothing but are named", () => {
    const cases = runs.chain((run) => {
      const frames = framesOf(run);
      return fc.tuple(
        fc.constant(run),
        fc.array(fc.nat({ max: frames.length - 1 }), { maxLength: 10 }), // which come twice
        fc.array(fc.nat({ max: 30 }), { minLength: 10, maxLength: 10 }), // how much later
      );
    });
    fc.assert(
      fc.property(cases, ([run, twice, delays]) => {
        const notifications = [...framesOf(run)];
        twice.forEach((which, i) => {
          const original = framesOf(run)[which]!;
          const at = notifications.findLastIndex((bytes) => bytes.every((octet, k) => octet === original[k]));
          notifications.splice(Math.min(at + 1 + delays[i]!, notifications.length), 0, original);
        });
        const { sweeps, faults } = assembleAll(run, notifications);
        expect(sweeps).toEqual(asReceived(run));
        expect(faults.map(({ kind }) => kind)).toEqual(twice.map(() => "duplicateFrame"));
      }),
    );
  });

  it("frames up to four places late are put right and nothing is lost", () => {
    const cases = runs.chain((run) => {
      const count = framesOf(run).length;
      const delays = fc.array(fc.nat({ max: REORDER_WINDOW }), { minLength: count, maxLength: count });
      return fc.tuple(fc.constant(run), delays);
    });
    fc.assert(
      fc.property(cases, ([run, delays]) => {
        // Delivered at (place + delay), ties in order: nobody is overtaken by more than the window.
        const shuffled = framesOf(run)
          .map((bytes, i) => ({ bytes, i, due: i + delays[i]! }))
          .sort((left, right) => left.due - right.due || left.i - right.i);
        const { sweeps, faults } = assembleAll(
          run,
          shuffled.map(({ bytes }) => bytes),
        );
        expect(sweeps).toEqual(asReceived(run));
        const overtaken = shuffled.filter(({ i }, place) => shuffled.slice(0, place).some((o) => o.i > i));
        expect(faults.map(({ kind }) => kind)).toEqual(overtaken.map(() => "outOfOrder"));
      }),
    );
  });

  it("wrong bits, up to three in a frame, are noticed and cost just that sweep", () => {
    // Source: x^16+x^12+x^5+1 has Hamming distance 4 for frames this short (value from memory: Koopman's tables).
    const cases = runs.chain((run) => {
      const frames = framesOf(run);
      return fc
        .nat({ max: frames.length - 1 })
        .chain((which) =>
          fc.tuple(
            fc.constant(run),
            fc.constant(which),
            fc.uniqueArray(fc.nat({ max: frames[which]!.length * 8 - 1 }), { minLength: 1, maxLength: 3 }),
          ),
        );
    });
    fc.assert(
      fc.property(cases, ([run, which, bits]) => {
        const notifications = framesOf(run);
        for (const bit of bits) notifications[which]![bit >> 3]! ^= 1 << (bit & 7);
        const { sweeps, faults } = assembleAll(run, notifications);
        const struck = Math.floor(which / framesPerSweep(run.channelCount));
        expect(sweeps.map(({ counter }) => counter)).toEqual(
          run.sweeps.map(({ counter }) => counter).filter((counter) => counter !== struck),
        );
        expect(sweeps.every((sweep) => isSent(run, sweep))).toBe(true);
        expect(faults).toContainEqual({ kind: "corruptFrame", error: { kind: "checksum" } });
      }),
    );
  });

  it("octets that are no frame at all are named and disturb nothing", () => {
    fc.assert(
      fc.property(runs, fc.uint8Array({ maxLength: 15 }), fc.nat(), (run, noise, at) => {
        const notifications = framesOf(run);
        notifications.splice(at % (notifications.length + 1), 0, noise);
        const { sweeps, faults } = assembleAll(run, notifications);
        expect(sweeps).toEqual(asReceived(run));
        expect(faults).toEqual([{ kind: "corruptFrame", error: { kind: "length", found: noise.length } }]);
      }),
    );
  });

  it("a radio that does all of this at once still invents nothing and hides nothing", () => {
    const cases = runs.chain((run) => {
      const count = framesOf(run).length;
      const fates = fc.array(
        fc.record({
          copies: fc.oneof({ weight: 6, arbitrary: fc.constant(1) }, fc.nat({ max: 2 })),
          delay: fc.nat({ max: 3 }),
          flip: fc.option(fc.nat({ max: 127 }), { freq: 8 }),
        }),
        { minLength: count, maxLength: count },
      );
      return fc.tuple(fc.constant(run), fates);
    });
    fc.assert(
      fc.property(cases, ([run, fates]) => {
        const notifications = framesOf(run)
          .flatMap((bytes, i) => {
            const { copies, delay, flip } = fates[i]!;
            const sent = Uint8Array.from(bytes);
            if (flip !== null) sent[flip >> 3]! ^= 1 << (flip & 7);
            return Array.from({ length: copies }, (_, copy) => ({ sent, due: i + delay + copy, i }));
          })
          .sort((left, right) => left.due - right.due || left.i - right.i)
          .map(({ sent }) => sent);
        const { sweeps, faults } = assembleAll(run, notifications);
        const delivered = sweeps.map(({ counter }) => counter);
        expect(sweeps.every((sweep) => isSent(run, sweep))).toBe(true);
        expect(delivered).toEqual([...new Set(delivered)].sort((left, right) => left - right));
        const perSweep = framesPerSweep(run.channelCount);
        const good = fates.map(({ copies, flip }) => copies > 0 && flip === null);
        const whole = run.sweeps
          .map(({ counter }) => counter)
          .filter((counter) => good.slice(counter * perSweep, (counter + 1) * perSweep).every(Boolean));
        expect(delivered).toEqual(whole);
        const accounted = [...delivered, ...lostCounters(faults)].sort((left, right) => left - right);
        expect(accounted).toEqual(Array.from({ length: accounted.length }, (_, i) => i));
        expect(accounted.length).toBe(Math.ceil((good.lastIndexOf(true) + 1) / perSweep));
      }),
    );
  });
});

const sweepAt = (counter: number, atMs: number, run = 3): Sweep => ({
  run,
  counter,
  atMs,
  ohm: [1000 + counter, 5],
});
const frameAt = (counter: number, atMs: number, sequence: number, run = 3): Uint8Array =>
  encodeSweep(sweepAt(counter, atMs, run), sequence)[0]!;
const twoChannels = { run: 3, channelCount: 2 };

describe("a sniffer that began anew", () => {
  const before = [0, 1, 2].map((i) => frameAt(i, 60_000 + 1000 * i, 500 + i));

  it("is noticed when its clock went back, though its numbers fit", () => {
    const after = [3, 4].map((i) => frameAt(i, 1000 * i, 500 + i));
    const { sweeps, faults } = assembleAll(twoChannels, [...before, ...after]);
    expect(faults[0]).toEqual({ kind: "restarted" });
    expect(sweeps.map(({ atMs }) => atMs)).toEqual([60_000, 61_000, 62_000, 3000, 4000]);
  });

  it("is noticed when it counts from zero again at the same sequence numbers", () => {
    const after = [0, 1].map((i) => frameAt(i, 60_500 + 1000 * i, 500 + i));
    const { sweeps, faults } = assembleAll(twoChannels, [...before, ...after]);
    expect(faults).toEqual([{ kind: "restarted" }]);
    expect(sweeps.map(({ counter }) => counter)).toEqual([0, 1, 2, 0, 1]);
  });

  it("is noticed when sweeps are counted from zero but frames go on", () => {
    const after = [0, 1].map((i) => frameAt(i, 64_000 + 1000 * i, 503 + i));
    expect(assembleAll(twoChannels, [...before, ...after]).faults).toEqual([{ kind: "restarted" }]);
  });

  it("is noticed when the place it counts from anew was lost before", () => {
    const far = frameAt(6, 66_000, 506);
    const { faults } = assembleAll(twoChannels, [before[0]!, far, frameAt(1, 59_000, 501)]);
    expect(faults).toContainEqual({ kind: "restarted" });
    expect(faults).not.toContainEqual(expect.objectContaining({ kind: "lateFrame" }));
    const late = assembleAll(twoChannels, [before[0]!, far, frameAt(1, 61_000, 501)]).faults;
    expect(late).toContainEqual({ kind: "lateFrame", sequence: 501 });
    expect(late).not.toContainEqual({ kind: "restarted" });
  });

  it("keeps what waited for a late frame, and names what stayed open", () => {
    const waiting = frameAt(4, 64_000, 504);
    const after = frameAt(0, 100, 0);
    const { sweeps, faults } = assembleAll(twoChannels, [...before, waiting, after]);
    expect(sweeps.map(({ counter }) => counter)).toEqual([0, 1, 2, 4, 0]);
    expect(faults).toEqual([
      { kind: "framesLost", count: 1 },
      { kind: "sweepsLost", firstCounter: 3, count: 1 },
      { kind: "restarted" },
    ]);
  });
});

describe("frames of another start command", () => {
  it("are not used, before or amid the run, and leave its order alone", () => {
    const stragglers = [frameAt(40, 59_000, 499, 2), frameAt(41, 60_000, 500, 2)];
    const own = [0, 1].map((i) => frameAt(i, 61_000 + 1000 * i, 501 + i));
    const { sweeps, faults } = assembleAll(twoChannels, [stragglers[0]!, own[0]!, stragglers[1]!, own[1]!]);
    expect(sweeps).toEqual([sweepAt(0, 61_000), sweepAt(1, 62_000)]);
    expect(faults).toEqual([
      { kind: "otherRun", run: 2 },
      { kind: "otherRun", run: 2 },
    ]);
  });
});

describe("the edges of the window", () => {
  const numbers = [0, 1, 2, 3, 4, 5, 6];
  const frames = numbers.map((i) => frameAt(i, 1000 * i, 65_533 + i > 65_535 ? i - 3 : 65_533 + i));
  const inOrder = (...order: number[]) =>
    assembleAll(
      twoChannels,
      order.map((i) => frames[i]!),
    );

  it("four places late is in time, at the start and later", () => {
    expect(inOrder(1, 2, 3, 4, 0, 5).faults).toEqual([{ kind: "outOfOrder", sequence: 65_533 }]);
    expect(inOrder(0, 2, 3, 4, 5, 1, 6).sweeps.map(({ counter }) => counter)).toEqual([0, 1, 2, 3, 4, 5, 6]);
  });

  it("five places late is too late: counted lost once, then named, never used", () => {
    const { sweeps, faults } = inOrder(0, 2, 3, 4, 5, 6, 1);
    expect(sweeps.map(({ counter }) => counter)).toEqual([0, 2, 3, 4, 5, 6]);
    expect(faults).toEqual([
      { kind: "framesLost", count: 1 },
      { kind: "sweepsLost", firstCounter: 1, count: 1 },
      { kind: "lateFrame", sequence: 65_534 },
    ]);
  });

  it("a late frame from before the first one that came is late, not a new beginning", () => {
    const { faults, sweeps } = inOrder(6, 1, 2);
    expect(faults.map(({ kind }) => kind).slice(0, 3)).toEqual(["framesLost", "lateFrame", "outOfOrder"]);
    expect(sweeps.map(({ counter }) => counter)).toEqual([2, 6]);
    expect(countOf(faults, "framesLost")).toBe(5);
  });
});

it("counts sweeps and time on across both wraps", () => {
  // Counted by hand: 70 000 sweeps of one frame pass 2^16 once; 70 000 x 62 000 ms pass 2^32 (4 294 967 296) once.
  let state = beginSweeps(3, 2);
  let last: Sweep | undefined;
  for (let i = 0; i < 70_000; i += 1) {
    const step = assembleSweeps(state, frameAt(i, 62_000 * i, i % 65_536));
    state = step.state;
    last = step.sweeps.at(-1);
    if (step.faults.length > 0) expect(step.faults).toEqual([]);
  }
  expect(last).toMatchObject({ counter: 69_999, atMs: 62_000 * 69_999 });
});

it("counts what was missed while the connection was gone", () => {
  const frames = Array.from({ length: 40 }, (_, i) => frameAt(i, 1000 * i, 100 + i));
  const { faults, sweeps } = assembleAll(twoChannels, [...frames.slice(0, 5), ...frames.slice(30)]);
  expect(countOf(faults, "framesLost")).toBe(25);
  expect(lostCounters(faults)).toEqual(Array.from({ length: 25 }, (_, i) => 5 + i));
  expect(sweeps).toHaveLength(15);
});

it("refuses frames of more or fewer channels than the layout", () => {
  const three = encodeSweep({ run: 3, counter: 0, atMs: 0, ohm: [1, 2, 3] }, 0);
  expect(assembleAll({ run: 3, channelCount: 2 }, three).faults).toEqual([
    { kind: "wrongChannels" },
    { kind: "wrongChannels" },
  ]);
  expect(assembleAll({ run: 3, channelCount: 5 }, three).faults).toContainEqual({ kind: "wrongChannels" });
});

it("does not join frames of one counter that name different times", () => {
  const [first] = encodeSweep({ run: 3, counter: 0, atMs: 10, ohm: [1, 2, 3] }, 0);
  const [, second] = encodeSweep({ run: 3, counter: 0, atMs: 11, ohm: [1, 2, 3] }, 0);
  const { sweeps, faults } = assembleAll({ run: 3, channelCount: 3 }, [first!, second!]);
  expect(sweeps).toEqual([]);
  expect(faults).toEqual([{ kind: "sweepsLost", firstCounter: 0, count: 1 }]);
});

it("once broken, a sweep is not whole again because later frames fit", () => {
  const frames = encodeSweep({ run: 3, counter: 0, atMs: 10, ohm: [1, 2, 3, 4, 5] }, 0)
    .map(decodeSweepFrame)
    .flatMap((frame) => (frame.ok ? [frame.value] : []));
  let gathering = NOTHING_GATHERED;
  for (const place of [1, 1, 2]) {
    const step = gatherFrame(gathering, frames[place]!);
    gathering = step.gathering;
    expect(step.sweeps).toEqual([]);
  }
});

it("names the channels that were not measured and goes on", () => {
  const frames = [
    ...encodeSweep({ run: 3, counter: 0, atMs: 0, ohm: [Number.NaN, 2, Number.NaN] }, 7),
    ...encodeSweep({ run: 3, counter: 1, atMs: 9, ohm: [1, 2, 3] }, 9),
  ];
  const { sweeps, faults } = assembleAll({ run: 3, channelCount: 3 }, frames);
  expect(faults).toEqual([{ kind: "notMeasured", counter: 0, channels: [0, 2] }]);
  expect(sweeps).toEqual([{ run: 3, counter: 1, atMs: 9, ohm: [1, 2, 3] }]);
});

it("ending a run twice, or one that never began, names nothing more", () => {
  const [first] = encodeSweep({ run: 3, counter: 0, atMs: 0, ohm: [1, 2, 3] }, 0);
  const ended = finishSweeps(assembleSweeps(beginSweeps(3, 3), first!).state);
  expect(ended.faults).toEqual([{ kind: "sweepsLost", firstCounter: 0, count: 1 }]);
  expect(finishSweeps(ended.state).faults).toEqual([]);
  const [next] = encodeSweep({ run: 3, counter: 1, atMs: 1, ohm: [1, 2, 3] }, 2);
  expect(finishSweeps(assembleSweeps(ended.state, next!).state).faults).toEqual([
    { kind: "framesLost", count: 1 },
    { kind: "sweepsLost", firstCounter: 1, count: 1 },
  ]);
  expect(finishSweeps(beginSweeps(3, 3)).faults).toEqual([]);
});

it("holds our own code to its ranges", () => {
  expect(() => beginSweeps(0, 1)).toThrow(RangeError);
  expect(() => beginSweeps(256, 1)).toThrow(RangeError);
  expect(() => beginSweeps(1, 0)).toThrow(RangeError);
  expect(() => beginSweeps(1, 65)).toThrow(RangeError);
});
