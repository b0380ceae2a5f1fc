// The store over the IndexedDB of a real Chromium: the same contract as everywhere, and what only a browser can do to it.
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { STORE_CONTRACT } from "../store/storeContract.js";
import { launchChromium } from "./emulatedPeripheral.js";
import { startKillableChromium } from "./killableChromium.js";
import { serveModule, type ServedModule } from "./serveModule.js";
import type { StorePage } from "./storePage.js";

const ENTRY = fileURLToPath(new URL("./storePage.ts", import.meta.url));
declare const storePage: StorePage;

let served: ServedModule;
let browser: Browser;

beforeAll(async () => {
  served = await serveModule(ENTRY, "");
  browser = await launchChromium();
});
afterAll(async () => {
  await browser.close();
  await served.close();
});

async function open(page: Page): Promise<Page> {
  await page.goto(served.url);
  await page.waitForFunction(() => "storePage" in globalThis);
  return page;
}

describe("the contract, in Chromium", () => {
  let page: Page;
  beforeAll(async () => {
    page = await open(await browser.newPage());
  });

  it.each(STORE_CONTRACT.map(({ name }) => name))("%s", async (name) => {
    expect(await page.evaluate((fact) => storePage.check(fact), name)).toBeNull();
  });
});

describe("a store that fills up", () => {
  it("says so, keeps what it has, and works again once photos are deleted", async () => {
    const context = await browser.newContext();
    const page = await open(await context.newPage());
    const devtools = await context.newCDPSession(page);
    const { origin } = new URL(served.url);
    // Before the first write: Chromium remembers for half a minute how much room there was.
    await devtools.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 12 * 2 ** 20 });
    expect(await page.evaluate(() => storePage.saveMeal("full", "m1"))).toBe("kept");
    const filled = await page.evaluate(() => storePage.fillUp("full"));
    expect(filled.kind).toBe("quota");
    expect(filled.photos).toBeGreaterThan(2);
    expect(filled.photos).toBeLessThan(12);
    expect(await page.evaluate(() => storePage.mealIds("full"))).toEqual({ ids: ["m1"], setAside: 0 });
    await page.evaluate(() => storePage.deletePhotos("full"));
    await devtools.send("Storage.overrideQuotaForOrigin", { origin });
    expect(await page.evaluate(() => storePage.saveMeal("full", "m2"))).toBe("kept");
    await context.close();
  });
});

it("notices at the next start that the browser threw the database away", async () => {
  const context = await browser.newContext();
  const page = await open(await context.newPage());
  expect(await page.evaluate(() => storePage.open("gone"))).toBe("open");
  await page.evaluate(
    () =>
      new Promise((settle) => {
        indexedDB.deleteDatabase("gone").onsuccess = settle;
      }),
  );
  await open(page);
  expect(await page.evaluate(() => storePage.open("gone"))).toBe("open, but lost");
  await open(page);
  expect(await page.evaluate(() => storePage.open("gone"))).toBe("open");
  await context.close();
});

describe("two tabs", () => {
  it("hear of each other's writes, and see them", async () => {
    const context = await browser.newContext();
    const left = await open(await context.newPage());
    const right = await open(await context.newPage());
    await left.evaluate(() => storePage.mealIds("shared"));
    expect(await right.evaluate(() => storePage.saveMeal("shared", "m1"))).toBe("kept");
    await left.waitForFunction(() => storePage.heard("shared").includes("meals"));
    expect((await left.evaluate(() => storePage.mealIds("shared"))).ids).toEqual(["m1"]);
    await context.close();
  });

  it("part without a fight when one of them brings a newer version", async () => {
    const context = await browser.newContext();
    const old = await open(await context.newPage());
    const newer = await open(await context.newPage());
    expect(await old.evaluate(() => storePage.open("versions"))).toBe("open");
    const version = await newer.evaluate(
      () =>
        new Promise<number>((settle) => {
          const request = indexedDB.open("versions", 20);
          request.onsuccess = () => {
            settle(request.result.version);
            request.result.close();
          };
        }),
    );
    expect(version).toBe(20);
    expect(await old.evaluate(() => storePage.isClosed("versions"))).toBe(true);
    expect(await old.evaluate(() => storePage.open("versions"))).toBe("newerVersion");
    await context.close();
  });

  it("wait for each other no longer than they must", async () => {
    const context = await browser.newContext();
    const deaf = await open(await context.newPage());
    const page = await open(await context.newPage());
    await deaf.evaluate(
      () =>
        new Promise<void>((settle) => {
          const request = indexedDB.open("blocked", 1);
          request.onsuccess = () => settle();
        }),
    );
    expect(await page.evaluate(() => storePage.open("blocked"))).toBe("blockedUpgrade");
    await deaf.close();
    expect(await page.evaluate(() => storePage.open("blocked"))).toBe("open");
    await context.close();
  });
});

