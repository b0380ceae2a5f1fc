import { createRequire } from "node:module";
import { dirname, sep } from "node:path";
import { chooseBackend } from "../../src/teaching/backend.js";

/** WASM from the installed package. */
export function useWasm(): Promise<string> {
  const entry = createRequire(import.meta.url).resolve("@tensorflow/tfjs-backend-wasm");
  return chooseBackend({
    wasmPath: `${dirname(entry)}${sep}`,
    names: ["wasm"],
    nowMs: () => performance.now(),
  });
}
