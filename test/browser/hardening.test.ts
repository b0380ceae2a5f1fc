// The built app under its Content-Security-Policy: a walk through every place, practice and teaching with WASM, text
// that would like to be HTML, and a plain static host with the app in a sub-path.
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, inject, it } from "vitest";
import { asFile } from "./asFile.js";
import { launchChromium } from "./emulatedPeripheral.js";
import { introduced } from "./introduced.js";
import { outsideOf, watchPolicy, type PolicyWatch } from "./policyWatch.js";
import { serveUnder, type StaticHost } from "./serveUnder.js";

const PHONE = { width: 390, height: 844 };
const PATIENCE_MS = 60_000;
const TEACHING_MS = 240_000;
const SITE = fileURLToPath(new URL("../output/site", import.meta.url));
const MODELS = new URL("../../models/", import.meta.url);

/** Every page that can be reached without a record. */
const PAGES = [
  ["plate", "plate/card"],
  ["meals", "meals/new", "meals/review"],
  ["nose", "nose/samples", "nose/teach", "nose/versions", "nose/fitness", "nose/report"],
  ["you", "you/diet", "you/allergies", "you/intolerances", "you/missRate", "you/settings"],
  ["you/card", "you/data", "you/install", "you/about", "you/glossary"],
].flat();

/** Would run a script if it were ever parsed as HTML. */
const HOSTILE = `<img src=x onerror="globalThis.owned=1"><script>globalThis.owned=1</script>`;

let browser: Browser;
let context: BrowserContext | null = null;
let watch: PolicyWatch;
let host: StaticHost | null = null;

beforeAll(async () => {
  // The backend is chosen by a short measurement: of WASM and drawing in software, a busy machine may prefer either.
  browser = await launchChromium("--disable-3d-apis");
});
afterAll(() => browser.close());
afterEach(async () => {
  await context?.close();
  context = null;
  await host?.close();
  host = null;
});

async function open(url: string): Promise<Page> {
  context = await browser.newContext({ viewport: PHONE, locale: "en-GB" });
  await introduced(context);
  watch = watchPolicy(context);
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  await page.goto(url);
  return page;
}

const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });
const heading = (page: Page, name: string) => page.getByRole("heading", { name, exact: true });

/** Goes to a page of the app by its address and waits until it has a heading. */
async function visit(page: Page, url: string, address: string): Promise<void> {
  await page.goto(`${url}#/${address}`);
  await page.locator("main h1, main h2").first().waitFor();
}

async function checkWithVirtualSniffer(page: Page, url: string): Promise<void> {
  await visit(page, url, "plate");
  await button(page, "Use the virtual sniffer").click();
  await button(page, "Check this plate").click();
  await heading(page, "The air is steady").waitFor();
  await button(page, "Start the countdown").click();
  await button(page, "Save as a meal").waitFor();
}

const serviceWorkerScope = (page: Page) =>
  page.evaluate(() => navigator.serviceWorker.ready.then(({ scope }) => scope));

/** Lines of the demo samples: one of every `step`, so that all occasions are in. */
async function demoLines(step: number): Promise<string[]> {
  const text = await readFile(new URL("demo.sniffs.jsonl", MODELS), "utf8");
  return text
    .trim()
    .split("\n")
    .filter((_, i) => i % step === 0);
}

/** Shown as it was written, and no element came of it. */
async function staysText(page: Page): Promise<void> {
  await page.getByText(HOSTILE).locator("visible=true").first().waitFor();
  const made = await page.evaluate(() => ({
    elements: document.querySelectorAll("[onerror], img[src=x], script:not([src])").length,
    owned: "owned" in globalThis,
  }));
  expect(made).toEqual({ elements: 0, owned: false });
}