describe("a browser killed in the middle of writing", () => {
  // A clean profile for each kill. Under a profile that is killed again and again while it writes without pause,
  // Chromium itself loses the whole database now and then: it writes on behind a torn record of
  // its log, and throws all away at the next start. `wasLost` is there for that.
  it.each([40, 65, 90])("has every meal that was acknowledged, after %i or more", async (enough) => {
    const profile = await mkdtemp(join(tmpdir(), "nidor-store-"));
    try {
      const acknowledged = await writeUntilKilled(profile, enough);
      const again = await startKillableChromium(profile);
      await open(again.page);
      const { ids, setAside } = await again.page.evaluate(() => storePage.mealIds("killed"));
      await again.kill();
      const found = new Set(ids);
      expect(acknowledged.filter((id) => !found.has(id))).toEqual([]);
      expect(found.size).toBeLessThanOrEqual(acknowledged.length + 10); // few can have been under way
      expect(setAside).toBe(0);
    } finally {
      await rm(profile, { recursive: true, force: true });
    }
  });
});

/** Ids of the meals that the page was told are kept, before all its processes ended at once. */
async function writeUntilKilled(profile: string, enough: number): Promise<string[]> {
  const chromium = await startKillableChromium(profile);
  const acknowledged: string[] = [];
  const reached = new Promise<void>((settle) => {
    chromium.page.on("console", (message) => {
      const [, id] = /^acknowledged (\w+)$/.exec(message.text()) ?? [];
      if (id !== undefined) acknowledged.push(id);
      if (acknowledged.length >= enough) settle();
    });
  });
  await open(chromium.page);
  await chromium.page.evaluate(() => storePage.writeForEver("killed"));
  await reached;
  await chromium.kill();
  return acknowledged;
}

describe("an import that is cut off", () => {
  it.each([0, 150, 600])("%i ms after it began is there as a whole or not at all", async (afterMs) => {
    const profile = await mkdtemp(join(tmpdir(), "nidor-store-"));
    try {
      const first = await startKillableChromium(profile);
      const heard: string[] = [];
      const begun = new Promise<void>((settle) => {
        first.page.on("console", (message) => {
          heard.push(message.text());
          if (message.text() === "import begins") settle();
        });
      });
      await open(first.page);
      expect(await first.page.evaluate(() => storePage.saveMeal("cut", "mine"))).toBe("kept");
      await first.page.evaluate(() => storePage.importMany("cut", 3000));
      await begun;
      await new Promise((resolve) => setTimeout(resolve, afterMs));
      await first.kill();

      const again = await startKillableChromium(profile);
      await open(again.page);
      const { ids, setAside } = await again.page.evaluate(() => storePage.mealIds("cut"));
      await again.kill();
      expect(ids).toContain("mine");
      expect(setAside).toBe(0);
      expect(heard.includes("import acknowledged") ? [3001] : [1, 3001]).toContain(ids.length);
    } finally {
      await rm(profile, { recursive: true, force: true });
    }
  });
});

describe("ten thousand meals", () => {
  it("show their first page within 100 ms, hardly later than two hundred do, and search within 50 ms", async () => {
    const context = await browser.newContext();
    const page = await open(await context.newPage());
    const few = await page.evaluate(() => storePage.measure("few", 200));
    const many = await page.evaluate(() => storePage.measure("many", 10_000));
    expect(many.firstPageMs).toBeLessThan(100);
    expect(many.firstPageMs / few.firstPageMs).toBeLessThan(4); // all rows would be 50 times as many
    expect(many.keyPressMs).toBeLessThan(50);
    await context.close();
  });
});

describe("a backup", () => {
  it("goes from one profile to a clean one, byte for byte, and a damaged one changes nothing", async () => {
    const here = await open(await (await browser.newContext()).newPage());
    const there = await open(await (await browser.newContext()).newPage());
    await here.evaluate(() => storePage.saveMeal("b", "m1"));
    await here.evaluate(() => storePage.saveMeal("b", "m2"));
    const text = await here.evaluate(() => storePage.backup("b"));
    const damaged = text.replace("m2", "m3");
    expect(await there.evaluate((file) => storePage.restore("b", file), damaged)).toBe("damaged");
    expect((await there.evaluate(() => storePage.mealIds("b"))).ids).toEqual([]);
    expect(await there.evaluate((file) => storePage.restore("b", file), text)).toBe("restored");
    expect(await there.evaluate(() => storePage.backup("b"))).toBe(text);
    await here.context().close();
    await there.context().close();
  });
});
