import type { ControlCommand } from "../profile/control.js";
import type { SnifferStatus } from "../profile/status.js";

/**
 * Did a command take effect whose answer never came? A browser tells neither whether a broken write arrived nor why one
 * was refused; STATUS does (PROFILE.md 6).
 *
 * @param status - read after the write
 */
export function commandTook(status: SnifferStatus, command: ControlCommand): boolean {
  switch (command.kind) {
    case "start":
      return status.run === command.run && status.state === "measuring";
    case "stop":
      return status.state !== "measuring" && status.state !== "purging";
    case "purge":
      return status.state === "purging";
  }
}
