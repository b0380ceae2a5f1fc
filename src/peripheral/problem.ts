/** Why the sniffer cannot be served, each with what to do. Every word a builder reads in a failure stands here. */

export type Problem =
  | { readonly kind: "usage"; readonly detail: string }
  | { readonly kind: "noBus"; readonly address: string; readonly detail: string }
  | { readonly kind: "busLost" }
  | { readonly kind: "noBluez"; readonly detail: string }
  | { readonly kind: "noAdapter"; readonly wanted: string | null; readonly present: readonly string[] }
  | { readonly kind: "noPeripheralRole"; readonly adapter: string }
  | { readonly kind: "adapterOff"; readonly adapter: string }
  | { readonly kind: "notPermitted"; readonly what: string; readonly detail: string }
  | { readonly kind: "advertisingBusy"; readonly adapter: string; readonly detail: string }
  | {
      readonly kind: "bluezRefused";
      readonly step: "adapters" | "application" | "advertisement";
      readonly detail: string;
    }
  | { readonly kind: "noSensor"; readonly wanted: string; readonly present: readonly string[] }
  | { readonly kind: "noResistance"; readonly device: string; readonly attributes: readonly string[] }
  | { readonly kind: "noReading"; readonly path: string; readonly detail: string }
  | { readonly kind: "badTable"; readonly file: string; readonly field: string; readonly cause: string }
  | { readonly kind: "badRecording"; readonly file: string; readonly cause: string }
  | { readonly kind: "badState"; readonly file: string; readonly cause: string }
  | { readonly kind: "unreadable"; readonly file: string; readonly detail: string };

/** Can it go away by itself, or by somebody plugging in, switching on or starting something? */
export function mayPass({ kind }: Problem): boolean {
  return [
    "noBluez",
    "noAdapter",
    "noPeripheralRole",
    "adapterOff",
    "advertisingBusy",
    "bluezRefused",
  ].includes(kind);
}

/** What is wrong and what to do, as two sentences or more. */
export function problemText(problem: Problem): string {
  const { wrong, remedy } = words(problem);
  return `${wrong}\n  What to do: ${remedy}`;
}

/** The same while it waits: what for, what is wrong, what to do, and how it goes on. For problems that `mayPass`. */
export function waitingText(problem: Problem): string {
  const { wrong, remedy } = words(problem);
  const what = waitsFor(problem);
  return `Waiting for ${what}. ${wrong}\n  What to do: ${remedy}\n  It goes on by itself then; Ctrl+C ends it.`;
}

function waitsFor(problem: Problem): string {
  switch (problem.kind) {
    case "noBluez":
      return "BlueZ, Linux's Bluetooth service";
    case "noAdapter":
      return problem.wanted === null ? "a Bluetooth adapter" : `the Bluetooth adapter ${problem.wanted}`;
    case "noPeripheralRole":
      return "an adapter that can be a peripheral";
    case "adapterOff":
      return `the adapter ${problem.adapter} to be switched on`;
    case "advertisingBusy":
      return `room to advertise on the adapter ${problem.adapter}`;
    default:
      return "BlueZ to take it";
  }
}

interface Words {
  readonly wrong: string;
  readonly remedy: string;
}

function words(problem: Problem): Words {
  switch (problem.kind) {
    case "usage":
      return { wrong: problem.detail, remedy: "run it with --help to see the options." };
    case "noSensor":
    case "noResistance":
    case "noReading":
      return sensorWords(problem);
    case "badTable":
    case "badRecording":
    case "badState":
    case "unreadable":
      return fileWords(problem);
    case "notPermitted":
      return {
        wrong: `Not permitted: ${problem.what} (${problem.detail}).`,
        remedy: "run as root, or give this user the right (BUILD.md, section Rights).",
      };
    default:
      return radioWords(problem);
  }
}

type Of<K extends Problem["kind"]> = Extract<Problem, { kind: K }>;

