// Which failing answers of the emulated peripheral are no fault: only those that a dropped link leaves without a question.
import { describe, expect, it } from "vitest";
import { watchLink } from "./linkWatch.js";

const refusal = "Failed to simulate characteristic response for operation type read";
const fails = (message: string) => () => Promise.reject(new Error(message));

describe("an answer that fails", () => {
  it("is a fault while the link stands, and before there ever was one", async () => {
    const link = watchLink();
    link.up();
    await expect(link.answer(link.now(), fails(refusal))).rejects.toThrow(refusal);
    expect(await link.answer(link.now(), () => Promise.resolve())).toBe(true);
  });

  it("is none once the link it was asked over is gone, though another may stand by then", async () => {
    const link = watchLink();
    link.up();
    const asked = link.now();
    link.down();
    expect(await link.answer(asked, fails(refusal))).toBe(false);
    link.up();
    expect(await link.answer(asked, fails(refusal))).toBe(false);
    await expect(link.answer(link.now(), fails(refusal))).rejects.toThrow(refusal);
  });

  it("is a fault over a dropped link too, where it failed for another reason", async () => {
    const link = watchLink();
    link.up();
    link.down();
    await expect(link.answer(link.now(), fails("Invalid parameters"))).rejects.toThrow("Invalid parameters");
    expect(await link.answer(link.now(), fails("Target page, context or browser has been closed"))).toBe(
      false,
    );
  });
});
