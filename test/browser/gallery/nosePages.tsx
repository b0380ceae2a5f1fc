import type { ActiveNose, TeachState } from "../../../src/flows/teachState.js";
import type { Nose } from "../../../src/nose/nose.js";
import type { RefreshNeed } from "../../../src/nose/refreshNeed.js";
import { FitnessScreen } from "../../../src/screens/FitnessScreen.js";
import { KnownSniffersScreen } from "../../../src/screens/KnownSniffersScreen.js";
import { KeepSampleScreen } from "../../../src/screens/KeepSampleScreen.js";
import { NoseHomeActions, NoseHomeScreen } from "../../../src/screens/NoseHomeScreen.js";
import { NoseReportScreen } from "../../../src/screens/NoseReportScreen.js";
import { FormActions } from "../../../src/screens/parts/FormActions.js";
import { FaultsOn, PracticeActions, PracticeScreen } from "../../../src/screens/PracticeScreen.js";
import { SamplesScreen } from "../../../src/screens/SamplesScreen.js";
import { TeachActions, TeachScreen } from "../../../src/screens/TeachScreen.js";
import { TransferActions, TransferScreen } from "../../../src/screens/TransferScreen.js";
import { VersionsScreen } from "../../../src/screens/VersionsScreen.js";
import { LiveActions, LiveScreen, type LiveCalls } from "../../../src/screens/LiveScreen.js";
import { startTraceLoop } from "../../../src/app/nose/traceLoop.js";
import { beginSweeps } from "../../../src/profile/assembleSweeps.js";
import { createTraceRing } from "../../../src/sniff/traceRing.js";
import { liveView, type LiveState } from "../../../src/views/liveView.js";
import { fitnessView, type FitnessState } from "../../../src/views/fitnessView.js";
import { knownSniffersView, type KnownSniffersState } from "../../../src/views/knownSniffersView.js";
import { keepSampleView } from "../../../src/views/keepSampleView.js";
import { noseHomeView } from "../../../src/views/noseHomeView.js";
import { noseReportView } from "../../../src/views/noseReportView.js";
import { faultsOnView, practiceView } from "../../../src/views/practiceView.js";
import { samplesView } from "../../../src/views/samplesView.js";
import type { SampleNote } from "../../../src/views/samplesView.js";
import { teachView, type TeachPageState } from "../../../src/views/teachView.js";
import { transferView, type TransferOutcome, type TransferPlate } from "../../../src/views/transferView.js";
import { versionsView, type VersionsState } from "../../../src/views/versionsView.js";
import {
  COMPARED,
  NEW_NOSE,
  NOSE,
  OLD_NOSE,
  REFRESH_NEED,
  REFRESHED,
  SAMPLES,
  SOUND_CHECKS,
} from "./fixtures/noses.js";
import type { PracticeFault } from "../../../src/kernel/practiceFault.js";
import type { SnifferState } from "../../../src/flows/snifferState.js";
import { SNIFFER_CONTEXT } from "./fixtures/plates.js";
import { FAULTY, READY, SNIFFER, VIRTUAL } from "./fixtures/sniffers.js";
import { NOW_MS } from "./fixtures/words.js";
import { noCalls } from "./noCalls.js";
import { EVERY_SUGGESTION } from "./fixtures/meals.js";
import type { Page } from "./page.js";

const nothing = () => undefined;

const home =
  (active: ActiveNose, refresh: RefreshNeed | null = null): Page =>
  (words) => {
    const state = {
      active,
      samples: 30,
      acceptedMissRate: 0.05,
      groups: ["meat", "egg"],
      nowMs: NOW_MS,
      shown: [
        { group: "meat", misses: 1, plates: 82 },
        { group: "fish", misses: 0, plates: 24 },
      ],
      refresh,
    };
    const view = noseHomeView(state, words);
    return {
      place: "nose",
      body: <NoseHomeScreen view={view} onOpen={nothing} onRefresh={nothing} />,
      actions: <NoseHomeActions label={view.teach} onTeach={nothing} />,
    };
  };

