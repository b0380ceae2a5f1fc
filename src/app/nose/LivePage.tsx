import { useComputed, useSignal } from "@preact/signals";
import { useCallback, useEffect, useMemo } from "preact/hooks";
import { LiveActions, LiveScreen } from "../../screens/LiveScreen.js";
import { TRACE_WINDOWS_MS } from "../../sniff/traceRing.js";
import { liveView } from "../../views/liveView.js";
import type { AppModel } from "../appModel.js";
import { createWakeKeeper } from "../attention.js";
import { Frame } from "../places/Frame.js";
import { snifferCalls, snifferContext } from "../snifferCalls.js";
import { startTraceLoop } from "./traceLoop.js";
import { tracesOf } from "./traces.js";

/** The numbers change once a second: faster cannot be read. */
const NUMBERS_EVERY_MS = 1_000;

/** The channels as they move now. */
export function LivePage({ app }: { readonly app: AppModel }) {
  const { sniffers } = app;
  const traces = tracesOf(sniffers);
  const windowMs = useSignal<(typeof TRACE_WINDOWS_MS)[number]>(TRACE_WINDOWS_MS[0]);
  const seconds = useSignal(0);
  const wake = useMemo(createWakeKeeper, []);
  useEffect(() => {
    const timer = setInterval(() => {
      if (document.visibilityState === "visible") seconds.value += 1;
    }, NUMBERS_EVERY_MS);
    return () => {
      clearInterval(timer);
      void wake.keep(false);
      void sniffers.stopSweeps();
    };
  }, []);
  const onCanvas = useCallback(
    (canvas: HTMLCanvasElement) =>
      startTraceLoop(canvas, {
        window: () => traces.ring()?.windows.get(windowMs.peek()) ?? null,
        onSweep: traces.onSweep,
      }),
    [windowMs.value],
  );
  // Bytes come many times a second; the words around the picture need not follow each of them.
  void seconds.value;
  void useComputed(() => {
    const { value } = sniffers.state;
    return value.kind === "ready" ? `ready ${String(value.sniffer.assembly !== null)}` : value.kind;
  }).value;
  const view = liveView(
    {
      ...snifferContext(app),
      sniffer: sniffers.state.peek(),
      channels: traces.layout()?.channels ?? [],
      ring: traces.ring(),
      windowMs: windowMs.value,
    },
    app.preferences.words.value,
  );
  async function listen(): Promise<void> {
    const on = view.listen?.on ?? false;
    await wake.keep(!on);
    if (on) return sniffers.stopSweeps();
    const outcome = await sniffers.startSweeps();
    if (outcome === "taken") return;
    await wake.keep(false); // nothing to look at: the screen may sleep
    if (outcome === "refused") app.toasts.show(app.preferences.words.value.text.nose.live.refused);
  }
  return (
    <Frame app={app} actions={<LiveActions view={view.listen} onListen={() => void listen()} />}>
      <LiveScreen
        view={view}
        calls={{
          onBack: () => app.router.go("nose"),
          onSniffer: snifferCalls(app),
          onWindow: (id) => {
            windowMs.value = TRACE_WINDOWS_MS.find((known) => String(known) === id) ?? windowMs.value;
          },
          onCanvas,
        }}
      />
    </Frame>
  );
}
