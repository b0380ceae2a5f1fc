import { button, type Thumb } from "./thumb.js";

const PAGES = ["Full report", "Sniffers", "Another sniffer"];

/** Every page of Nose with the virtual sniffer at work, a teaching that is stopped, and another nose taken into use. */
export async function walkNose(thumb: Thumb): Promise<void> {
  await thumb.toPlace("Nose");
  for (const name of PAGES) await thumb.visit(name);
  await walkLive(thumb);
  await walkJar(thumb);
  await walkSamples(thumb);
  await walkPractice(thumb);
}

async function walkLive({ page, step, open, tap, back }: Thumb): Promise<void> {
  await open("Live traces");
  await tap("Start listening");
  await page.locator("main canvas").waitFor();
  await step("another stretch of time", () => page.locator("[name=trace-window]").last().tap());
  await tap("Stop listening");
  await back("Live traces");
}

async function walkJar({ page, open, tap, back }: Thumb): Promise<void> {
  await open("The sniffer’s fitness");
  await tap("Sniff the check jar");
  await button(page, "Start the countdown").waitFor();
  await tap("Start the countdown");
  await button(page, "Sniff the check jar").waitFor();
  await back("The sniffer’s fitness");
}

async function walkSamples({ page, step, open, tap, back }: Thumb): Promise<void> {
  await open("Samples");
  await tap("Bring in the demo samples");
  await back("Samples");
  await open("Teach a new nose");
  await tap("Start teaching");
  await page.getByRole("progressbar").waitFor();
  await tap("Stop teaching");
  await button(page, "Start teaching").waitFor();
  await back("Teach a new nose");
  await step("Samples with the demo’s", () => page.getByRole("button", { name: "Samples" }).first().tap());
  await back("Samples with the demo’s");
  await open("Versions and files");
  await step("what was decided", () => page.locator("main details summary").last().tap());
  await back("Versions and files");
}

async function walkPractice({ page, step, open, tap, back }: Thumb): Promise<void> {
  await open("Practise with faults");
  await step("a fault", () => page.getByRole("switch", { name: "Stuck channel" }).tap());
  await tap("Turn all off");
  await back("Practise with faults");
}
