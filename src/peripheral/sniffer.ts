/**
 * The sniffer as a program: `npm run sniffer -- --source iio:device0 | virtual | FILE`.
 * Puts the parts together; every decision is made in them.
 */
import { readFileSync } from "node:fs";
import { performance } from "node:perf_hooks";
import { createInterface } from "node:readline";
import { setTimeout as delay } from "node:timers/promises";
import { NIGHT_MARKET } from "../virtual/dishes.js";
import { HELP, parseArguments, type Arguments } from "./arguments.js";
import { connectBus, SYSTEM_BUS, type Bus } from "./bus.js";
import { serveGatt, type GattServer } from "./gattServer.js";
import { openSource, type OpenedSource } from "./openSource.js";
import type { Clock } from "./peripheral.js";
import { mayPass, problemText, waitingText, type Problem } from "./problem.js";
import { openRegistration, type Registration } from "./registration.js";
import type { VirtualPeripheral } from "./virtualPeripheral.js";

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const complain = (problem: Problem): void => void process.stderr.write(`${problemText(problem)}\n`);
const wait = (problem: Problem): void => void process.stderr.write(`${waitingText(problem)}\n`);

/** How often it is looked whether a run goes on without anybody there. */
const PRESENCE_TICK_MS = 1000;

async function main(): Promise<number> {
  const given = parseArguments(process.argv.slice(2));
  if (!given.ok) return ended(given.error, 2);
  if (given.value === null) {
    process.stdout.write(HELP);
    return 0;
  }
  const clock = wallClock();
  const source = await openSource({
    given: given.value,
    clock,
    firmware: programVersion(),
    say,
    environment: process.env,
  });
  if (!source.ok) return ended(source.error);
  const address = process.env["DBUS_SYSTEM_BUS_ADDRESS"] ?? SYSTEM_BUS;
  const bus = await connectBus(address);
  if (!bus.ok) {
    const denied = bus.error.name === "org.freedesktop.DBus.Error.AccessDenied";
    return ended(
      denied
        ? { kind: "notPermitted", what: "to use D-Bus", detail: bus.error.message }
        : { kind: "noBus", address, detail: bus.error.message },
    );
  }
  const problem = await serve(given.value, clock, source.value, bus.value);
  return problem === null ? 0 : ended(problem);
}

/** Serves until it is told to end. @returns why it ended, null where it was told to */
async function serve(
  given: Arguments,
  clock: Clock,
  source: OpenedSource,
  bus: Bus,
): Promise<Problem | null> {
  const { peripheral } = source;
  const report = whenChanged(wait);
  const served = (adapter: string): void => say(`Advertising as "${given.name}" on ${adapter}.`);
  let released: () => void = () => undefined;
  const server: GattServer = serveGatt({
    bus,
    peripheral,
    clock,
    name: given.name,
    onReleased: () => released(),
  });
  const registration = await openRegistration({
    bus,
    clock,
    wanted: given.adapter,
    onServed: served,
    onProblem: report,
    onPresence: (event) =>
      event.kind === "adapterGone" ? server.forgetSubscribers() : server.presence(event),
  });
  if (!registration.ok) return registration.error;
  released = () => registration.value.released();

  const first = await registration.value.attempt();
  if (first.ok) served(first.value);
  else if (given.wait && mayPass(first.error)) report(first.error);
  else return first.error;
  return run(source, server, registration.value, bus);
}

/** Measures until a signal, or until the bus is gone; leaves the heaters off, whatever happens. */
async function run(
  source: OpenedSource,
  server: GattServer,
  registration: Registration,
  bus: Bus,
): Promise<Problem | null> {
  const { peripheral } = source;
  const stopping = new AbortController();
  const outcome: { problem: Problem | null } = { problem: null };
  const stop = (): void => stopping.abort();
  bus.onClosed(() => {
    if (!stopping.signal.aborted) outcome.problem = { kind: "busLost" };
    stop();
  });
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.once(signal, stop);
  process.once("uncaughtException", (cause) => {
    process.stderr.write(`${cause.stack ?? cause.message}\n`);
    void peripheral.stop().finally(() => process.exit(1));
  });
  peripheral.start();
  const input = source.kind === "virtual" ? listenForDishes(source.peripheral) : null;
  const ticking = setInterval(() => server.tick(), PRESENCE_TICK_MS);
  await registration.keep(stopping.signal);
  clearInterval(ticking);
  input?.close();
  await peripheral.stop();
  await registration.withdraw();
  await bus.close();
  return outcome.problem;
}

/** Lines of standard input put plates under the virtual sniffer. */
function listenForDishes(peripheral: VirtualPeripheral): { close(): void } {
  say(`Dishes: ${NIGHT_MARKET.map(({ id }) => id).join(", ")}`);
  const input = createInterface({ input: process.stdin });
  input.on("line", (line) => {
    const wanted = line.trim();
    const dish = NIGHT_MARKET.find(({ id }) => id === wanted);
    if (wanted !== "" && dish === undefined) return say(`There is no dish "${wanted}".`);
    peripheral.serve(dish ?? null);
    say(dish === undefined ? "Clean air." : `Under the sniffer: ${dish.name}.`);
  });
  return input;
}

/** Passes on a problem only when it is not the one of last time. */
function whenChanged(report: (problem: Problem) => void): (problem: Problem) => void {
  let last = "";
  return (problem) => {
    const text = problemText(problem);
    if (text !== last) report(problem);
    last = text;
  };
}

function wallClock(): Clock {
  const startedMs = performance.now();
  return {
    nowMs: () => performance.now() - startedMs,
    wait: async (ms, signal) => {
      await delay(Math.max(0, ms), undefined, { signal }).catch(() => undefined);
    },
  };
}

function programVersion(): string {
  const file = new URL("../../package.json", import.meta.url);
  return String((JSON.parse(readFileSync(file, "utf8")) as { version?: unknown }).version);
}

function ended(problem: Problem, code = 1): number {
  complain(problem);
  return code;
}

// Ends by hand: an open connection or standard input would hold the program.
process.exit(await main());
