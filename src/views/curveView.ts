import { type Formats, percentText } from "../text/formats.js";

/** A line on a field of 100 by 100, and the same as sentences. */
export interface CurveView {
  readonly title: string;
  readonly caption: string;
  readonly across: string;
  readonly up: string;
  readonly points: string;
  readonly rows: readonly string[];
}

/** Tops of a field, so that a small share is not a line along its bottom. */
const TOPS = [0.05, 0.1, 0.2, 0.3, 0.5, 1] as const;

/** Points of a share over something, both drawn to the edge of the field; and the share that its top stands for. */
export function shareCurve(
  points: readonly { readonly across: number; readonly share: number }[],
  widest: number,
): { readonly points: string; readonly top: number } {
  const most = Math.max(...points.map(({ share }) => share));
  const top = TOPS.find((one) => one >= most) ?? 1;
  return {
    top,
    points: points
      .map(({ across, share }) => `${at(across / widest).toFixed(1)},${at(1 - share / top).toFixed(1)}`)
      .join(" "),
  };
}

const at = (share: number) => 100 * share;

/** The upper edge of a field in words, such as "wrong, up to 20 %". */
export function topText(say: (top: string) => string, top: number, formats: Formats): string {
  return say(percentText(top, formats));
}
