// What each touch on the pages of You makes of a profile.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allergyDraft } from "../../src/app/you/allergyDraft.js";
import {
  splitIntolerances,
  withAllergy,
  withAvoidedGroup,
  withDiet,
  withIntolerances,
  withoutAllergy,
} from "../../src/app/you/profileEdits.js";
import * as tables from "../../src/app/you/youTables.js";
import { DIETS, emptyProfile, SEVERITIES, type Allergy } from "../../src/diet/profile.js";
import { FOOD_GROUPS } from "../../src/kernel/groups.js";

const NOTHING = emptyProfile("EU");
const allergy = (allergen: string, note = "", severity: Allergy["severity"] = "serious"): Allergy => ({
  allergen,
  severity,
  note,
});

describe("diets and groups", () => {
  it("puts each choice in once and takes it out again, whatever the order of the touches", () => {
    const touches = fc.array(fc.tuple(fc.constantFrom(...DIETS), fc.boolean()));
    fc.assert(
      fc.property(touches, (all) => {
        const made = all.reduce((now, [diet, on]) => withDiet(now, diet, on), NOTHING);
        const wanted = DIETS.filter((diet) => all.findLast(([touched]) => touched === diet)?.[1] === true);
        expect(made.diets).toEqual(wanted);
      }),
    );
    fc.assert(
      fc.property(fc.constantFrom(...FOOD_GROUPS), (group) => {
        const on = withAvoidedGroup(NOTHING, group, true);
        expect(on.avoidedGroups).toEqual([group]);
        expect(withAvoidedGroup(on, group, false)).toEqual(NOTHING);
      }),
    );
  });

  it("leaves a profile as it is for a choice that it does not know", () => {
    expect(withDiet(NOTHING, "breatharian", true)).toEqual(NOTHING);
  });
});

describe("intolerances", () => {
  it("keeps ticked ones and own words apart and both once", () => {
    const both = withIntolerances(NOTHING, ["lactose"], ["onion", "lactose", "onion"]);
    expect(both.intolerances).toEqual(["lactose", "onion"]);
    expect(splitIntolerances(both)).toEqual({ ticked: ["lactose"], own: ["onion"] });
  });

  it("never touches allergies or coeliac disease", () => {
    const before = { ...NOTHING, coeliac: true, allergies: [allergy("egg")] };
    const { allergies, coeliac } = withIntolerances(before, ["gluten"], []);
    expect({ allergies, coeliac }).toEqual({ allergies: before.allergies, coeliac: true });
  });
});

describe("allergies", () => {
  it("adds one at the end and changes one where it stands", () => {
    const two = withAllergy(withAllergy(NOTHING, -1, allergy("egg")), -1, allergy("fish"));
    expect(two.allergies.map(({ allergen }) => allergen)).toEqual(["egg", "fish"]);
    const changed = withAllergy(two, 0, allergy("milk"));
    expect(changed.allergies.map(({ allergen }) => allergen)).toEqual(["milk", "fish"]);
  });

  it("holds an allergen once, with what was said last; an older note stays if there is no new one", () => {
    const first = withAllergy(NOTHING, -1, allergy("egg", "pen in the bag", "mild"));
    const again = withAllergy(first, -1, allergy("egg", "", "lifeThreatening"));
    expect(again.allergies).toEqual([allergy("egg", "pen in the bag", "lifeThreatening")]);
    const two = withAllergy(again, -1, allergy("fish"));
    expect(withAllergy(two, 1, allergy("egg", "new")).allergies).toEqual([allergy("egg", "new")]);
  });

  it("never drops another allergen, whatever is added or changed", () => {
    const one = fc.record({
      allergen: fc.constantFrom("egg", "fish", "milk", "coriander"),
      severity: fc.constantFrom(...SEVERITIES),
      note: fc.string(),
    });
    fc.assert(
      fc.property(
        fc.uniqueArray(one, { selector: ({ allergen }) => allergen }),
        fc.nat(4),
        one,
        (list, at, put) => {
          const index = at < list.length ? at : -1;
          const made = withAllergy({ ...NOTHING, allergies: list }, index, put).allergies;
          const names = made.map(({ allergen }) => allergen);
          const others = list.filter((_, i) => i !== index).map(({ allergen }) => allergen);
          expect(new Set(names)).toEqual(new Set([...others, put.allergen]));
          expect(names).toHaveLength(new Set(names).size);
          expect(made.find(({ allergen }) => allergen === put.allergen)?.severity).toBe(put.severity);
        },
      ),
    );
  });

  it("takes one out and leaves the rest in their order", () => {
    const three = ["egg", "fish", "milk"].reduce((now, name) => withAllergy(now, -1, allergy(name)), NOTHING);
    expect(withoutAllergy(three, 1).allergies.map(({ allergen }) => allergen)).toEqual(["egg", "milk"]);
  });

  it("opens the form of a new one with the worst taken for granted, and of a kept one as it was kept", () => {
    expect(allergyDraft(undefined, tables)).toMatchObject({ choice: "", severity: "unknown", isNew: true });
    for (const kept of [allergy("egg", "a note", "mild"), allergy("Koriander", "", "lifeThreatening")]) {
      const draft = allergyDraft(kept, tables);
      expect(draft.isNew).toBe(false);
      const { severity, note } = draft;
      expect({ allergen: tables.chosenAllergen(draft), severity, note }).toEqual(kept);
    }
  });
});