const samples =
  (kept: readonly SampleNote[]): Page =>
  (words) => {
    const state = {
      samples: kept,
      demoIsIn: kept.length > 0,
      shown: 12,
      groups: ["meat", "fish"],
      acceptedMissRate: 0.05,
      suggestions: kept.length === 0 ? [] : EVERY_SUGGESTION,
    };
    return {
      place: "nose",
      body: (
        <SamplesScreen view={samplesView(state, words)} calls={noCalls()} hrefOf={(id) => `#/meals/${id}`} />
      ),
    };
  };

const keep: Page = (words) => {
  const view = keepSampleView(
    { dish: "Pork dumplings", truths: {}, groups: ["meat", "fish", "egg"], samePlate: false },
    words,
  );
  return {
    place: null,
    body: <KeepSampleScreen view={view} calls={noCalls()} />,
    actions: (
      <FormActions
        save={view.save}
        cancel={view.cancel}
        blocked={view.blocked !== null}
        onSave={nothing}
        onCancel={nothing}
      />
    ),
  };
};

const teach =
  (teaching: TeachState, other: Partial<TeachPageState> = {}): Page =>
  (words) => {
    const state = {
      samples: 30,
      plates: 30,
      refresh: null,
      how: "anew",
      connectedSniffer: null,
      acceptedMissRate: 0.1,
    } as const;
    const view = teachView({ teaching, name: "After the second week", ...state, ...other }, words);
    return {
      place: "nose",
      body: <TeachScreen view={view} calls={noCalls()} />,
      actions: <TeachActions view={view.body} calls={noCalls()} />,
    };
  };

const RUNNING = {
  kind: "teaching",
  done: null,
  stage: "teaching",
  refresh: false,
  cancelling: false,
} as const;
const PROPOSED = { kind: "proposed", nose: NEW_NOSE, before: NOSE, source: "taught", compared: [] } as const;

const VERSIONS: VersionsState = {
  noses: [
    { ...NEW_NOSE, demo: false },
    { ...NOSE, demo: true },
  ],
  activeId: "nose-1",
  decisions: [
    { noseId: "nose-2", decision: "taught", at: "2026-11-25T18:00:00Z" },
    { noseId: "nose-1", decision: "accepted", at: "2026-11-22T10:00:00Z" },
  ],
  fault: null,
  brought: null,
};

const versions =
  (state: Partial<VersionsState>): Page =>
  (words) => ({
    place: "nose",
    body: <VersionsScreen view={versionsView({ ...VERSIONS, ...state }, words)} calls={noCalls()} />,
  });

const report =
  (nose: Nose): Page =>
  (words) => ({
    place: "nose",
    body: <NoseReportScreen view={noseReportView(nose, words)} onBack={nothing} />,
  });

const READINGS = [0.6, 0.9, 0.7, 1.1, 0.8, 1.4, 1.9, 2.6].map((score, i) => ({
  at: `2026-11-${10 + i}T09:00:00Z`,
  score,
}));

const fitness =
  (state: Partial<FitnessState>): Page =>
  (words) => {
    const jar = { readings: READINGS, inControl: false, limit: 2.2 };
    const all = { sniffer: READY, cleanAirAt: "2026-11-25T18:35:00Z", jar, nowMs: NOW_MS, ...state };
    return { place: "nose", body: <FitnessScreen view={fitnessView(all, words)} calls={noCalls()} /> };
  };