describe("the policy", () => {
  it("stands in the built page before anything it could load, and allows no inline script", async () => {
    const html = await readFile(`${SITE}/index.html`, "utf8");
    const policy = /<meta http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html);
    expect(policy?.[1]).toContain("default-src &#39;self&#39;");
    expect(policy?.[1]).not.toMatch(/unsafe-inline|&#39;unsafe-eval|https?:|\*/);
    expect(policy?.index).toBeLessThan(html.search(/<(script|link|style)\b/));
    expect(html).not.toMatch(/<script(?![^>]*\ssrc=)|<style|\son\w+=|\sstyle=/);
  });

  it("refuses what it should, and this test's watch hears of it", async () => {
    const page = await open(inject("appUrl"));
    const outcome = await page.evaluate(async () => {
      const script = document.createElement("script");
      script.textContent = "globalThis.owned = 1";
      document.head.append(script);
      const picture = document.createElement("div");
      picture.innerHTML = `<img src="x" onerror="globalThis.owned = 1">`;
      document.body.append(picture);
      const reached = await fetch("http://127.0.0.1:9/").then(
        () => "answered",
        () => "refused",
      );
      return { owned: "owned" in globalThis, reached };
    });
    expect(outcome).toEqual({ owned: false, reached: "refused" });
    await expect.poll(() => watch.refused.some((text) => /inline script/i.test(text))).toBe(true);
    expect(watch.refused.some((text) => text.includes("http://127.0.0.1:9/"))).toBe(true);
  });

  it("is not broken, and no other origin asked, on a walk through every place with a check and a teaching", async () => {
    const url = inject("appUrl");
    const page = await open(url);
    await serviceWorkerScope(page);
    for (const address of PAGES) await visit(page, url, address);
    await checkWithVirtualSniffer(page, url);
    await button(page, "Save as a meal").click();
    await button(page, "Save the meal").click();
    await button(page, "All meals").waitFor();
    await visit(page, url, "nose/samples");
    await button(page, "Bring in the demo samples").click();
    await button(page, "Remove all demo data").waitFor();
    await visit(page, url, "nose/teach");
    await button(page, "Start teaching").click();
    await page.getByRole("progressbar").waitFor();
    await page.getByText(/\d+\s*%\s*done/).waitFor();
    await button(page, "Stop teaching").click();
    await button(page, "Start teaching").waitFor();
    expect(watch.refused).toEqual([]);
    expect(watch.uncaught).toEqual([]);
    expect(outsideOf(new URL(url).origin, watch.asked)).toEqual([]);
    // The walk did load what only teaching needs: else nothing was tried.
    expect(watch.asked.some((asked) => /teachWorker.*\.js$/.test(asked))).toBe(true);
    expect(watch.asked.some((asked) => /fitWorker.*\.js$/.test(asked))).toBe(true);
    expect(watch.asked.some((asked) => asked.endsWith(".wasm"))).toBe(true);
  });
});

describe("text from elsewhere", () => {
  it("of a meal stays text in its list, its page and its search", async () => {
    const url = inject("appUrl");
    const page = await open(`${url}#/meals/new`);
    for (const label of ["Dish", "Place", "Note", "What was said about it"])
      await page.getByLabel(label, { exact: true }).fill(HOSTILE);
    await button(page, "Save the meal").click();
    await page.getByRole("heading", { name: HOSTILE, exact: true }).waitFor();
    await staysText(page);
    await button(page, "All meals").click();
    await staysText(page);
    await visit(page, url, `meals/${encodeURIComponent(HOSTILE)}`);
    await visit(page, url, "plate");
    await page.getByLabel("Dish", { exact: true }).fill(HOSTILE);
    await visit(page, url, "plate/card");
    expect(await page.evaluate(() => "owned" in globalThis)).toBe(false);
    expect(watch.refused).toEqual([]);
  });

  it("of a nose file and a sniff file stays text, refused lines included", async () => {
    const url = inject("appUrl");
    const page = await open(`${url}#/nose/versions`);
    const nose = JSON.parse(await readFile(new URL("demo.nose.json", MODELS), "utf8")) as object;
    const renamed = JSON.stringify({ ...nose, id: "from-elsewhere", name: HOSTILE });
    await page.getByLabel("Bring in a nose file").setInputFiles(asFile("a.json", renamed));
    await page.getByRole("heading", { name: HOSTILE }).waitFor();
    await staysText(page);
    await button(page, "Use this nose").click();
    await page.getByRole("heading", { name: HOSTILE }).waitFor();
    await visit(page, url, "nose/versions");
    await staysText(page);
    const [first = "{}", second = "{}"] = await demoLines(100);
    const good = { ...(JSON.parse(first) as object), id: HOSTILE, dish: HOSTILE };
    const bad = { ...(JSON.parse(second) as object), groups: { [HOSTILE]: "perhaps" } };
    const lines = [good, bad, HOSTILE].map((line) => `${JSON.stringify(line)}\n`).join("");
    await page.getByLabel("Bring in samples").setInputFiles(asFile("a.jsonl", lines + HOSTILE));
    await page
      .getByText("1 sample came in.")
      .or(page.getByText(/lines were refused/))
      .first()
      .waitFor();
    await staysText(page);
    await visit(page, url, "nose/samples");
    await staysText(page);
    await visit(page, url, "nose");
    await staysText(page);
    await visit(page, url, "plate");
    await button(page, "Use the virtual sniffer").click();
    await staysText(page);
    expect(watch.refused).toEqual([]);
  });
});

