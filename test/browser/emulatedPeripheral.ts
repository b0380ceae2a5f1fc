/**
 * A peripheral that Chromium emulates, with any sniffer's bytes behind it. Real `navigator.bluetooth` calls in the page
 * meet the chooser, the connection, discovery, reads, writes and subscriptions here.
 *
 * @see DevTools protocol, domains BluetoothEmulation (browser target) and DeviceAccess (page target)
 */
import { chromium, type Browser, type BrowserContext, type CDPSession, type Page } from "playwright-core";
import type { CharacteristicAddress } from "../../src/kernel/link.js";
import { toHex } from "../../src/profile/bytes.js";
import { emulatedChooser } from "./emulatedChooser.js";
import { findChromium } from "./findChromium.js";
import { watchLink } from "./linkWatch.js";
import { installPump, keyOf, pumpPage } from "./notificationPump.js";

export interface EmulatedProperties {
  readonly read?: boolean;
  readonly write?: boolean;
  readonly notify?: boolean;
}

/** What stands behind the peripheral: any implementation of any profile. */
export interface EmulatedSniffer {
  readonly name: string;
  /** Service UUID to characteristic UUID to properties; the first service is the advertised one. */
  readonly services: Readonly<Record<string, Readonly<Record<string, EmulatedProperties>>>>;
  read(address: CharacteristicAddress): Uint8Array;
  /** @returns 0, or an ATT error code */
  write(address: CharacteristicAddress, bytes: Uint8Array): number;
  /** The next notification of a characteristic somebody listens to; null if there is none now. */
  nextNotification(address: CharacteristicAddress): Uint8Array | null;
}

export interface EmulatedPeripheral {
  /** What came over the air, in order: "connection", "discovery", "read 2a19", "write 0004 0107", ...; "unanswered read 2a19" */
  readonly log: readonly string[];
  /** Answers the chooser that is open, or the next one. */
  answerChooser(how: "choose" | "cancel"): Promise<void>;
  /** Delivers what the sniffer has to say, at most `most` notifications; how many were delivered. */
  pump(address: CharacteristicAddress, most?: number): Promise<number>;
  /** Pumps every notifying characteristic again and again; stops when the answer is called. */
  pumpEvery(ms: number): () => Promise<void>;
  /** Delivers what every characteristic still has to say. */
  pumpAll(): Promise<void>;
  /** Goes out of range. */
  disconnect(): Promise<void>;
  /** Can be connected to again. */
  comeBack(): void;
  /** What the phone's radio is like; pages learn it when they ask, no event tells them. */
  setRadio(state: "absent" | "powered-off" | "powered-on"): Promise<void>;
  stop(): Promise<void>;
}

const ADDRESS = "0A:52:00:00:00:01";
const CLIENT_CONFIGURATION = "00002902-0000-1000-8000-00805f9b34fb";
/** ATT error "read not permitted". @see Bluetooth Core, Vol 3 Part F, 3.4.1.1 (value from memory) */
const READ_NOT_PERMITTED = 0x02;
/** HCI error "connection failed to be established". @see Bluetooth Core, Vol 1 Part F, 1.3 (value from memory) */
const NOT_ESTABLISHED = 0x3e;

/** @param more - further switches of the browser's */
export function launchChromium(...more: readonly string[]): Promise<Browser> {
  return chromium.launch({
    executablePath: findChromium(),
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--enable-features=WebBluetooth",
      "--enable-experimental-web-platform-features",
      ...more,
    ],
  });
}

/**
 * Start it before the page is opened, so that the page finds a radio. One peripheral a browser; it outlasts reloads.
 */
