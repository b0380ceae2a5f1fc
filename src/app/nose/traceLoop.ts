/** Redraws the traces: once a frame at most, only after a sweep, and only while somebody can see them. */
import { drawTraces, type TraceField } from "../../screens/parts/drawTraces.js";
import type { TraceWindow } from "../../sniff/traceRing.js";
import { traceScale, type TraceScale } from "../../views/traceScale.js";

/** Where little motion is wanted the picture changes in steps. */
const CALM_MS = 2_000;
/** However long the picture, what is new shows within this time; sooner where a bucket, which is a pixel, fills sooner. */
const LONGEST_PACE_MS = 3_000;

export interface TraceSource {
  window(): TraceWindow | null;
  /** Told of each sweep; the answer ends it. */
  onSweep(listener: () => void): () => void;
}

/** @returns ends it */
export function startTraceLoop(canvas: HTMLCanvasElement, source: TraceSource): () => void {
  const pen = canvas.getContext("2d");
  const calm = matchMedia("(prefers-reduced-motion: reduce)");
  let field = fieldOf(canvas);
  let scale: TraceScale | undefined;
  let asked: number | null = null;
  let waiting: ReturnType<typeof setTimeout> | null = null;
  let drawnAt = Number.NEGATIVE_INFINITY;
  let onScreen = true;

  function draw(nowMs: number): void {
    asked = null;
    const window = source.window();
    if (pen === null || window === null || window.newest < 0) return;
    const paceMs = Math.max(calm.matches ? CALM_MS : 0, Math.min(LONGEST_PACE_MS, window.bucketMs));
    const earlyMs = drawnAt + paceMs - nowMs;
    if (earlyMs > 0) {
      waiting ??= setTimeout(askLate, earlyMs);
      return;
    }
    drawnAt = nowMs;
    scale = traceScale(window, scale);
    pen.setTransform(devicePixelRatio, 0, 0, devicePixelRatio, 0, 0);
    drawTraces(pen, field, window, scale);
  }

  function ask(): void {
    // A browser runs no frames of a hidden page; this also keeps none waiting for its return.
    if (asked === null && onScreen && document.visibilityState === "visible") {
      asked = requestAnimationFrame(draw);
    }
  }

  /** The last sweep of all is drawn too. */
  function askLate(): void {
    waiting = null;
    ask();
  }

  function measure(): void {
    field = fieldOf(canvas);
    canvas.width = Math.round(field.width * devicePixelRatio);
    canvas.height = Math.round(field.height * devicePixelRatio);
    drawnAt = Number.NEGATIVE_INFINITY;
    ask();
  }

  const sizes = new ResizeObserver(measure);
  const sight = new IntersectionObserver(([entry]) => {
    onScreen = entry?.isIntersecting ?? true;
    ask();
  });
  const themes = matchMedia("(prefers-color-scheme: dark)");
  sizes.observe(canvas);
  sight.observe(canvas);
  themes.addEventListener("change", measure);
  document.addEventListener("visibilitychange", ask);
  const stopListening = source.onSweep(ask);
  return () => {
    stopListening();
    sizes.disconnect();
    sight.disconnect();
    themes.removeEventListener("change", measure);
    document.removeEventListener("visibilitychange", ask);
    if (asked !== null) cancelAnimationFrame(asked);
    if (waiting !== null) clearTimeout(waiting);
  };
}

/** Sizes and colours as the style sheet has them now. */
function fieldOf(canvas: HTMLCanvasElement): TraceField {
  const style = getComputedStyle(canvas);
  const colour = (name: string) => style.getPropertyValue(name).trim();
  return {
    width: canvas.clientWidth,
    height: canvas.clientHeight,
    colours: ["--trace-1", "--trace-2", "--trace-3", "--trace-4"].map(colour),
    rule: colour("--edge"),
    ink: colour("--ink"),
    font: `600 12px ${style.fontFamily}`,
  };
}
