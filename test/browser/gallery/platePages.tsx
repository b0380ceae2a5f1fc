import { isClearing, NOT_FOLLOWING, type ReleaseState } from "../../../src/flows/releaseState.js";
import type { CheckState, InterruptCause } from "../../../src/flows/checkState.js";
import { CheckActions, CheckScreen } from "../../../src/screens/CheckScreen.js";
import { FindingActions, FindingScreen } from "../../../src/screens/FindingScreen.js";
import { releaseView } from "../../../src/views/releaseView.js";
import { ReleaseNote } from "../../../src/screens/parts/ReleaseNote.js";
import { PlateHomeActions, PlateHomeScreen } from "../../../src/screens/PlateHomeScreen.js";
import { checkView, type CheckContext } from "../../../src/views/checkView.js";
import { NOT_RECONNECTING, type Reconnecting } from "../../../src/views/reconnectView.js";
import { findingView, type FindingSubject } from "../../../src/views/findingView.js";
import { plateHomeView, type PlateHomeState } from "../../../src/views/plateHomeView.js";
import { standingView } from "../../../src/views/standingView.js";
import * as checks from "./fixtures/checks.js";
import * as found from "./fixtures/findings.js";
import { FILLED, FRESH } from "./fixtures/plates.js";
import * as releases from "./fixtures/releases.js";
import { PROFILE, spokenCautions } from "./fixtures/spokenCautions.js";
import * as sniffers from "./fixtures/sniffers.js";
import { NOW_MS } from "./fixtures/words.js";
import { noCalls } from "./noCalls.js";
import type { Page } from "./page.js";

/** The bar of the release, and whether it is on its way. */
function released(release: ReleaseState, words: Parameters<Page>[0]) {
  const view = releaseView(release, words);
  return { clearing: isClearing(release), note: view && <ReleaseNote view={view} /> };
}

const home =
  (state: PlateHomeState, release: ReleaseState = NOT_FOLLOWING): Page =>
  (words) => {
    const standing = state.hasProfile ? standingView(PROFILE, words) : [];
    const spoken = state.cautions.length === 0 ? {} : spokenCautions(state.claims, words);
    const view = plateHomeView({ ...state, ...spoken, standing }, words);
    const { clearing, note } = released(release, words);
    return {
      place: "plate",
      body: <PlateHomeScreen view={view} calls={noCalls()} />,
      actions: <PlateHomeActions view={view.check} clearing={clearing} onCheck={() => undefined} />,
      note,
    };
  };

const CONTEXT: CheckContext = {
  practice: true,
  isJar: false,
  practiceSpeed: 8,
  hasAllergy: false,
  acceptedMissRate: 0.05,
  likelyMs: 42_680,
  snifferLost: false,
  reconnecting: NOT_RECONNECTING,
  countdown: null,
};

const check =
  (state: CheckState, context: Partial<CheckContext> = {}): Page =>
  (words) => {
    const view = checkView(state, { ...CONTEXT, ...context }, words)!;
    return {
      place: null,
      body: <CheckScreen view={view} />,
      actions: <CheckActions view={view} calls={noCalls()} />,
    };
  };

const SUBJECT: Omit<FindingSubject, "dish" | "cautions"> = {
  allergyGroups: [],
  nowMs: NOW_MS,
  hasProfile: true,
  served: null,
};

const finding =
  (
    groups: Parameters<typeof found.plateFinding>,
    subject: Partial<FindingSubject> = {},
    release: ReleaseState = NOT_FOLLOWING,
  ): Page =>
  (words) => {
    const { dish, cautions } = spokenCautions([], words);
    const about = { ...SUBJECT, dish, cautions, ...subject };
    const view = findingView(found.plateFinding(...groups), about, words);
    const { clearing, note } = released(release, words);
    return {
      place: null,
      body: <FindingScreen view={view} />,
      actions: <FindingActions labels={view.labels} clearing={clearing} calls={noCalls()} />,
      note,
    };
  };

