/** How fit the sniffer is, item by item: what its own words and its last sweeps show. */
import { framesPerSweep } from "../profile/sweepFrame.js";
import { dewMarginC, isHumidityStuck, WET_HUMIDITY_PCT } from "../sniff/airSensor.js";
import { LARGEST_OHM, LEAST_OHM, STUCK_SWEEPS } from "../sniff/quality.js";
import { STALE_CLEAN_AIR_MS } from "../sniff/staleCleanAir.js";
import { steadiness } from "../sniff/steadiness.js";
import { phaseOf } from "./gathered.js";
import { LOW_BATTERY_PCT } from "./lowBattery.js";
import type { ConnectedSniffer } from "./snifferState.js";
import { tellsFault } from "./tellsFault.js";

/** A heated oxide drifts most in its first two days; makers ask for one to several days. Common practice. */
export const BURN_IN_HOURS = 48;
/** Nearer to the dew point than this, a cool part of the sniffer gets wet. Common practice. */
export const DEW_MARGIN_C = 3;
/** More lost on the way than this is no longer the odd one. Common practice. */
export const MOST_FRAMES_LOST = 0.05;

/** `unknown`: not told, or nothing measured yet. `renewed`: past its time, and the next check puts it right by itself. */
export type Fit = "well" | "attention" | "renewed" | "unknown";

export interface Fitness {
  readonly burnIn: { readonly fit: Fit; readonly hours: number };
  readonly warmUp: { readonly fit: Fit; readonly leftMs: number };
  readonly cleanAir: { readonly fit: Fit; readonly ageMs: number };
  /** Largest change of ln R over the steady window. */
  readonly steadiness: { readonly fit: Fit; readonly drift: number };
  /** How far the coolest part of the sniffer is above the dew point of the air at it, in kelvin. */
  readonly humidity: { readonly fit: Fit; readonly marginC: number };
  /** Does the humidity stand still, and at what? */
  readonly airSensor: { readonly fit: Fit; readonly humidityPct: number };
  readonly battery: { readonly fit: Fit; readonly percent: number };
  /** Share of the notifications that never came or came damaged, since connecting. */
  readonly link: { readonly fit: Fit; readonly lostShare: number };
  readonly heater: { readonly fit: Fit };
  /** Stuck or at the ends of their range, counted from 0. */
  readonly channels: { readonly fit: Fit; readonly bad: readonly number[] };
}

/** @param cleanAirAgeMs - since the last steady clean air; null if there was none */
export function fitness(sniffer: ConnectedSniffer, cleanAirAgeMs: number | null): Fitness {
  const { status, batteryPct } = sniffer;
  return {
    burnIn: judged(status?.burnInHours ?? null, (hours) => hours >= BURN_IN_HOURS, "hours"),
    warmUp: {
      fit:
        status === null
          ? "unknown"
          : status.warmUpLeftMs > 0 || status.state === "cold"
            ? "attention"
            : "well",
      leftMs: status?.warmUpLeftMs ?? 0,
    },
    cleanAir: cleanAirOf(cleanAirAgeMs),
    steadiness: steadinessOf(sniffer),
    humidity: humidityOf(sniffer),
    airSensor: airSensorOf(sniffer),
    battery: judged(batteryPct, (percent) => percent >= LOW_BATTERY_PCT, "percent"),
    link: linkOf(sniffer),
    heater: { fit: status === null ? "unknown" : tellsFault(status) ? "attention" : "well" },
    channels: channelsOf(sniffer),
  };
}

function judged<Name extends string>(
  value: number | null,
  isWell: (value: number) => boolean,
  name: Name,
): { readonly fit: Fit } & Readonly<Record<Name, number>> {
  const fit: Fit = value === null ? "unknown" : isWell(value) ? "well" : "attention";
  return { fit, [name]: value ?? 0 } as { readonly fit: Fit } & Record<Name, number>;
}

function cleanAirOf(ageMs: number | null): Fitness["cleanAir"] {
  if (ageMs === null) return { fit: "unknown", ageMs: 0 };
  return { fit: ageMs <= STALE_CLEAN_AIR_MS ? "well" : "renewed", ageMs };
}

function steadinessOf({ recent }: ConnectedSniffer): Fitness["steadiness"] {
  const { steady, why, drift } = steadiness(phaseOf(recent));
  if (why === "tooFewSweeps") return { fit: "unknown", drift: 0 };
  return { fit: steady ? "well" : "attention", drift };
}

/** The case follows the air slowly: its coolest part is taken to be as cool as the air lately was. */
function humidityOf({ air, recentAir }: ConnectedSniffer): Fitness["humidity"] {
  const surfaceC = Math.min(...recentAir.map(({ temperatureC }) => temperatureC ?? Number.POSITIVE_INFINITY));
  const marginC = dewMarginC(air, surfaceC);
  if (marginC === null) return { fit: "unknown", marginC: 0 };
  const dry = marginC > DEW_MARGIN_C && (air.humidityPct ?? 0) < WET_HUMIDITY_PCT;
  return { fit: dry ? "well" : "attention", marginC };
}

function airSensorOf({ recentAir }: ConnectedSniffer): Fitness["airSensor"] {
  const told = recentAir.filter(({ humidityPct }) => humidityPct !== undefined);
  if (told.length < STUCK_SWEEPS) return { fit: "unknown", humidityPct: 0 };
  const humidityPct = told.at(-1)?.humidityPct ?? 0;
  return { fit: isHumidityStuck(told) ? "attention" : "well", humidityPct };
}

function linkOf({ health, layout }: ConnectedSniffer): Fitness["link"] {
  const came = health.sweeps * framesPerSweep(layout.channels.length);
  const all = came + health.framesLost;
  if (all === 0) return { fit: "unknown", lostShare: 0 };
  const lostShare = health.framesLost / all;
  return { fit: lostShare <= MOST_FRAMES_LOST ? "well" : "attention", lostShare };
}

function channelsOf({ recent, layout }: ConnectedSniffer): Fitness["channels"] {
  if (recent.length < STUCK_SWEEPS) return { fit: "unknown", bad: [] };
  const bad = layout.channels.flatMap((_, channel) => {
    const values = recent.map(({ ohm }) => ohm[channel] ?? Number.NaN);
    const isStuck = values.slice(-STUCK_SWEEPS).every((value) => value === values.at(-1));
    const last = values.at(-1) ?? Number.NaN;
    return isStuck || !(last >= LEAST_OHM && last <= LARGEST_OHM) ? [channel] : [];
  });
  return { fit: bad.length === 0 ? "well" : "attention", bad };
}
