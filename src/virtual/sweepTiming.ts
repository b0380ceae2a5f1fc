import type { SnifferLayout } from "../profile/layout.js";

/**
 * When in a sweep each channel is read, counted from the sweep's start. Sensors step side by side; within one
 * sensor the steps follow each other, each read at its end. Where no dwell is stated, a sensor's steps share the
 * period evenly.
 *
 * @returns milliseconds, none above the sweep period; shape [channels]
 */
export function readTimesMs(layout: SnifferLayout): number[] {
  const { channels, sweepPeriodMs } = layout;
  const passed = new Map<number, number>();
  return channels.map(({ sensor, dwellMs }) => {
    const steps = channels.filter((channel) => channel.sensor === sensor).length;
    const atMs = (passed.get(sensor) ?? 0) + (dwellMs ?? sweepPeriodMs / steps);
    passed.set(sensor, atMs);
    return Math.min(atMs, sweepPeriodMs);
  });
}
