/** The command line, on the same code as the app. */
import { commandLine, USAGE, type Command } from "./commandLine.js";

async function run(command: Command): Promise<number> {
  switch (command.kind) {
    case "assess":
      return (await import("./assessCommand.js")).assessCommand(command);
    case "teach":
      return (await import("./teachCommand.js")).teachCommand(command);
    case "refresh":
      return (await import("./refreshCommand.js")).refreshCommand(command);
    case "transfer":
      return (await import("./transferCommand.js")).transferCommand(command);
    case "check":
      return (await import("./checkCommand.js")).checkCommand(command);
    case "help":
      process.stdout.write(USAGE);
      return 0;
  }
}

const command = commandLine(process.argv.slice(2));
if (command.kind === "wrong") {
  process.stderr.write(`${command.why}\n\n${USAGE}`);
  process.exitCode = 2;
} else {
  try {
    process.exitCode = await run(command);
  } catch (cause) {
    process.stderr.write(`${cause instanceof Error ? cause.message : String(cause)}\n`);
    process.exitCode = 1;
  }
}
