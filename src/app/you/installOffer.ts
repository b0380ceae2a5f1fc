/** The browser's own offer to install the app. It is made once, soon after the start, and kept until it is wanted. */
import { signal, type ReadonlySignal } from "@preact/signals";

/** @see Web App Manifest Incubations, interface BeforeInstallPromptEvent; not in every browser */
interface InstallPromptEvent extends Event {
  prompt(): Promise<unknown>;
}

const offer = signal<InstallPromptEvent | null>(null);

/** null where the browser makes no offer, or after it was used. */
export const installOffer: ReadonlySignal<InstallPromptEvent | null> = offer;

/** Waits for the offer. Called again it changes nothing: a listener is only ever added once. */
export function watchInstallOffer(): void {
  addEventListener("beforeinstallprompt", keepOffer);
  addEventListener("appinstalled", dropOffer);
}

/** Puts the browser's question; the same offer cannot be used twice. */
export async function askToInstall(): Promise<void> {
  const made = offer.value;
  offer.value = null;
  await made?.prompt();
}

function keepOffer(event: Event): void {
  event.preventDefault();
  offer.value = event as InstallPromptEvent;
}

function dropOffer(): void {
  offer.value = null;
}
