/** A walk through every place and the heavy actions, tap by tap, as a thumb would. */
import type { Page } from "playwright-core";

/** Long enough for what a tap set going. */
const SETTLE_MS = 700;

/** Through a long list, faster than anybody reads. */
const FLICKS = 30;
const FLICK_PX = 700;
const FLICK_MS = 80;

const YOU_PAGES = [
  "Allergies",
  "Intolerances and coeliac disease",
  "Accepted miss rate",
  "Kitchen card",
  "Your data",
  "Put it on your phone",
  "About and limits",
  "Words explained",
];
const NOSE_PAGES = [
  "Samples",
  "Full report",
  "Versions and files",
  "The sniffer’s fitness",
  "Teach a new nose",
];

const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });
const place = (page: Page, name: string) => page.locator("nav.places").getByRole("link", { name });

/** @param measured - called after each step with its name, when the page has come to rest */
export async function walkThroughTheApp(
  page: Page,
  measured: (step: string) => Promise<void>,
): Promise<void> {
  const step = async (name: string, act: () => Promise<unknown>) => {
    await act();
    await page.waitForTimeout(SETTLE_MS);
    await measured(name);
  };
  const open = (name: string) =>
    page.locator("main").getByRole("link", { name }).or(button(page, name)).first();
  const back = (from: string) => step(`back from ${from}`, () => page.locator("main .back").tap());
  const visit = async (name: string) => {
    await step(name, () => open(name).tap());
    await back(name);
  };

  await step("place You", () => place(page, "You").tap());
  for (const name of YOU_PAGES) await visit(name);
  await step("page Diet", () => button(page, "Diet and groups").tap());
  await step("choose a diet", () => page.getByLabel("vegan", { exact: true }).tap());
  await back("Diet");
  await step("page Settings", () => button(page, "Settings").tap());
  await step("to German", () => page.getByLabel("Deutsch", { exact: true }).tap());
  await step("to English", () => page.getByLabel("English", { exact: true }).tap());
  await step("to dark", () =>
    page
      .getByLabel("dunkel", { exact: true })
      .or(page.getByLabel("dark", { exact: true }))
      .tap(),
  );
  await back("Settings");

  await step("place Plate", () => place(page, "Plate").tap());
  await step("type a dish", () => page.locator("#dish").pressSequentially("carbona", { delay: 150 }));
  await step("take a suggestion", () => page.locator(".suggestions button").first().tap());
  await step("choose a claim", () => page.getByLabel("menu says vegetarian").tap());
  await step("virtual sniffer", () => button(page, "Use the virtual sniffer").tap());
  await page.locator("[aria-disabled=true]").getByText("Check this plate").waitFor({ state: "detached" });
  await step("begin a check", () => button(page, "Check this plate").tap());
  await button(page, "Start the countdown").waitFor();
  await step("over the plate", () => button(page, "Start the countdown").tap());
  await button(page, "Save as a meal").waitFor();
  await step("details of a finding", () =>
    page.locator("main details summary, main .fold summary").first().tap(),
  );
  await step("save as a meal", () => button(page, "Save as a meal").tap());
  await step("save the meal", () => button(page, "Save the meal").tap());

  await step("all meals", () => button(page, "All meals").tap());
  await page.locator(".meal-row").first().waitFor();
  await page.waitForTimeout(4000);
  await step("search in meals", () =>
    page.locator("#meal-search").pressSequentially("plum soup", { delay: 150 }),
  );
  await step("clear the search", () => page.locator("#meal-search").fill(""));
  await step("open the filters", () => page.locator("main details summary").first().tap());
  await step("filter by verdict", () => page.locator("#filter-verdict").selectOption({ index: 1 }));
  await step("let every verdict through", () => page.locator("#filter-verdict").selectOption({ index: 0 }));
  await step("show more", async () => {
    for (let flick = 0; flick < FLICKS; flick += 1) {
      await page.mouse.wheel(0, FLICK_PX);
      await page.waitForTimeout(FLICK_MS);
    }
  });
  await step("place Nose", () => place(page, "Nose").tap());
  await step("place Meals with 10,000", () => place(page, "Meals").tap());
  await step("open a meal", () => page.locator(".meal-row").first().tap());
  await step("edit it", () => button(page, "Edit").tap());
  await step("type a note", () =>
    page.getByLabel("Note", { exact: true }).pressSequentially("warm", { delay: 150 }),
  );
  await step("leave the form", () => page.goBack());
  await step("to the list again", () => button(page, "All meals").tap());
  await step("review of 10,000", () => button(page, "Review").tap());
  await step("back from the review", () => page.goBack());

  await step("place Nose again", () => place(page, "Nose").tap());
  for (const name of NOSE_PAGES) await visit(name);
}
