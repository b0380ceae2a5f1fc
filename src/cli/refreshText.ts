import type { Nose } from "../nose/nose.js";
import type { GroupComparison, PairedRate } from "../nose/report.js";
import { rateText } from "./assessText.js";

/** What a refresh brought, as plain text. */
export function refreshText(nose: Nose): string {
  const { refresh } = nose.report;
  if (refresh === undefined) return `${nose.name}: not refreshed\n`;
  const lines = [
    `${nose.name}: ${refresh.of.name} brought up to date with ${refresh.freshPlates} fresh plates; ` +
      `${nose.platesTaught} plates in all`,
    `Gain on the fresh plates, each judged by a nose that had not met it (${refresh.folds} parts)`,
    ...(refresh.gain.length === 0 ? [] : [`  ${totalText(refresh.gain)}`]),
    ...refresh.gain.flatMap(groupLines),
    ...(refresh.gain.length === 0 ? ["  no fresh plate could be judged by both"] : []),
  ];
  return `${lines.join("\n")}\n`;
}

/** All groups together, each plate counted once for each group that is known of it. */
function totalText(gain: readonly GroupComparison[]): string {
  const sum = (count: (rate: PairedRate) => number) =>
    gain.reduce((all, { found, quiet }) => all + count(found) + count(quiet), 0);
  const answers = sum(({ older }) => older.trials);
  const loss = (of: (one: GroupComparison) => number) =>
    (gain.reduce((all, one) => all + of(one), 0) / gain.length).toFixed(3);
  return (
    `all groups: right ${sum(({ older }) => older.events)} of ${answers} before, ` +
    `${sum(({ newer }) => newer.events)} after; mean log loss ${loss(({ olderLogLoss }) => olderLogLoss)} before, ` +
    `${loss(({ newerLogLoss }) => newerLogLoss)} after`
  );
}

function groupLines({ group, plates, olderLogLoss, newerLogLoss, found, quiet }: GroupComparison): string[] {
  return [
    `${group}: ${plates} fresh plates, log loss ${olderLogLoss.toFixed(3)} before, ${newerLogLoss.toFixed(3)} after`,
    ...pairLines("right where it was there", found),
    ...pairLines("right where it was not", quiet),
  ];
}

function pairLines(what: string, { older, newer, onlyOlder, onlyNewer, p }: PairedRate): string[] {
  if (older.trials === 0) return [`  ${what}: no such plate`];
  return [
    `  ${what}: before ${rateText(older)}`,
    `  ${" ".repeat(what.length)}  after  ${rateText(newer)}`,
    `  ${" ".repeat(what.length)}  ${onlyNewer} only after, ${onlyOlder} only before, McNemar p ${p.toFixed(3)}`,
  ];
}
