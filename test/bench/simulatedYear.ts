/** Twelve months of one sniffer: its films wear and are poisoned, seasons change the air; and a second sniffer beside it. */
import { findPlate } from "../../src/finding/findPlate.js";
import { jarScore, judgeJar } from "../../src/flows/checkJar.js";
import { seededRandom, shuffled, type RandomSource } from "../../src/kernel/random.js";
import type { Nose } from "../../src/nose/nose.js";
import type { Sniff } from "../../src/sniff/sniff.js";
import { NIGHT_MARKET, type Dish } from "../../src/virtual/dishes.js";
import { eveningAir, type RoomAir } from "../../src/virtual/roomAir.js";
import { simulateSniff } from "../../src/virtual/simulateSniff.js";
import { DEMO_LAYOUT } from "../../src/virtual/snifferState.js";
import { builtUnit, DEMO_UNIT, type UnitTraits } from "../../src/virtual/unit.js";

export const SECOND_ID = "5e0d1e0000000002";
export const MONTHS = 12;
const WEEKS_A_MONTH = 4;
const DAYS_A_WEEK = 7;
/** The demo samples end after twelve weeks; the year begins then. */
const FIRST_DAY = 84;
/** Poisoning begins with the fifth month: silicone from a new kitchen sealant, say. Invented. */
const POISONED_FROM_WEEK = 16;
const POISON_PER_DAY = 0.012;
/** Absolute humidity through the seasons: half as much again in summer, a third less in winter. Invented. */
const SEASON_SWING = 0.4;
const ACCEPTED_MISS_RATE = 0.1;

export interface Week {
  readonly week: number;
  readonly jar: number;
  /** The chart's word with this reading: null while it learns. */
  readonly inControl: boolean | null;
}

export interface Month {
  readonly month: number;
  readonly weeks: readonly Week[];
  readonly first: readonly Sniff[];
  /** The same plates under the second sniffer. */
  readonly second: readonly Sniff[];
}

export interface YearOptions {
  readonly seed: number;
  readonly platesAMonth: number;
  readonly months?: number;
  /** Poisoning on or off; on if left out. */
  readonly poisoned?: boolean;
}

/** Lives through the months; the same options give the same year. */
export function liveYear({ seed, platesAMonth, months = MONTHS, poisoned = true }: YearOptions): Month[] {
  const random = seededRandom(seed);
  const unit = builtUnit(random);
  const scores: number[] = [];
  return Array.from({ length: months }, (_, month) => {
    const weeks = Array.from({ length: WEEKS_A_MONTH }, (_w, of): Week => {
      const week = month * WEEKS_A_MONTH + of;
      scores.push(jarScore(sniffed({ ...jarOf(seed, week, random), poisoned, unit: null })) ?? Number.NaN);
      return { week: week + 1, jar: scores.at(-1)!, inControl: judgeJar(scores).inControl };
    });
    const plates = shuffled(NIGHT_MARKET, random).slice(0, platesAMonth);
    const served = plates.map((dish, i) => plateOf(dish, seed, month, i, random));
    return {
      month: month + 1,
      weeks,
      first: served.map((plate) => sniffed({ ...plate, poisoned, unit: null })),
      second: served.map((plate) => sniffed({ ...plate, poisoned, unit })),
    };
  });
}

interface ServedPlate {
  readonly dish: Dish;
  readonly week: number;
  readonly room: RoomAir;
  readonly seed: number;
  readonly plateSeed: number;
  readonly name: string;
}

/** The jar is always the same serving; only air, gusts and noise are new. */
function jarOf(seed: number, week: number, random: RandomSource): ServedPlate {
  const dish = NIGHT_MARKET.find(({ id }) => id === "wine-clams")!;
  const name = `year-${seed}-jar-${week}`;
  return { dish, week, room: seasonAir(week, random), seed: seed * 8192 + week, plateSeed: 1, name };
}

function plateOf(dish: Dish, seed: number, month: number, place: number, random: RandomSource): ServedPlate {
  const week = month * WEEKS_A_MONTH + (place % WEEKS_A_MONTH);
  const number = seed * 8192 + 1024 + (month * 64 + place) * 2;
  const name = `year-${seed}-${month}-${place}`;
  return { dish, week, room: seasonAir(week, random), seed: number, plateSeed: number, name };
}

function sniffed({
  dish,
  week,
  room,
  seed,
  plateSeed,
  name,
  poisoned,
  unit,
}: ServedPlate & { readonly poisoned: boolean; readonly unit: UnitTraits | null }): Sniff {
  const isSecond = unit !== null;
  const day = week * DAYS_A_WEEK;
  const age = FIRST_DAY + day;
  const poisonDays = poisoned && !isSecond ? Math.max(0, week - POISONED_FROM_WEEK) * DAYS_A_WEEK : 0;
  return simulateSniff({
    seed: isSecond ? seed + 1 : seed,
    plateSeed,
    unit: unit ?? DEMO_UNIT,
    unitSeed: isSecond ? 2 : 1,
    layout: isSecond ? { ...DEMO_LAYOUT, snifferId: SECOND_ID } : DEMO_LAYOUT,
    // The second one lies new in a drawer until it is needed.
    ageDays: isSecond ? 0 : age,
    faults: { sensitivityLossPerDay: isSecond ? 0 : (POISON_PER_DAY * poisonDays) / age },
    dish,
    room,
    cleanAirMs: 30_000,
    headspaceMs: 90_000,
    takenAt: new Date(Date.parse("2026-11-01T18:00:00Z") + day * 86_400_000).toISOString(),
    id: `${name}-${isSecond ? 2 : 1}`,
    plate: name,
    occasion: `year-week-${week}`,
  });
}

/** An evening's air, drier in winter and wetter in summer; the year begins in November. */
function seasonAir(week: number, random: RandomSource): RoomAir {
  const air = eveningAir(random);
  const season = -Math.cos((2 * Math.PI * (week - 10)) / 52);
  return { ...air, absoluteHumidityGm3: air.absoluteHumidityGm3 * (1 + SEASON_SWING * season) };
}

/** What a nose claimed of some plates: findings that are not uncertain, and how many of them were wrong. */
export interface Claims {
  readonly claims: number;
  readonly wrong: number;
  readonly answers: number;
}

/** Counts over all groups of known truth. */
export function claimsOf(nose: Nose, sniffs: readonly Sniff[], inControl: boolean | null = null): Claims {
  const groups = nose.groups.map(({ name }) => name);
  const control = inControl === null ? {} : { snifferInControl: inControl };
  const request = { groups, acceptedMissRate: ACCEPTED_MISS_RATE, allergyGroups: [], ...control };
  let [claims, wrong, answers] = [0, 0, 0];
  for (const sniff of sniffs)
    for (const { group, verdict } of findPlate(nose, sniff, request).groups) {
      const truth = sniff.groups[group];
      if (truth !== "present" && truth !== "absent") continue;
      answers += 1;
      if (verdict === "uncertain") continue;
      claims += 1;
      if ((verdict === "smelled") !== (truth === "present")) wrong += 1;
    }
  return { claims, wrong, answers };
}

/** The chart's word over a month: out of control from its first alarm in it on. */
export function chartOver({ weeks }: Month): {
  readonly inControl: boolean | null;
  readonly alarmWeek: number | null;
} {
  const alarm = weeks.find(({ inControl }) => inControl === false);
  return {
    inControl: alarm === undefined ? (weeks.at(-1)?.inControl ?? null) : false,
    alarmWeek: alarm?.week ?? null,
  };
}
