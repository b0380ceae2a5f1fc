// You in a real browser at phone size: diet and allergies, what they change on Plate, languages.
import { describe, expect, it } from "vitest";
import { ALLERGEN_LISTS } from "../../src/diet/data/jurisdictions.js";
import { addAllergy, button, heading, kept, open, useYouPhones, visit } from "./youPhones.js";

const { freshPhone } = useYouPhones();

describe("what the person does not eat", () => {
  it("is kept at once and is there again after a reload: diet, own words, allergy, coeliac disease", async () => {
    const page = await open(await freshPhone(), "#/you");
    await page.getByRole("button", { name: /^Diet and groups/ }).click();
    await page.getByLabel("fish, but no meat").check();
    await page.getByLabel("Words to look for").fill("suet\nlard");
    await button(page, "You").click();
    await addAllergy(page, "egg", "life-threatening");
    await visit(page, "#/you/intolerances");
    await page.getByLabel("I have coeliac disease").check();
    await page.getByRole("checkbox", { name: "lactose", exact: true }).check();
    await kept(page).toContainEqual(
      expect.objectContaining({
        diet: expect.objectContaining({
          diets: ["eatsFishNoMeat"],
          ownWords: ["suet", "lard"],
          allergies: [{ allergen: "egg", severity: "lifeThreatening", note: "" }],
          intolerances: ["lactose"],
          coeliac: true,
        }),
      }),
    );
    await visit(page, "#/you");
    await page.reload();
    const links = page.locator(".links");
    await links.getByText("fish, but no meat").waitFor();
    await links.getByText("egg", { exact: true }).waitFor();
    await links.getByText(/coeliac disease.*lactose/).waitFor();
    await visit(page, "#/you/diet");
    await expect.poll(() => page.getByLabel("Words to look for").inputValue()).toBe("suet\nlard");
  });

  it("changes Plate and the kitchen card: a caution for the dish, the allergen in the kitchen's words", async () => {
    const page = await open(await freshPhone(), "#/plate");
    await page.getByLabel("Dish", { exact: true }).fill("spaghetti carbonara");
    await page.getByText("Say under You what you avoid").waitFor();
    await addAllergy(page, "egg", "life-threatening");
    await visit(page, "#/plate");
    await page.getByText(/contains egg/).waitFor();
    await page.getByText("matters for: allergy to egg").first().waitFor();
    await button(page, "Show the kitchen card").click();
    const card = page.locator(".kitchen-card");
    await card.getByText("eggs and products thereof").waitFor();
    await page.getByLabel("Language of the card").selectOption("fr");
    await card.getByText("J'ai une ALLERGIE alimentaire à : œufs et produits à base d'œufs.").waitFor();
    expect(await card.getAttribute("lang")).toBe("fr");
    await card.getByText("Cette carte est une aide, pas une garantie.").waitFor();
    await page.reload();
    await card.getByText(/œufs/).waitFor();
    await button(page, "Back").click();
    await heading(page, "What is on the plate?").waitFor();
  });

  it("can be taken out again, and brought back by Undo", async () => {
    const page = await open(await freshPhone(), "#/you");
    await addAllergy(page, "egg", "serious");
    await page.locator(".allergy").click();
    await button(page, "Remove").click();
    await page.getByText("None entered.").waitFor();
    await button(page, "Undo").click();
    await page.locator(".allergy").getByText("serious").waitFor();
    await page.reload();
    await page.locator(".allergy").getByText("egg", { exact: true }).waitFor();
  });

  it("reaches the other tab, which then warns too", async () => {
    const context = await freshPhone();
    const other = await open(context, "#/plate");
    await other.getByLabel("Dish", { exact: true }).fill("spaghetti carbonara");
    await other.getByText("Say under You what you avoid").waitFor();
    const page = await open(context, "#/you");
    await addAllergy(page, "egg", "serious");
    await other.getByText(/contains egg/).waitFor();
  });

  it("is not shown as kept when the phone refused it", async () => {
    const context = await freshPhone();
    const page = await open(context, "#/you/diet");
    const vegan = page.getByLabel("vegan", { exact: true });
    await vegan.waitFor();
    await page.evaluate(
      () => new Promise((settle) => (indexedDB.deleteDatabase("nidor").onsuccess = settle)),
    );
    await vegan.click();
    await page.getByText(/^Not kept\./).waitFor();
    await expect.poll(() => vegan.isChecked()).toBe(false);
  });

  it("is told as lost on Plate, strongly and in front, until it is entered again", async () => {
    const page = await open(await freshPhone(), "#/you/diet");
    await page.getByLabel("vegan", { exact: true }).check();
    await kept(page).toContainEqual(expect.objectContaining({ diet: expect.anything() }));
    await page.evaluate(
      () =>
        new Promise((settle) => {
          const request = indexedDB.open("nidor");
          request.onsuccess = () => {
            const work = request.result.transaction("settings", "readwrite");
            const value = { diet: { allergies: "egg" }, changedAt: "2026-11-25T19:00:00.000Z" };
            work.objectStore("settings").put({ id: "settings", bucket: "all", atMs: 0, demo: 0, value });
            work.oncomplete = () => {
              request.result.close();
              settle(undefined);
            };
          };
        }),
    );
    await visit(page, "#/plate");
    await page.reload();
    const lost = page.locator(".notice--strong", { hasText: "could not be read" });
    await lost.waitFor();
    await visit(page, "#/you/settings");
    await page.getByRole("radio", { name: "dark" }).check();
    await expect.poll(() => page.locator("html").getAttribute("data-theme")).toBe("dark");
    await visit(page, "#/plate");
    await page.reload();
    await lost.waitFor();
    await visit(page, "#/you/diet");
    await page.getByLabel("vegan", { exact: true }).check();
    await visit(page, "#/plate");
    await heading(page, "What is on the plate?").waitFor();
    await lost.waitFor({ state: "detached" });
  });
});

describe("how the app looks and speaks", () => {
  it("switches its words to German and back, and keeps that", async () => {
    const page = await open(await freshPhone(), "#/you/settings");
    const place = (name: string) => page.getByRole("navigation").getByText(name, { exact: true });
    await place("Plate").waitFor();
    await page.getByRole("radio", { name: "Deutsch" }).check();
    await place("Teller").waitFor();
    expect(await page.locator("html").getAttribute("lang")).toBe("de");
    await page.reload();
    await place("Mahlzeiten").waitFor();
    await page.getByRole("radio", { name: "English" }).check();
    await place("Meals").waitFor();
  });

  it("speaks German at once on a phone that prefers it", async () => {
    const page = await open(await freshPhone({ locale: "de-AT" }), "#/plate");
    await page.getByRole("navigation").getByText("Teller", { exact: true }).waitFor();
  });

  it("names the legal list in force and its date", async () => {
    const page = await open(await freshPhone(), "#/you/settings");
    await page.getByLabel("Legal allergen list").selectOption("JP");
    const { instrument, date } = ALLERGEN_LISTS.JP;
    await page.getByText(`${instrument}, ${date}`).waitFor();
    await kept(page).toContainEqual(
      expect.objectContaining({ diet: expect.objectContaining({ jurisdiction: "JP" }) }),
    );
  });

  it("says in every place that nothing can be kept where the browser has no storage", async () => {
    const context = await freshPhone();
    await context.addInitScript(() => Object.defineProperty(window, "indexedDB", { value: undefined }));
    const page = await open(context, "#/plate");
    for (const place of ["plate", "meals", "nose", "you"]) {
      await visit(page, `#/${place}`);
      await page.locator(".notice--strong", { hasText: "when this page closes, all is gone" }).waitFor();
    }
  });
});
