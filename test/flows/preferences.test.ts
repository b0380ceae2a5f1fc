import fc from "fast-check";
import { expect, it } from "vitest";
import { emptyProfile, type DietProfile } from "../../src/diet/profile.js";
import { USUAL_ACCEPTED_MISS_RATE } from "../../src/flows/preferences.js";
import { readPreferences } from "../../src/flows/readPreferences.js";

const profile: DietProfile = {
  ...emptyProfile("UK"),
  diets: ["eatsFishNoMeat"],
  avoidedGroups: ["meat"],
  allergies: [{ allergen: "peanut", severity: "lifeThreatening", note: "carries adrenaline" }],
};

it("reads back what was chosen", () => {
  const kept = {
    diet: profile,
    acceptedMissRate: 0.05,
    theme: "dark",
    language: "de",
    vibration: false,
    demoDropped: true,
    changedAt: null,
  };
  expect(readPreferences(kept)).toEqual({
    preferences: {
      profile,
      acceptedMissRate: 0.05,
      theme: "dark",
      language: "de",
      vibration: false,
      demoDropped: true,
    },
    profileLost: false,
  });
});

it("starts with an empty diet and the usual miss rate", () => {
  const { preferences, profileLost } = readPreferences({});
  expect(preferences).toMatchObject({
    acceptedMissRate: USUAL_ACCEPTED_MISS_RATE,
    theme: "system",
    language: null,
  });
  expect(profileLost).toBe(false);
});

it("says so when a kept allergy cannot be read, and does not pass it over", () => {
  expect(readPreferences({ diet: { ...profile, allergies: "peanut" } }).profileLost).toBe(true);
  expect(readPreferences({ diet: { ...profile, allergies: [{ severity: "mild" }] } }).profileLost).toBe(true);
});

it.each([
  ["a diet it does not know", { diets: ["eatsFishNoMeat", "lunar"] }],
  ["a group it does not know", { avoidedGroups: ["meat", "moon"] }],
  ["a coeliac disease that is neither yes nor no", { coeliac: "yes" }],
  ["an intolerance that is no text", { intolerances: [3] }],
])("says so when %s was kept", (_what, change) => {
  expect(readPreferences({ diet: { ...profile, ...change } }).profileLost).toBe(true);
});

it("takes an allergy of unknown severity as unknown, and keeps it", () => {
  const read = readPreferences({
    diet: { ...profile, allergies: [{ allergen: "egg", severity: "slight" }] },
  });
  expect(read.preferences.profile.allergies).toEqual([{ allergen: "egg", severity: "unknown", note: "" }]);
});

it("never throws and never gives a miss rate outside 0 to 1, whatever was kept", () => {
  const anything = fc.record({ diet: fc.anything(), acceptedMissRate: fc.anything(), theme: fc.anything() });
  fc.assert(
    fc.property(anything, (kept) => {
      const { acceptedMissRate } = readPreferences(kept).preferences;
      expect(acceptedMissRate > 0 && acceptedMissRate < 1).toBe(true);
    }),
  );
});
