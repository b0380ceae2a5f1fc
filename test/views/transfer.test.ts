import { expect, it } from "vitest";
import { transferView } from "../../src/views/transferView.js";
import { ENGLISH } from "../browser/gallery/fixtures/words.js";

it("never shows a plate by its inner name: without a dish it says so", () => {
  const { pairs } = transferView(
    {
      noseName: "Market",
      taughtOn: "A",
      connected: "B",
      plates: [
        { plate: "p-1", dish: "Clear broth", on: "both" },
        { plate: "p-2", dish: "", on: "onlyFirst" },
      ],
      jarReadings: 0,
      outcome: { kind: "stopped" },
    },
    ENGLISH,
  );
  expect(pairs.rows.map(({ dish }) => dish)).toEqual(["Clear broth", "Dish not named"]);
});
