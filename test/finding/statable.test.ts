// What a nose can say at all. Counted by hand: 0.9^28 = 0.0523 is above 0.05 and 0.9^29 = 0.0471 below, so 29 plates
// without a miss show 10 % (Clopper and Pearson, Biometrika 26 (1934), 404). An error of 10 % takes 9 plates without the
// group beside the plate in question, 1 / (9 + 1), in the four folds of five that the plate is not in: of 10 plates 8 are
// left whichever fold is left out, of 11 at most folds 9.
import { expect, it } from "vitest";
import { statable } from "../../src/finding/statable.js";
import { handMadeNose } from "./handMadeNose.js";

const nose = (present: number, absent: number) =>
  handMadeNose({ present: Array<number>(present).fill(6), absent: Array<number>(absent).fill(-6) });

it("says not smelled from the plate on that shows the accepted rate", () => {
  expect(statable(nose(28, 20), 0.1).notSmelled).toEqual([]);
  expect(statable(nose(29, 20), 0.1).notSmelled).toEqual(["meat"]);
  expect(statable(nose(29, 20), 0.05).notSmelled).toEqual([]);
});

it("says smelled only with nine plates without the group beside the fold in question", () => {
  expect(statable(nose(29, 10), 0.1).smelled).toEqual([]);
  expect(statable(nose(29, 11), 0.1).smelled).toEqual(["meat"]);
});

it("says nothing of a group that was never tried", () => {
  expect(statable(nose(0, 0), 0.1)).toEqual({ smelled: [], notSmelled: [] });
});
