// A real D-Bus daemon of its own for a test: the reference implementation, on a private socket.
import { execFileSync, spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

export interface BusDaemon {
  readonly address: string;
  stop(): Promise<void>;
}

const INSTALL =
  "command -v dbus-daemon || { apt-get update -q && DEBIAN_FRONTEND=noninteractive apt-get install -qy --no-install-recommends dbus; }";

/** @param denied - nobody may send to org.bluez, as for a user without the right */
export async function startBus(denied = false): Promise<BusDaemon> {
  ensureInstalled();
  const folder = mkdtempSync(join(tmpdir(), "nidor-bus-"));
  const config = join(folder, "bus.conf");
  writeFileSync(config, configuration(join(folder, "socket"), denied));
  const daemon = spawn(
    "dbus-daemon",
    [`--config-file=${config}`, "--nofork", "--nopidfile", "--print-address=1"],
    {
      stdio: ["ignore", "pipe", "pipe"],
    },
  );
  const address = await firstLine(daemon);
  return {
    address,
    stop: () =>
      new Promise((resolve) => {
        daemon.once("exit", () => {
          rmSync(folder, { recursive: true, force: true });
          resolve();
        });
        daemon.kill();
      }),
  };
}

/** Debian's package where it is missing; two test files may ask at once, so they take turns. */
function ensureInstalled(): void {
  try {
    execFileSync("dbus-daemon", ["--version"], { stdio: "ignore" });
    return;
  } catch {
    if (process.getuid?.() !== 0) {
      throw new Error("These tests need dbus-daemon. Install it: apt-get install dbus");
    }
  }
  execFileSync("flock", [join(tmpdir(), "nidor-apt.lock"), "sh", "-c", INSTALL], { stdio: "inherit" });
}

function configuration(socket: string, denied: boolean): string {
  return `<!DOCTYPE busconfig PUBLIC "-//freedesktop//DTD D-Bus Bus Configuration 1.0//EN"
 "http://www.freedesktop.org/standards/dbus/1.0/busconfig.dtd">
<busconfig>
  <type>custom</type>
  <listen>unix:path=${socket}</listen>
  <auth>EXTERNAL</auth>
  <policy context="default">
    <allow user="*"/>
    <allow own="*"/>
    <allow send_type="method_call"/>
    <allow send_type="signal"/>
    <allow send_requested_reply="true" send_type="method_return"/>
    <allow send_requested_reply="true" send_type="error"/>
    <allow receive_type="method_call"/>
    <allow receive_type="method_return"/>
    <allow receive_type="error"/>
    <allow receive_type="signal"/>
    ${denied ? '<deny send_destination="org.bluez"/>' : ""}
  </policy>
</busconfig>
`;
}

function firstLine(daemon: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = "";
    let said = "";
    daemon.stderr?.on("data", (chunk: Buffer) => (said += chunk.toString("utf8")));
    daemon.once("error", reject);
    daemon.once("exit", (code) => reject(new Error(`dbus-daemon ended with ${code}: ${said}`)));
    daemon.stdout?.on("data", (chunk: Buffer) => {
      text += chunk.toString("utf8");
      const end = text.indexOf("\n");
      if (end >= 0) resolve(text.slice(0, end));
    });
  });
}