function sensorWords(problem: Of<"noSensor" | "noResistance" | "noReading">): Words {
  switch (problem.kind) {
    case "noSensor":
      return {
        wrong: `There is no sensor "${problem.wanted}". ${listed("The kernel shows", problem.present, "no Industrial I/O device")}.`,
        remedy:
          "check the wiring, and that the kernel's driver is loaded and told of the sensor; then name one of those shown.",
      };
    case "noResistance":
      return {
        wrong: `${problem.device} has no in_resistance attribute. ${listed("It has", problem.attributes, "no reading")}.`,
        remedy:
          "write a channel table that says which attributes are the gas sensor, and give it with --channels.",
      };
    case "noReading":
      return {
        wrong: `${problem.path} cannot be read (${problem.detail}).`,
        remedy: "check the wiring and the supply, stop other programs that use the sensor, and start again.",
      };
  }
}

function fileWords(problem: Of<"badTable" | "badRecording" | "badState" | "unreadable">): Words {
  switch (problem.kind) {
    case "badTable": {
      const place = problem.field === "" ? "It" : problem.field;
      return {
        wrong: `The channel table ${problem.file} is not right: ${place} ${problem.cause}.`,
        remedy: "correct the file; BUILD.md shows one.",
      };
    }
    case "badRecording":
      return {
        wrong: `${problem.file} cannot be played: ${problem.cause}.`,
        remedy: "give a sniff file, one sniff a line, taken with one sniffer.",
      };
    case "badState":
      return {
        wrong: `${problem.file} does not hold this sniffer's identity: ${problem.cause}.`,
        remedy:
          "put a copy back; or move the file away: the sniffer then counts as a new one, and noses taught on the old one do not fit it.",
      };
    case "unreadable":
      return {
        wrong: `${problem.file} cannot be used (${problem.detail}).`,
        remedy: "check the name and the rights.",
      };
  }
}

type RadioProblem = Of<
  | "noBus"
  | "busLost"
  | "noBluez"
  | "noAdapter"
  | "noPeripheralRole"
  | "adapterOff"
  | "advertisingBusy"
  | "bluezRefused"
>;

function radioWords(problem: RadioProblem): Words {
  switch (problem.kind) {
    case "noBus":
      return {
        wrong: `There is no D-Bus at ${problem.address} (${problem.detail}).`,
        remedy:
          "install and start the system's D-Bus (the package is mostly called dbus), or set DBUS_SYSTEM_BUS_ADDRESS.",
      };
    case "busLost":
      return { wrong: "D-Bus ended the connection.", remedy: "start the sniffer again once D-Bus runs." };
    case "noBluez":
      return {
        wrong: `BlueZ does not run (${problem.detail}).`,
        remedy: "install it (the package is mostly called bluez) and start its service, bluetooth.",
      };
    case "noAdapter":
      return {
        wrong:
          problem.wanted === null
            ? "There is no Bluetooth adapter."
            : `There is no Bluetooth adapter ${problem.wanted}. ${listed("There is", problem.present, "none")}.`,
        remedy: "plug one in, or switch on the one that is built in, and see that its firmware is installed.",
      };
    case "noPeripheralRole":
      return {
        wrong: `The adapter ${problem.adapter} cannot be a peripheral: BlueZ offers no GATT server or no advertising on it.`,
        remedy:
          "use an adapter with Bluetooth 4.0 or later, and BlueZ 5.48 or later with Low Energy enabled.",
      };
    case "adapterOff":
      return {
        wrong: `The adapter ${problem.adapter} is switched off.`,
        remedy: "run: rfkill unblock bluetooth; bluetoothctl power on",
      };
    case "advertisingBusy":
      return {
        wrong: `The adapter ${problem.adapter} can advertise nothing more (${problem.detail}).`,
        remedy: "end the other program that advertises, or use a second adapter with --adapter.",
      };
    case "bluezRefused":
      return {
        wrong: `BlueZ refused (${problem.step}: ${problem.detail}).`,
        remedy: "look into BlueZ's log (journalctl -u bluetooth) and restart its service.",
      };
  }
}

function listed(before: string, names: readonly string[], none: string): string {
  return `${before} ${names.length === 0 ? none : names.join(", ")}`;
}
