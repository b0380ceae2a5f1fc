import { commandTook } from "../flows/commandTook.js";
import type { Link } from "../kernel/link.js";
import { encodeControl, type ControlCommand } from "../profile/control.js";
import { decodeStatus, type SnifferStatus } from "../profile/status.js";
import { CONTROL, STATUS } from "../profile/uuids.js";

/** `lost`: the link went before the sniffer's answer came. */
export type CommandOutcome = "taken" | "refused" | "lost";

/** Writes a command; where the answer is missing or odd, STATUS tells whether it was obeyed, else it is written again. */
export async function sendCommand(link: Link | null, what: ControlCommand): Promise<CommandOutcome> {
  for (let triesLeft = 1; ; triesLeft -= 1) {
    const written = await link?.write(CONTROL, encodeControl(what));
    if (written?.ok) return "taken";
    if (written === undefined || written.error.kind === "lost") return "lost";
    const told = await link?.read(STATUS);
    const status = told?.ok ? decodeStatus(told.value) : null;
    if (status?.ok && commandTook(status.value, what)) return "taken";
    if (written.error.kind !== "unexpected" || triesLeft === 0) return "refused";
  }
}

/**
 * Makes good a command that a loss cut off, once the sniffer is back. Not a start: whoever wanted sweeps asks for a run
 * of their own.
 */
export async function makeGood(
  link: Link,
  command: ControlCommand,
  status: SnifferStatus | null,
): Promise<void> {
  if (command.kind === "start" || status === null || commandTook(status, command)) return;
  await sendCommand(link, command);
}
