import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, inject } from "vitest";
import { launchChromium } from "./emulatedPeripheral.js";
import { layLossTable, type LossTable } from "./lossTable.js";
import type { Garble, TableOptions } from "./tableSniffer.js";

/**
 * A browser for the tests of one file; one that its emulated radio has ended is opened anew.
 *
 * @returns lays the table of a test; it is cleared after its test
 */
export function useLossTables(): (garble?: Garble, options?: TableOptions) => Promise<LossTable> {
  let browser: Browser;
  let table: LossTable | undefined;
  beforeAll(async () => {
    browser = await launchChromium();
  });
  afterAll(() => browser.close());
  afterEach(async () => {
    await table?.clear();
    table = undefined;
  });
  return async (garble, options) => {
    if (!browser.isConnected()) browser = await launchChromium();
    table = await layLossTable(browser, inject("appUrl"), garble, options);
    return table;
  };
}
