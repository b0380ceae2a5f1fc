// What a screen reader says by itself through a whole check: each phase, the count-down and the finding once, in order.
// WCAG 2.2, 4.1.3 (status messages): what changes without the focus is told by a role; ARIA in HTML, role=status.
import type { Page } from "playwright-core";
import { describe, expect, inject, it } from "vitest";
import { check as germanCheck } from "../../src/text/de/check.js";
import { sniffer as germanSniffer } from "../../src/text/de/sniffer.js";
import { plate as germanPlate } from "../../src/text/de/plate.js";
import { check as englishCheck } from "../../src/text/en/check.js";
import { plate as englishPlate } from "../../src/text/en/plate.js";
import { sniffer as englishSniffer } from "../../src/text/en/sniffer.js";
import { allHeard, listenTo, timesHeard } from "./heard.js";
import { arrive, holdTime, MOMENT_MS, runUntil, stepUntil, takeTime } from "./heldTime.js";
import { introduced } from "./introduced.js";
import { usePhones } from "./usePhones.js";

const phone = usePhones();
const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });

const LANGUAGES = [
  {
    locale: "en-GB",
    check: englishCheck,
    plate: englishPlate,
    sniffer: englishSniffer,
    // Written here anew, not read from the catalogue: what was agreed to be said.
    phases: [
      "Warming up.",
      "Hold the sniffer in clean air.",
      "The air is steady. Start the countdown, then bring the sniffer over the plate.",
      "It begins in 3 seconds. Bring the sniffer over the plate and hold it still.",
      "Sniffing the plate.",
    ],
    finding: "The finding is there.",
    verdicts: {
      smelled: "Smelled",
      uncertain: "Uncertain, do not rely on this",
      notSmelled: "Not smelled",
    } as Record<string, string>,
  },
  {
    locale: "de-DE",
    check: germanCheck,
    plate: germanPlate,
    sniffer: germanSniffer,
    phases: [
      "Wird warm.",
      "Halte den Riecher in reine Luft.",
      "Die Luft ist ruhig. Starte den Countdown, dann bring den Riecher über den Teller.",
      "In 3 Sekunden geht es los. Bring den Riecher über den Teller und halte still.",
      "Am Teller wird gerochen.",
    ],
    finding: "Der Befund ist da.",
    verdicts: {
      smelled: "Gerochen",
      uncertain: "Unsicher, verlass dich nicht darauf",
      notSmelled: "Nicht gerochen",
    } as Record<string, string>,
  },
] as const;

type Spoken = (typeof LANGUAGES)[number];

/** A phone just paired with a cold virtual sniffer; its time runs only when the test makes it run. */
async function coldSniffer({ locale, sniffer }: Spoken): Promise<Page> {
  const context = await phone({ locale });
  await introduced(context);
  await listenTo(context);
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  await takeTime(page);
  await page.goto(inject("appUrl"));
  await button(page, sniffer.useVirtual).waitFor();
  await holdTime(page);
  await button(page, sniffer.useVirtual).click();
  await runUntil(page, button(page, sniffer.disconnect));
  return page;
}

/** What the finding's cards say, as one line: groups of one kind together, in the cards' order. */
async function cardsInWords(page: Page, { locale, verdicts }: Spoken): Promise<string> {
  const cards = await page.locator("article[data-group]").evaluateAll((articles) =>
    articles.map((article) => ({
      name: article.querySelector("h2")?.textContent?.trim() ?? "",
      tone: article.querySelector("[data-tone]")?.getAttribute("data-tone") ?? "",
    })),
  );
  const tones = [...new Set(cards.map(({ tone }) => tone))];
  const list = new Intl.ListFormat(locale, { type: "conjunction" });
  return tones
    .map((tone) => {
      const names = cards.filter((card) => card.tone === tone).map(({ name }) => name);
      const inSentence = names.map((name, i) => (i > 0 && locale === "en-GB" ? name.toLowerCase() : name));
      return `${list.format(inSentence)}: ${verdicts[tone]}.`;
    })
    .join(" ");
}

describe.each(LANGUAGES)("a check in $locale", (spoken) => {
  it("says each phase, the count-down and the finding once each, in order, and nothing else twice", async () => {
    const { check, plate, phases, finding } = spoken;
    const page = await coldSniffer(spoken);
    // It has said what it is and does by the time it counts the warm-up down, which is not said.
    await runUntil(page, page.locator(".sniffer p.numbers"));
    // Forty seconds of its warm-up go by on the page before, and no second of them is read out.
    const before = (await allHeard(page)).length;
    await page.clock.runFor(5_000);
    expect((await allHeard(page)).slice(before)).toEqual([]);
    // The nose is read in real time, and looked into when the page is idle: that is time, too.
    await arrive(page, button(page, plate.check));
    await button(page, plate.check).click();
    // The page of a check is fetched in real time: the sniffer's must not run past it meanwhile.
    const isBegun = async () => (await timesHeard(page, phases[0])) > 0;
    await stepUntil(page, MOMENT_MS, isBegun, phases[0]);
    await runUntil(page, page.locator('[data-phase="overPlate"]'));
    await button(page, check.overPlate.button).click();
    await runUntil(page, page.locator("article[data-group]"));
    // Sixteen minutes of its own time: it clears itself of the smell meanwhile.
    await page.clock.runFor(120_000);
    await page.getByText(plate.release.back).waitFor();
    const said = (await allHeard(page)).slice(before);
    const announced = said.filter(({ by }) => by === "announcer").map(({ words }) => words);
    expect(announced).toEqual([...phases, `${finding} ${await cardsInWords(page, spoken)}`]);
    for (const { words } of said) expect(await timesHeard(page, words), words).toBe(1);
  });
});
