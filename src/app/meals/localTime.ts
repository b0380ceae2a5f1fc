/** Instants to what the browser's day and time fields hold, and back, in the time zone of this phone. */

/** "2026-11-25", as a day field writes it. @see HTML Living Standard, "valid date string" */
export function fieldDay(at: Date): string {
  return `${String(at.getFullYear()).padStart(4, "0")}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/** "2026-11-25T18:30", as the field writes it. @see HTML Living Standard, "valid local date and time string" */
export function fieldTime(instant: string): string {
  const at = new Date(instant);
  return `${fieldDay(at)}T${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** A field's value with a year of four digits, as instants are written. */
const FIELD = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/;

/** The instant of a field's value; null where it is no day and time. */
export function instantOf(field: string): string | null {
  const ms = FIELD.test(field) ? Date.parse(field) : NaN;
  return Number.isNaN(ms) ? null : new Date(ms).toISOString();
}

const two = (part: number) => String(part).padStart(2, "0");