const knownSniffers =
  (state: Partial<KnownSniffersState>): Page =>
  (words) => {
    const all = [
      {
        snifferId: "00000000000000a1",
        deviceId: "d1",
        name: "Sniffer A1",
        lastSeenAt: "2026-11-25T18:39:50Z",
      },
      { snifferId: null, deviceId: "d2", name: "Kitchen board", lastSeenAt: null },
      { snifferId: "00000000000000c3", deviceId: null, name: "Old one", lastSeenAt: "2026-10-02T10:00:00Z" },
    ];
    const whole = { ...SNIFFER_CONTEXT, sniffer: READY, all, nowMs: NOW_MS, ...state };
    return {
      place: "nose",
      body: <KnownSniffersScreen view={knownSniffersView(whole, words)} calls={noCalls()} />,
    };
  };

const practice =
  (sniffer: SnifferState, ...chosen: readonly PracticeFault[]): Page =>
  (words) => {
    const view = practiceView({ ...SNIFFER_CONTEXT, sniffer, chosen }, words);
    const on = faultsOnView(chosen, false, words);
    return {
      place: "nose",
      body: (
        <>
          {on !== null && (
            <div class="stack frame-notices">
              <FaultsOn view={on} onAllOff={nothing} />
            </div>
          )}
          <PracticeScreen view={view} calls={noCalls()} />
        </>
      ),
      actions: <PracticeActions label={view.toPlate} onPlate={nothing} />,
    };
  };

/** Six channels over half a minute, one of them with a spike; for looking at only. */
const RING = createTraceRing(6);
for (let sweep = 0; sweep < 60; sweep += 1) {
  const rise = 1 - Math.exp(-Math.max(0, sweep - 20) / 12);
  RING.push(
    sweep * 500,
    [0, 1, 2, 3, 4, 5].map(
      (channel) => 5e4 * Math.exp(-rise * (0.1 + 0.13 * channel)) * (channel === 1 && sweep === 40 ? 1.3 : 1),
    ),
  );
}

const live =
  (state: Partial<LiveState>): Page =>
  (words) => {
    const channels = [180, 220, 260, 300, 340, null].map((heaterC) => ({ sensor: 0, heaterC, dwellMs: 300 }));
    const whole = {
      ...SNIFFER_CONTEXT,
      sniffer: READY,
      channels,
      ring: RING,
      windowMs: 60_000,
      ...state,
    } as const;
    const view = liveView(whole, words);
    const source = { window: () => whole.ring?.windows.get(60_000) ?? null, onSweep: () => nothing };
    const calls: LiveCalls = {
      onBack: nothing,
      onSniffer: nothing,
      onWindow: nothing,
      onCanvas: (canvas) => startTraceLoop(canvas, source),
    };
    return {
      place: "nose",
      body: <LiveScreen view={view} calls={calls} />,
      actions: <LiveActions view={view.listen} onListen={nothing} />,
    };
  };

const GAIN = { before: 0.61, after: 0.33, factor: 1.72, low: 1.31, high: 2.26 };
const PLATES: readonly TransferPlate[] = [
  { plate: "a", dish: "Clear beef broth with rice noodles", on: "both" },
  { plate: "b", dish: "Steamed river fish with ginger", on: "both" },
  { plate: "c", dish: "Prawn dumplings in a thin skin", on: "onlySecond" },
  { plate: "d", dish: "", on: "onlyFirst" },
];

const transfer =
  (outcome: TransferOutcome, plates = PLATES): Page =>
  (words) => {
    const isNone = outcome.kind === "noNose";
    const view = transferView(
      {
        noseName: isNone ? null : NOSE.name,
        taughtOn: isNone ? null : "Sniffer A1",
        connected: outcome.kind === "noSniffer" ? null : "Kitchen board",
        plates,
        jarReadings: plates.length === 0 ? 0 : 3,
        outcome,
      },
      words,
    );
    return {
      place: "nose",
      body: <TransferScreen view={view} onBack={nothing} />,
      actions: <TransferActions view={view} calls={noCalls()} />,
    };
  };

