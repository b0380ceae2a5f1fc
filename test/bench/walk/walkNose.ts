import { button, type Thumb } from "./thumb.js";

const PAGES = [
  "Samples",
  "Full report",
  "Versions and files",
  "The sniffer’s fitness",
  "Teach a new nose",
  "Sniffers",
  "Another sniffer",
];

/** Every page of Nose, and the virtual sniffer at work; a teaching is begun and stopped. */
export async function walkNose(thumb: Thumb): Promise<void> {
  await walkNosePages(thumb);
  await walkLive(thumb);
  await walkJar(thumb);
  await walkSamples(thumb);
  await walkPractice(thumb);
}

/** Each page opened and left. */
async function walkNosePages(thumb: Thumb): Promise<void> {
  await thumb.toPlace("Nose");
  for (const name of PAGES) await thumb.visit(name);
}

async function walkLive({ page, touch, tap, open, back }: Thumb): Promise<void> {
  await open("Live traces");
  await tap("Start listening");
  await page.locator("main canvas").waitFor();
  await touch("another stretch of time", page.locator("[name=trace-window]").last());
  await tap("Stop listening");
  await back("Live traces");
}

async function walkJar({ page, tap, open, back }: Thumb): Promise<void> {
  await open("The sniffer’s fitness", "fitness again");
  await tap("Sniff the check jar");
  await button(page, "Start the countdown").waitFor();
  await tap("Start the countdown");
  await button(page, "Sniff the check jar").waitFor();
  await back("fitness after the jar");
}

async function walkSamples({ page, touch, tap, open, back }: Thumb): Promise<void> {
  await open("Samples", "Samples again");
  await tap("Bring in the demo samples");
  await back("Samples again");
  await open("Teach a new nose", "Teach with the demo’s samples");
  await tap("Start teaching");
  await page.getByRole("progressbar").waitFor();
  await tap("Stop teaching");
  await button(page, "Start teaching").waitFor();
  await back("Teach after it was stopped");
  await open("Samples", "Samples with the demo’s");
  await back("Samples with the demo’s");
  await open("Versions and files", "Versions again");
  await touch("what was decided", page.locator("main details summary").last());
  await back("Versions again");
}

async function walkPractice({ page, touch, tap, open, back }: Thumb): Promise<void> {
  await open("Practise with faults");
  await touch("a fault", page.getByRole("switch", { name: "Stuck channel" }));
  await tap("Turn all off");
  await back("Practise with faults");
}
