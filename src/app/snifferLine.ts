/** All that speaks with a sniffer: one piece, loaded after the first screen stands. */
import type { Signal } from "@preact/signals";
import type { CheckEvent } from "../flows/checkState.js";
import { beginRun, endRun } from "../flows/snifferBytes.js";
import type { SnifferState } from "../flows/snifferState.js";
import { tellsFault } from "../flows/tellsFault.js";
import { makeInTurn } from "../radio/inTurn.js";
import type { CommandOutcome } from "./sendCommand.js";
import { createSnifferConnection, type SnifferConnection } from "./snifferConnection.js";

export interface SnifferLine extends Pick<SnifferConnection, "connect" | "drop"> {
  startSweeps(): Promise<CommandOutcome>;
  stopSweeps(): Promise<void>;
  purge(): Promise<CommandOutcome>;
}

export function createSnifferLine(
  state: Signal<SnifferState>,
  tell: (event: CheckEvent) => void,
): SnifferLine {
  const connection = createSnifferConnection(state, tell);
  // A stop, a start and a purge are several writes each: one is done before the next begins.
  const inTurn = makeInTurn();
  return {
    connect: connection.connect,
    drop: connection.drop,
    startSweeps: () => inTurn(() => startSweeps(connection, tell)),
    stopSweeps: () => inTurn(() => stopSweeps(connection)),
    purge: () =>
      inTurn(async () => {
        await stopSweeps(connection);
        return connection.command({ kind: "purge" });
      }),
  };
}

async function startSweeps(
  connection: SnifferConnection,
  tell: (event: CheckEvent) => void,
): Promise<CommandOutcome> {
  // A purge that is still running would refuse the start.
  await connection.command({ kind: "stop" });
  const sniffer = connection.ready();
  if (sniffer === null) return "lost";
  // Told before the check began: no change of it will be notified again.
  if (sniffer.status !== null && tellsFault(sniffer.status)) {
    tell({ kind: "interrupted", cause: "snifferFault" });
    return "refused";
  }
  const begun = beginRun(sniffer);
  connection.change(begun);
  return connection.command({ kind: "start", run: begun.lastRun });
}

async function stopSweeps(connection: SnifferConnection): Promise<void> {
  await connection.command({ kind: "stop" });
  const sniffer = connection.ready();
  if (sniffer !== null) connection.change(endRun(sniffer).sniffer);
}
