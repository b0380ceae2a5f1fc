/** Numbers and dates for people. Locale and time zone always arrive as arguments. */

/** How this person reads numbers and dates. */
export interface Formats {
  /** BCP 47 tag, such as "en-GB". */
  readonly locale: string;
  /** IANA name, such as "Europe/Berlin". */
  readonly timeZone: string;
}

const numberFormats = new Map<string, Intl.NumberFormat>();
const dateFormats = new Map<string, Intl.DateTimeFormat>();

/** Making a formatter is slow, and a long list needs the same one a thousand times. */
function numberFormat(locale: string, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = `${locale} ${JSON.stringify(options)}`;
  const known = numberFormats.get(key) ?? new Intl.NumberFormat(locale, options);
  numberFormats.set(key, known);
  return known;
}

function dateFormat(formats: Formats, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${formats.locale} ${formats.timeZone} ${JSON.stringify(options)}`;
  const known =
    dateFormats.get(key) ??
    new Intl.DateTimeFormat(formats.locale, { ...options, timeZone: formats.timeZone });
  dateFormats.set(key, known);
  return known;
}

/** A number with at most so many decimals. */
export function numberText(value: number, { locale }: Formats, decimals = 0): string {
  return numberFormat(locale, { maximumFractionDigits: decimals }).format(value);
}

/**
 * A fraction as per cent. Never rounds to "0 %" or "100 %" what is not exactly that: it says "<1 %" or ">99 %".
 *
 * @param fraction - 0 to 1
 * @param decimals - at most so many; the "<" and ">" follow them
 */
export function percentText(fraction: number, { locale }: Formats, decimals = 0): string {
  const format = numberFormat(locale, { style: "percent", maximumFractionDigits: decimals });
  const step = 10 ** -(decimals + 2);
  if (fraction > 0 && fraction < step / 2) return `<${format.format(step)}`;
  if (fraction < 1 && fraction >= 1 - step / 2) return `>${format.format(1 - step)}`;
  return format.format(fraction);
}

/** A number with its unit, such as "23 °C". Units are those of ECMA-402. */
export function unitText(value: number, unit: string, { locale }: Formats, decimals = 0): string {
  return numberFormat(locale, { style: "unit", unit, maximumFractionDigits: decimals }).format(value);
}

/** Size of a file, in decimal units (kB, MB), as storage is told on phones. */
export function sizeText(bytes: number, formats: Formats): string {
  if (bytes < 1_000_000) return unitText(Math.max(1, Math.round(bytes / 1000)), "kilobyte", formats);
  return unitText(bytes / 1_000_000, "megabyte", formats, 1);
}

/** Clock time, such as "18:30". */
export function timeText(instant: string, formats: Formats): string {
  return dateFormat(formats, { hour: "numeric", minute: "2-digit" }).format(Date.parse(instant));
}

/** Day with weekday, such as "Wednesday 25 November 2026". */
export function dayText(instant: string, formats: Formats): string {
  return dateFormat(formats, { weekday: "long", day: "numeric", month: "long", year: "numeric" }).format(
    Date.parse(instant),
  );
}

/** Short day, such as "25 Nov 2026". */
export function shortDayText(instant: string, formats: Formats): string {
  return dateFormat(formats, { day: "numeric", month: "short", year: "numeric" }).format(Date.parse(instant));
}

/** Day and time together. */
export function dayAndTimeText(instant: string, formats: Formats): string {
  return `${shortDayText(instant, formats)}, ${timeText(instant, formats)}`;
}

/** The calendar day where the person is, as "2026-11-25"; for grouping, and for date fields. */
export function dayKey(instant: string, { timeZone }: Formats): string {
  const parts = dateFormat(
    { locale: "en-GB", timeZone },
    { day: "2-digit", month: "2-digit", year: "numeric" },
  );
  const of = Object.fromEntries(
    parts.formatToParts(Date.parse(instant)).map(({ type, value }) => [type, value]),
  );
  return `${of.year}-${of.month}-${of.day}`;
}

/** The calendar day before one, both as "2026-11-25". A day may have 23, 24 or 25 hours. */
export function dayBefore(day: string): string {
  const at = new Date(`${day}T00:00:00Z`);
  at.setUTCDate(at.getUTCDate() - 1);
  return at.toISOString().slice(0, 10);
}

const DAY_MS = 86_400_000;
const AGE_STEPS = [
  { unit: "year", ms: 365 * DAY_MS },
  { unit: "month", ms: 30 * DAY_MS },
  { unit: "day", ms: DAY_MS },
  { unit: "hour", ms: 3_600_000 },
  { unit: "minute", ms: 60_000 },
] as const;

/** How long ago, such as "3 days ago"; within a minute, and for a clock that went back, "now". */
export function agoText(instant: string, nowMs: number, { locale }: Formats): string {
  const ageMs = Math.max(0, nowMs - Date.parse(instant));
  const step = AGE_STEPS.find(({ ms }) => ageMs >= ms);
  const relative = new Intl.RelativeTimeFormat(locale, { numeric: "auto" });
  return step === undefined
    ? relative.format(0, "second")
    : relative.format(-Math.floor(ageMs / step.ms), step.unit);
}

/** "000 or 111". */
export function eitherText(items: readonly string[], { locale }: Formats): string {
  return new Intl.ListFormat(locale, { type: "disjunction" }).format(items);
}

/** "meat, fish and egg". */
export function listText(items: readonly string[], { locale }: Formats): string {
  return new Intl.ListFormat(locale, { type: "conjunction" }).format(items);
}