export async function startEmulatedPeripheral(
  browser: Browser,
  page: Page,
  sniffer: EmulatedSniffer,
): Promise<EmulatedPeripheral> {
  const radio = await browser.newBrowserCDPSession();
  const log: string[] = [];
  const coming = new Map<string, Uint8Array>();
  const table = new Map<string, CharacteristicAddress>();
  const byKey = new Map(addressesOf(sniffer).map((address) => [keyOf(address), address]));
  const link = watchLink();
  let inRange = true;
  const answer = async (what: string, since: number, send: () => Promise<unknown>) => {
    if (!(await link.answer(since, send))) log.push(`unanswered ${what}`);
  };

  radio.on("BluetoothEmulation.gattOperationReceived", async ({ type }) => {
    log.push(type);
    if (type === "connection") {
      coming.clear();
      if (inRange) link.up();
    }
    const code = type === "connection" && !inRange ? NOT_ESTABLISHED : 0;
    await answer(type, link.now(), async () => {
      // The table must stand before discovery is answered; a disconnection has emptied it.
      if (type === "discovery") await buildTable(radio, sniffer, table);
      await radio.send("BluetoothEmulation.simulateGATTOperationResponse", { address: ADDRESS, type, code });
    });
  });
  radio.on("BluetoothEmulation.characteristicOperationReceived", async ({ characteristicId, type, data }) => {
    const address = table.get(characteristicId);
    if (address === undefined) return;
    const since = link.now();
    const response = answerTo(sniffer, coming, log, address, type, data);
    await answer(`${type} ${shortOf(address)}`, since, () =>
      radio.send("BluetoothEmulation.simulateCharacteristicOperationResponse", {
        characteristicId,
        type,
        ...response,
      }),
    );
  });
  await radio.send("BluetoothEmulation.enable", { state: "powered-on", leSupported: true });
  await radio.send("BluetoothEmulation.simulatePreconnectedPeripheral", {
    address: ADDRESS,
    name: sniffer.name,
    manufacturerData: [],
    knownServiceUuids: Object.keys(sniffer.services).slice(0, 1),
  });
  const keeper = await keepRadio(browser);
  const chooser = await emulatedChooser(page, ADDRESS);
  await installPump(page, (key) => {
    const address = byKey.get(key);
    const value = address === undefined ? null : sniffer.nextNotification(address);
    if (value !== null) coming.set(key, value);
    return value !== null;
  });

  const pump = (address: CharacteristicAddress, most = 1000) => pumpPage(page, address, most);
  const pumpAll = async () => {
    for (const address of byKey.values()) await pump(address);
  };
  return {
    log,
    answerChooser: chooser.answer,
    pump,
    pumpEvery: (ms) => repeatedly(ms, pumpAll),
    pumpAll,
    async disconnect() {
      inRange = false;
      link.down();
      await radio.send("BluetoothEmulation.simulateGATTDisconnection", { address: ADDRESS });
    },
    comeBack() {
      inRange = true;
    },
    async setRadio(state) {
      await radio.send("BluetoothEmulation.setSimulatedCentralState", { state });
    },
    async stop() {
      await chooser.close();
      await keeper.close();
      await radio.send("BluetoothEmulation.disable");
      await radio.detach();
    },
  };
}

/** Chromium drops the emulated radio when the last page that used it goes, as at a reload: another page holds it. */
async function keepRadio(browser: Browser): Promise<BrowserContext> {
  const context = await browser.newContext();
  const page = await context.newPage();
  // Answered here, never sent: only a secure origin has Bluetooth.
  await page.route("**", (route) => route.fulfill({ contentType: "text/html", body: "" }));
  await page.goto("https://keeper.invalid/");
  await page.evaluate(() => navigator.bluetooth.getAvailability());
  return context;
}

function addressesOf({ services }: EmulatedSniffer): CharacteristicAddress[] {
  return Object.entries(services).flatMap(([service, characteristics]) =>
    Object.keys(characteristics).map((characteristic) => ({ service, characteristic })),
  );
}

async function buildTable(
  radio: CDPSession,
  { services }: EmulatedSniffer,
  table: Map<string, CharacteristicAddress>,
): Promise<void> {
  table.clear();
  for (const [service, characteristics] of Object.entries(services)) {
    const place = { address: ADDRESS, serviceUuid: service };
    const { serviceId } = await radio.send("BluetoothEmulation.addService", place);
    for (const [characteristic, properties] of Object.entries(characteristics)) {
      const { characteristicId } = await radio.send("BluetoothEmulation.addCharacteristic", {
        serviceId,
        characteristicUuid: characteristic,
        properties,
      });
      table.set(characteristicId, { service, characteristic });
      if (!properties.notify) continue;
      const descriptor = { characteristicId, descriptorUuid: CLIENT_CONFIGURATION };
      await radio.send("BluetoothEmulation.addDescriptor", descriptor); // else there is no subscribing
    }
  }
}

const shortOf = ({ characteristic }: CharacteristicAddress): string => characteristic.slice(4, 8);

/** A read is the pump's if a value is coming; else the page's own, and that needs the property. */
function answerTo(
  sniffer: EmulatedSniffer,
  coming: Map<string, Uint8Array>,
  log: string[],
  address: CharacteristicAddress,
  type: string,
  data: string | undefined,
): { code: number; data?: string } {
  const key = keyOf(address);
  const name = shortOf(address);
  if (type === "read") {
    const pushed = coming.get(key);
    coming.delete(key);
    log.push(`${pushed === undefined ? "read" : "notify"} ${name}`);
    if (pushed === undefined && !sniffer.services[address.service]?.[address.characteristic]?.read) {
      return { code: READ_NOT_PERMITTED };
    }
    return { code: 0, data: Buffer.from(pushed ?? sniffer.read(address)).toString("base64") };
  }
  if (type === "write") {
    const bytes = Uint8Array.from(Buffer.from(data ?? "", "base64"));
    log.push(`write ${name} ${toHex(bytes)}`);
    return { code: sniffer.write(address, bytes) };
  }
  log.push(`${type === "subscribe-to-notifications" ? "subscribe" : "unsubscribe"} ${name}`);
  return { code: 0 };
}

function repeatedly(ms: number, task: () => Promise<void>): () => Promise<void> {
  let going = true;
  const running = (async () => {
    while (going) {
      await task().catch(() => undefined); // the page may be on its way elsewhere
      await new Promise((resolve) => setTimeout(resolve, ms));
    }
  })();
  return () => {
    going = false;
    return running;
  };
}
