/** A phone with the app open and a sniffer in range, whose time and whose link the test holds in its hand. */
import type { Browser, BrowserContext, Page } from "playwright-core";
import type { Sniff } from "../../src/sniff/sniff.js";
import { startEmulatedPeripheral, type EmulatedPeripheral } from "./emulatedPeripheral.js";
import { introduced } from "./introduced.js";
import { tableSniffer, type Garble, type TableOptions, type TableSniffer } from "./tableSniffer.js";

const PHONE = { width: 390, height: 844 };
const PATIENCE_MS = 60_000;

export interface LossTable {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly sniffer: TableSniffer;
  readonly peripheral: EmulatedPeripheral;
  /** Stops the sniffer's time and takes it out of range. */
  lose(): Promise<void>;
  /** Lets device time go by unheard, brings the sniffer back into range, and lets its time run on. */
  comeBackAfter(ms: number): Promise<void>;
  /** Stops the sniffer's time while the hand moves, once what it said is heard: it runs faster than any hand. */
  whileStill(move: () => Promise<void>): Promise<void>;
  /** Opens the page anew while the sniffer stands in range. */
  reload(): Promise<void>;
  clear(): Promise<void>;
}

export async function layLossTable(
  browser: Browser,
  url: string,
  garble?: Garble,
  options?: TableOptions,
): Promise<LossTable> {
  const context = await browser.newContext({ viewport: PHONE, locale: "en-GB" });
  await introduced(context);
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  const sniffer = tableSniffer(7, garble, options);
  const peripheral = await startEmulatedPeripheral(browser, page, sniffer);
  await page.goto(url);
  let stopTime = sniffer.run();
  let stopPump = peripheral.pumpEvery(25);
  return {
    page,
    context,
    sniffer,
    peripheral,
    async lose() {
      stopTime();
      // The emulation never answers a read that a disconnection overtakes: none may be under way.
      await stopPump();
      // What it said before is heard, however slow the machine: the hole is then as long as the test says.
      await peripheral.pumpAll();
      await peripheral.disconnect();
    },
    async comeBackAfter(ms) {
      sniffer.passUnheard(ms);
      peripheral.comeBack();
      stopPump = peripheral.pumpEvery(25);
      // Its time stands still until the phone has it again: the hole is then as long as the test says.
      await page.getByText(/Next try in|Connecting: try/).waitFor({ state: "hidden" });
      stopTime = sniffer.run();
    },
    async whileStill(move) {
      stopTime();
      await peripheral.pumpAll();
      await move();
      stopTime = sniffer.run();
    },
    async reload() {
      // As at a loss: a read that the reload overtakes is never answered, and every later one waits behind it.
      stopTime();
      await stopPump();
      await peripheral.pumpAll();
      await page.reload();
      stopPump = peripheral.pumpEvery(25);
      stopTime = sniffer.run();
    },
    async clear() {
      stopTime();
      if (!browser.isConnected()) return;
      await stopPump();
      try {
        await peripheral.stop();
        await context.close();
      } catch (fault) {
        // A browser that its emulated radio ends meanwhile has nothing left to clear.
        if (browser.isConnected()) throw fault;
      }
    },
  };
}

export const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });
export const heading = (page: Page, name: string | RegExp) => page.getByRole("heading", { name });
export const phase = (page: Page, name: string) => page.locator(`[data-phase="${name}"]`);

export async function pair({ page, peripheral }: LossTable): Promise<void> {
  await button(page, "Pair a sniffer").click();
  await peripheral.answerChooser("choose");
  await button(page, "Disconnect").waitFor();
}

/** Up to the first sweeps over a plate of the dish. */
export async function beginOverPlate(table: LossTable, dish: string): Promise<void> {
  await countDownOver(table, dish);
  await table.page.getByText(/so far, not a finding/i).waitFor();
}

/** A whole check of a plate of the dish, up to its finding. */
export async function sniffPlate(table: LossTable, dish: string): Promise<void> {
  await countDownOver(table, dish);
  await button(table.page, "Save as a meal").waitFor();
}

async function countDownOver({ page, sniffer, whileStill }: LossTable, dish: string): Promise<void> {
  await button(page, "Check this plate").click();
  await heading(page, "The air is steady").waitFor();
  await whileStill(async () => {
    sniffer.serveDish(dish);
    await button(page, "Start the countdown").click();
    await phase(page, "headspace").waitFor();
  });
}

/** What the browser's own database holds of sniffs. */
export async function keptSniffs(page: Page): Promise<Sniff[]> {
  const values = await page.evaluate(async () => {
    const settled = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error ?? new Error("refused"));
      });
    const [known] = await indexedDB.databases();
    const database = await settled(indexedDB.open(known?.name ?? ""));
    const rows: unknown[] = await settled(database.transaction("sniffs").objectStore("sniffs").getAll());
    database.close();
    return rows;
  });
  return values.map((row) => (row as { value: Sniff }).value);
}