export const NOSE_PAGES: Readonly<Record<string, Page>> = {
  "nose-ready": home({ kind: "ready", nose: NOSE, demo: true }),
  "nose-due": home({ kind: "ready", nose: NOSE, demo: false }, REFRESH_NEED),
  "nose-none": home({ kind: "none" }),
  "nose-loading": home({ kind: "loading" }),
  "nose-unreadable": home({ kind: "unreadable", detail: "other format" }),
  "nose-practice": practice(VIRTUAL, "stuck", "steam", "poisoned"),
  "nose-practice-off": practice({ kind: "none" }),
  "nose-practice-real": practice(READY),
  "nose-samples": samples(SAMPLES),
  "nose-samples-empty": samples([]),
  "nose-keep": keep,
  "nose-teach-idle": teach({ kind: "idle" }),
  "nose-teach-none": teach({ kind: "idle" }, { samples: 0, plates: 0 }),
  "nose-teach-refresh": teach({ kind: "idle" }, { refresh: REFRESH_NEED, how: "refresh" }),
  "nose-teach-too-few-fresh": teach({ kind: "idle" }, { refresh: { ...REFRESH_NEED, freshPlates: 1 } }),
  "nose-teach-running": teach({ ...RUNNING, done: 0.42 }),
  "nose-teach-checks": teach({ ...RUNNING, stage: "checks", done: 0.7 }),
  "nose-teach-comparing": teach({ kind: "comparing" }),
  "nose-teach-proposed": teach({ ...PROPOSED, compared: COMPARED }),
  "nose-teach-proposed-apart": teach({ ...PROPOSED, source: "file" }, { connectedSniffer: "other" }),
  "nose-teach-refreshed": teach({ ...PROPOSED, nose: REFRESHED, source: "refreshed" }),
  "nose-put-back": teach({ ...PROPOSED, source: "version", compared: COMPARED }),
  "nose-teach-problem": teach({
    kind: "problem",
    problem: { kind: "workerCrashed", detail: "out of memory" },
  }),
  "nose-versions": versions({}),
  "nose-versions-fault": versions({
    fault: { kind: "badField", field: "groups.0.truth", detail: "" },
    brought: { samples: 41, faults: [{ line: 7, field: "headspace.ohm.3", cause: "must be positive" }] },
  }),
  "nose-sniffers": knownSniffers({}),
  "nose-sniffers-none": knownSniffers({ all: [], sniffer: { kind: "none" } }),
  "nose-transfer-none": transfer({ kind: "noNose" }, []),
  "nose-transfer-no-sniffer": transfer({ kind: "noSniffer" }, []),
  "nose-transfer-same": transfer({ kind: "sameSniffer" }, []),
  "nose-transfer-channels": transfer({ kind: "otherChannels" }, []),
  "nose-transfer-again": transfer({ kind: "alreadyMoved" }, []),
  "nose-transfer-working": transfer({ kind: "working", done: 0.4 }),
  "nose-transfer-stopped": transfer({ kind: "stopped" }),
  "nose-transfer-crashed": transfer({ kind: "workerCrashed", detail: "out of memory" }),
  "nose-transfer-few": transfer({ kind: "tooFewPairs", more: 3 }),
  "nose-transfer-no-gain": transfer({ kind: "noGain", gain: GAIN, more: 4 }),
  "nose-transfer-moved": transfer({ kind: "moved", gain: GAIN, evidencePlates: 23 }),
  "nose-report": report(NOSE),
  "nose-report-sound": report({ ...NOSE, report: { ...NOSE.report, sampleChecks: SOUND_CHECKS } }),
  "nose-report-old": report(OLD_NOSE),
  "nose-live": live({}),
  "nose-live-listening": live({
    sniffer: { kind: "ready", sniffer: { ...SNIFFER, assembly: beginSweeps(1, 6) } },
  }),
  "nose-live-empty": live({ sniffer: { kind: "none" }, ring: null }),
  "nose-fitness": fitness({}),
  "nose-fitness-fault": fitness({ sniffer: FAULTY, jar: { readings: [], inControl: null, limit: null } }),
  "nose-fitness-none": fitness({ sniffer: { kind: "none" } }),
};
