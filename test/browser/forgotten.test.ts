// A sniffer that the phone knows and the browser has forgotten: the app says so in words and offers to choose it again.
// Web Bluetooth draft, Bluetooth.getDevices: it names only devices that this page still has leave for, and may name none.
import { describe, expect, inject, it } from "vitest";
import { button, heading, pair, type LossTable } from "./lossTable.js";
import { MAY_CRASH } from "./mayCrash.js";
import { useLossTables } from "./useLossTables.js";

const lay = useLossTables();

/** A phone that was connected to a sniffer, and whose browser names no device from its next page on. */
async function forgetfulPhone(isSlow: boolean): Promise<LossTable> {
  const table = await lay();
  await pair(table);
  await table.page.getByText("Table sniffer").first().waitFor();
  await table.page.addInitScript((slow) => {
    const asked = new Promise<void>((resolve) => {
      if (slow) Object.assign(globalThis, { nameDevices: resolve });
      else resolve();
    });
    navigator.bluetooth.getDevices = () => asked.then(() => []);
  }, isSlow);
  await table.reload();
  return table;
}

async function chooseAgain({ page, peripheral }: LossTable): Promise<void> {
  await button(page, "Choose it again").click();
  await peripheral.answerChooser("choose");
  await button(page, "Disconnect").waitFor();
}

// The reload cuts a discovery short.
describe("a sniffer that the browser has forgotten", MAY_CRASH, () => {
  it("is named on Plate, at the next start from the first moment on, and chosen again from there", async () => {
    const at = await forgetfulPhone(false);
    const { page } = at;
    const words = "This browser does not remember Table sniffer. Choose it again in the browser’s list.";
    await page.getByText(words).waitFor();
    await heading(page, "What is on the plate?").waitFor();
    expect(await button(page, /^Connect to/).count()).toBe(0);
    expect(await page.getByText("No sniffer yet").count()).toBe(0);
    await at.reload();
    await page.getByText(words).waitFor();
    await chooseAgain(at);
    expect(await page.getByText(words).count()).toBe(0);
  });

  it("is told of where its button stood from the last visit and was tapped", async () => {
    const at = await forgetfulPhone(true);
    const { page } = at;
    await button(page, "Connect to Table sniffer").click();
    await page.evaluate(() => (globalThis as unknown as { nameDevices: () => void }).nameDevices());
    await page.getByText("The sniffer could not be used").waitFor();
    await page.getByText(/does not remember Table sniffer/).waitFor();
    await chooseAgain(at);
  });

  it("stands in the list of known sniffers, and is chosen again from there", async () => {
    const at = await forgetfulPhone(false);
    const { page } = at;
    await page.goto(`${inject("appUrl")}#/nose/sniffers`);
    const entry = page.locator(".known li").filter({ hasText: "Table sniffer" });
    await entry.getByText(/does not remember it/).waitFor();
    await entry.getByRole("button", { name: "Choose it again" }).click();
    await at.peripheral.answerChooser("choose");
    await entry.getByText("connected now").waitFor();
  });
});
