import { ok } from "../kernel/result.js";
import type { SnifferSource } from "./snifferControl.js";
import type { VirtualLink } from "./virtualLink.js";

/** The practice sniffer. Its physics are loaded only when somebody practises. */
export function virtualSource(
  name: string,
  seed: number,
  onOpen: (link: VirtualLink) => void,
): SnifferSource {
  return {
    virtual: true,
    choose: () =>
      Promise.resolve(
        ok({
          name,
          deviceId: null,
          dial: async () => {
            const { openVirtualLink } = await import("./virtualLink.js");
            const link = openVirtualLink(name, seed);
            onOpen(link);
            return ok(link);
          },
        }),
      ),
  };
}
