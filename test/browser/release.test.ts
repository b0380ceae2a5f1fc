// The way back to clean air after a plate, over real `navigator.bluetooth` calls; the numbers are the virtual sniffer's.
import { expect, it } from "vitest";
import { beginOverPlate, button, heading, keptSniffs, pair, type LossTable } from "./lossTable.js";
import { useLossTables } from "./useLossTables.js";

/** A purge takes a second at the pace of the test, on a machine that does other things as well. */
const PATIENCE = { timeout: 20_000 };

const lay = useLossTables();

/** A finding on the screen, and the plate still under the sniffer: it cannot come back. */
async function foundOverPlate(): Promise<LossTable> {
  const table = await lay();
  await pair(table);
  await beginOverPlate(table, "rib-broth");
  await button(table.page, "Save as a meal").waitFor();
  return table;
}

const release = ({ page }: LossTable) => page.locator("[data-release]");
const commands = ({ peripheral }: LossTable) =>
  peripheral.log.filter((entry) => entry.startsWith("write 0004")).map((entry) => entry.slice(11, 13));
const begun = (at: LossTable) => commands(at).filter((command) => command === "01").length;

it("is followed on the finding and on Plate until it is over, and changes nothing of the finding", async () => {
  const at = await foundOverPlate();
  const { page, sniffer } = at;
  const found = () => page.locator("article[data-group]").allTextContents();
  const before = await found();
  await expect.poll(() => keptSniffs(page), PATIENCE).toHaveLength(1);
  const kept = await keptSniffs(page);
  await release(at)
    .filter({ hasText: /still clearing/i })
    .waitFor();
  // The purge was let end by itself: only then sweeps are asked for, in a run of their own.
  await expect.poll(() => begun(at), PATIENCE).toBe(2);
  expect(commands(at).slice(commands(at).indexOf("03"))).toEqual(["03", "02", "01"]);
  await page.getByText(/hides part of the next/).waitFor();
  sniffer.serveDish(null);
  await release(at)
    .filter({ hasText: /back in clean air in about \d+\s(s|min)/ })
    .waitFor();
  expect(await found()).toEqual(before);
  await button(page, "Done").click();
  await heading(page, "What is on the plate?").waitFor();
  await release(at)
    .filter({ hasText: /^Back in clean air$/ })
    .waitFor();
  expect(await page.getByText(/hides part of the next/).count()).toBe(0);
  await expect.poll(() => commands(at).at(-1), PATIENCE).toBe("02");
  expect(await keptSniffs(page)).toEqual(kept);
});

it("lets the next check begin before it is back, with what that costs said before the start", async () => {
  const at = await foundOverPlate();
  await expect.poll(() => begun(at), PATIENCE).toBe(2);
  await button(at.page, "Done").click();
  await at.page.getByText(/hides part of the next/).waitFor();
  at.sniffer.serveDish(null);
  await button(at.page, "Check this plate").click();
  await heading(at.page, "The air is steady").waitFor();
  expect(begun(at)).toBe(3);
  expect(await release(at).count()).toBe(0);
});

it("ends quietly with the link, and does not leave the sniffer measuring for nobody", async () => {
  const at = await foundOverPlate();
  await expect.poll(() => begun(at), PATIENCE).toBe(2);
  await at.lose();
  await release(at).waitFor({ state: "detached" });
  await button(at.page, "Save as a meal").waitFor();
  const before = commands(at).length;
  await at.comeBackAfter(4000);
  await expect.poll(() => commands(at).slice(before), PATIENCE).toEqual(["02"]);
  expect(await release(at).count()).toBe(0);
});
