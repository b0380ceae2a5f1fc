/** The browser's device chooser, answered by the test. */
import type { Page } from "playwright-core";

export interface EmulatedChooser {
  /** Answers the prompt that is open, or the next one that opens. */
  answer(how: "choose" | "cancel"): Promise<void>;
  close(): Promise<void>;
}

/** @param deviceId - which device "choose" takes, once the chooser lists it */
export async function emulatedChooser(page: Page, deviceId: string): Promise<EmulatedChooser> {
  const session = await page.context().newCDPSession(page);
  const answered = new Set<string>();
  let open: { readonly id: string; readonly listed: boolean } | undefined;
  let changed: () => void = () => undefined;
  session.on("DeviceAccess.deviceRequestPrompted", ({ id, devices }) => {
    if (answered.has(id)) return; // a prompt is announced each time its list grows: answer once
    open = { id, listed: devices.some((device) => device.id === deviceId) };
    changed();
  });
  await session.send("DeviceAccess.enable");
  return {
    async answer(how) {
      while (open === undefined || (how === "choose" && !open.listed)) {
        await new Promise<void>((resolve) => (changed = resolve));
      }
      const { id } = open;
      answered.add(id);
      open = undefined;
      if (how === "choose") await session.send("DeviceAccess.selectPrompt", { id, deviceId });
      else await session.send("DeviceAccess.cancelPrompt", { id });
    },
    close: () => session.detach(),
  };
}
