/** The simulated year as a picture: the check jar, the findings given, and the wrong ones among them. */
import { MONTHS, type Claims, type Week } from "./simulatedYear.js";

/** One way to live through the year; null for a month in which it was not yet there. */
export interface Course {
  readonly name: string;
  readonly claims: readonly (Claims | null)[];
}

const WIDTH = 720;
const PANEL = { left: 60, width: 620, height: 150 };
const DASHES = ["", "6 3", "2 3", "9 3 2 3", "1 5", "14 4"];

/** A picture without colour: courses differ by dashes and by name. */
export function yearPicture(
  weeks: readonly Week[],
  courses: readonly Course[],
  alarmWeek: number | null,
): string {
  const jars = weeks.map(({ jar }) => jar);
  const [low, high] = [Math.min(...jars), Math.max(...jars)];
  const jarLine = jars.map((jar, i) => [(i + 1) / weeks.length, (jar - low) / (high - low || 1)] as const);
  const share = (over: (claims: Claims) => number) =>
    courses.map(({ claims }) =>
      claims.flatMap((one, i) => (one === null ? [] : [[(i + 0.5) / MONTHS, over(one)] as const])),
    );
  const alarm = alarmWeek === null ? null : alarmWeek / weeks.length;
  const parts = [
    panel(
      40,
      `Check jar, ln(R over the jar / R in clean air): ${low.toFixed(2)} to ${high.toFixed(2)}`,
      [jarLine],
      alarm,
    ),
    panel(
      250,
      "Findings given, of all asked for: 0 to 100 %",
      share(({ claims, answers }) => claims / answers),
      alarm,
    ),
    panel(
      460,
      "Wrong, of all asked for: 0 to 10 %",
      share(({ wrong, answers }) => Math.min(1, (10 * wrong) / answers)),
      alarm,
    ),
    ...courses.map(
      ({ name }, i) =>
        `<path d="M60 ${660 + 22 * i}h50" fill="none" stroke="#000" stroke-width="2" stroke-dasharray="${DASHES[i % DASHES.length]}"/>` +
        `<text x="120" y="${665 + 22 * i}">${name}</text>`,
    ),
  ];
  const height = 670 + 22 * courses.length;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" font-family="sans-serif" font-size="13">` +
    `<rect width="${WIDTH}" height="${height}" fill="#fff"/><text x="60" y="20">A simulated year, month 1 to ${MONTHS}; the upright line is the alarm</text>` +
    `${parts.join("")}</svg>\n`
  );
}

function panel(
  top: number,
  caption: string,
  lines: readonly (readonly (readonly [number, number])[])[],
  alarm: number | null,
): string {
  const { left, width, height } = PANEL;
  const x = (share: number) => (left + width * share).toFixed(1);
  const y = (share: number) => (top + 15 + height * (1 - share)).toFixed(1);
  const marks = Array.from(
    { length: MONTHS },
    (_, i) => `<text x="${x((i + 0.4) / MONTHS)}" y="${top + height + 32}">${i + 1}</text>`,
  );
  return [
    `<text x="${left}" y="${top + 8}">${caption}</text>`,
    `<path d="M${x(0)} ${y(1)}V${y(0)}H${x(1)}" fill="none" stroke="#000"/>`,
    ...(alarm === null
      ? []
      : [`<path d="M${x(alarm)} ${y(1)}V${y(0)}" stroke="#000" stroke-width="3" opacity="0.4"/>`]),
    ...lines.map(
      (points, i) =>
        `<polyline fill="none" stroke="#000" stroke-width="2" stroke-dasharray="${DASHES[i % DASHES.length]}" points="${points
          .map(([across, up]) => `${x(across)},${y(up)}`)
          .join(" ")}"/>`,
    ),
    ...marks,
  ].join("");
}
