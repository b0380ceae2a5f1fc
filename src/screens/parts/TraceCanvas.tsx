import { useEffect, useRef } from "preact/hooks";

interface Props {
  /** What the picture shows, in words; the numbers stand in the table. */
  readonly label: string;
  /** Draws on the canvas from now on; the answer ends it. */
  readonly start: (canvas: HTMLCanvasElement) => () => void;
}

/** A canvas that somebody else draws on. */
export function TraceCanvas({ label, start }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => (canvas.current === null ? undefined : start(canvas.current)), [start]);
  return <canvas ref={canvas} class="live__canvas" role="img" aria-label={label} />;
}
