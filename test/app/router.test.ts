import fc from "fast-check";
import { expect, it } from "vitest";
import { hashOf, PLACES, routeOf } from "../../src/app/router.js";

it("leads to Plate when it does not know the address", () => {
  for (const hash of ["", "#", "#/", "#/elsewhere/1", "#/%E0%A4%A"]) {
    expect(routeOf(hash)).toEqual({ place: "plate", page: [] });
  }
});

it("finds its way back from every address it writes", () => {
  const part = fc.string({ minLength: 1 }).filter((text) => text.isWellFormed());
  fc.assert(
    fc.property(fc.constantFrom(...PLACES), fc.array(part), (place, page) => {
      expect(routeOf(hashOf(place, ...page))).toEqual({ place, page });
    }),
  );
});
