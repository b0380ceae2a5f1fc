/** What each touch on Plate does, before a check. */
import type { PlateHomeCalls } from "../screens/PlateHomeScreen.js";
import { BELIEFS, SURPRISE, type BeliefId } from "../views/plateHomeView.js";
import type { AppModel } from "./appModel.js";
import { snifferCalls } from "./snifferCalls.js";

export function plateHomeCalls(app: AppModel): PlateHomeCalls {
  const { plate } = app;
  return {
    onSniffer: snifferCalls(app),
    onDish: (dish) => {
      plate.dish.value = dish;
    },
    onSuggestion: (dish) => {
      plate.dish.value = dish;
    },
    onClaim: (claim, chosen) => {
      const others = plate.claims.value.filter((known) => known !== claim);
      plate.claims.value = chosen ? [...others, claim] : others;
    },
    onKitchenCard: () => app.router.go("plate", "card"),
    onOpenYou: () => app.router.go("you"),
    onPracticeDish: (id) => {
      plate.practiceDish.value = id === SURPRISE ? null : id;
    },
    onBelief: (group, belief) => {
      const { [group]: _before, ...others } = plate.beliefs.value;
      const value = BELIEFS[belief as BeliefId];
      plate.beliefs.value = value === null ? others : { ...others, [group]: value };
    },
    onDraft: (what) => {
      const kept = app.drafts.sniff.value;
      if (kept === null) return;
      if (what === "use") app.check.send({ kind: "reopen", sniff: kept, finding: app.judge(kept) });
      void app.drafts.drop();
    },
    onCheck: app.beginCheck,
  };
}