const interrupted = (cause: InterruptCause, usable: boolean, context: Partial<CheckContext> = {}) =>
  check(checks.interruptedBy(cause, usable), context);

const WAITING: Reconnecting = { state: { kind: "waiting", tries: 3, dueAtMs: 0 }, secondsLeft: 3 };
const GAVE_UP: Reconnecting = { state: { kind: "gaveUp", why: "bound" }, secondsLeft: null };
const KNOWN = [
  { deviceId: "d1", name: "Sniffer A1" },
  { deviceId: "d2", name: "Kitchen board" },
];

export const PLATE_PAGES: Readonly<Record<string, Page>> = {
  "plate-first": home(FRESH),
  "plate-no-bluetooth": home({ ...FRESH, bluetooth: false }),
  "plate-filled": home(FILLED),
  "plate-suggestions": home({
    ...FILLED,
    dish: "dump",
    suggestions: ["Dumplings", "Dumpling soup"],
    cautions: [],
    questions: [],
  }),
  "plate-connecting": home({ ...FILLED, sniffer: sniffers.CONNECTING }),
  "plate-low-battery": home({ ...FILLED, sniffer: sniffers.FAULTY }),
  "plate-known": home({ ...FILLED, sniffer: { kind: "none" }, known: KNOWN }),
  "plate-radio-off": home({ ...FILLED, sniffer: { kind: "none" }, radioOff: true }),
  "plate-lost": home({
    ...FILLED,
    sniffer: sniffers.LOST,
    reconnecting: WAITING,
    draftAt: "2026-11-25T18:31:00Z",
  }),
  "plate-lost-gave-up": home({ ...FILLED, sniffer: sniffers.LOST, reconnecting: GAVE_UP, known: KNOWN }),
  "plate-clearing": home(FILLED, releases.RELEASING),
  "plate-failed": home({ ...FILLED, sniffer: sniffers.FAILED }),
  "check-warming": check(checks.WARMING),
  "check-clean-air-start": check(checks.CLEAN_AIR_START),
  "check-clean-air-drift": check(checks.CLEAN_AIR_DRIFT, { practice: false }),
  "check-jar": check(checks.HEADSPACE, { isJar: true }),
  "check-over-plate": check(checks.OVER_PLATE, { hasAllergy: true, practice: false }),
  "check-count-down": check({ ...checks.OVER_PLATE, countingDown: true } as CheckState, { countdown: 3 }),
  "check-headspace": check(checks.HEADSPACE),
  "check-link-lost": interrupted("linkLost", true, { snifferLost: true, reconnecting: WAITING }),
  "check-gave-up": interrupted("linkLost", false, { snifferLost: true, reconnecting: GAVE_UP }),
  "check-refused": check(checks.interruptedBy("linkLost", true, "gapTooLong")),
  "check-never-steady": interrupted("neverSteady", false),
  "check-no-sweeps": interrupted("noSweeps", false),
  "finding-smelled": finding([found.SMELLED, found.NOT_SMELLED, found.UNCERTAIN]),
  "finding-not-smelled": finding([found.NOT_SMELLED]),
  "finding-uncertain": finding([found.UNCERTAIN], { cautions: [] }),
  "finding-allergy": finding([found.ALLERGY], { allergyGroups: ["egg"] }),
  "finding-no-nose": finding([found.NO_NOSE]),
  "finding-clearing": finding([found.NOT_SMELLED], {}, releases.RELEASING),
  "finding-stuck": finding([found.SMELLED], {}, releases.STUCK),
  "finding-practice": finding([found.SMELLED, found.NOT_SMELLED, found.UNCERTAIN], {
    served: { dishName: "Pork dumplings", groups: { meat: "present", fish: "absent", shellfish: "absent" } },
  }),
  "finding-every-reason": finding([{ ...found.UNCERTAIN, reasons: found.EVERY_REASON }]),
};