describe("teaching", () => {
  it(
    "ends with a nose taught by WASM where the worker itself is held to the policy",
    { timeout: TEACHING_MS + 60_000 },
    async () => {
      const url = inject("appUrl");
      const page = await open(`${url}#/nose/versions`);
      const headers = await page.evaluate(
        (address) => fetch(address).then((r) => [...r.headers.keys()]),
        url,
      );
      expect(headers).toContain("content-security-policy");
      const input = page.locator("input[type=file]").last();
      await input.setInputFiles(asFile("few.jsonl", (await demoLines(4)).join("\n")));
      await page.getByText("52 samples came in.").waitFor();
      await visit(page, url, "nose/teach");
      await page.getByLabel("Name of the nose").fill("Night market");
      const [worker] = await Promise.all([
        page.waitForEvent("worker"),
        button(page, "Start teaching").click(),
      ]);
      // In a task of the worker's own: what the debugger evaluates directly is exempt from the policy.
      const scriptText = await worker.evaluate(
        () =>
          new Promise<string>((settle) => {
            setTimeout(() => {
              try {
                settle(String(new Function("return 'ran'")()));
              } catch (cause) {
                settle(cause instanceof Error ? cause.name : "threw");
              }
            });
          }),
      );
      expect(scriptText).toBe("EvalError");
      await button(page, "Use the new nose").click({ timeout: TEACHING_MS });
      await heading(page, "Night market").waitFor();
      await visit(page, url, "nose/versions");
      const [file] = await Promise.all([
        page.waitForEvent("download"),
        button(page, "Save as a file: Night market").click(),
      ]);
      const taught = JSON.parse(await readFile(await file.path(), "utf8")) as { report: { backend: string } };
      expect(taught.report.backend).toBe("wasm");
      expect(watch.refused).toEqual([]);
      expect(watch.uncaught).toEqual([]);
    },
  );
});

describe("a plain static host with the app in a sub-path", () => {
  it("serves it all: the places, the service worker in its scope, and everything again without the host", async () => {
    host = await serveUnder("/sub/", SITE);
    const { url } = host;
    const page = await open(url);
    expect(await serviceWorkerScope(page)).toBe(url);
    await visit(page, url, "plate");
    expect(host.notFound).toEqual([]);
    await page.reload(); // now under the service worker
    await button(page, "Use the virtual sniffer").waitFor();
    await host.close();
    await page.reload();
    for (const address of PAGES) await visit(page, url, address);
    await checkWithVirtualSniffer(page, url);
    await visit(page, url, "nose/samples");
    await button(page, "Bring in the demo samples").click();
    await button(page, "Remove all demo data").waitFor();
    await visit(page, url, "nose/teach");
    await button(page, "Start teaching").click();
    await page.getByText(/\d+\s*%\s*done/).waitFor();
    expect(host.notFound).toEqual([]);
    expect(outsideOf(new URL(url).origin, watch.asked)).toEqual([]);
    expect(watch.refused).toEqual([]);
    expect(watch.uncaught).toEqual([]);
  });
});
