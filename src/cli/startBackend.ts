import { createRequire } from "node:module";
import { dirname, sep } from "node:path";
import { chooseBackend } from "../teaching/backend.js";

/** Starts the fastest backend that Node has: WASM from the installed package, or plain JavaScript. */
export function startBackend(): Promise<string> {
  const entry = createRequire(import.meta.url).resolve("@tensorflow/tfjs-backend-wasm");
  const wasmPath = `${dirname(entry)}${sep}`;
  return chooseBackend({ wasmPath, names: ["wasm", "cpu"], nowMs: () => performance.now() });
}
