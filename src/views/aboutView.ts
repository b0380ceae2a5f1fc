import type { Words } from "../text/catalogue.js";

/** A page of plain paragraphs. */
export interface AboutView {
  readonly title: string;
  readonly back: string;
  readonly paragraphs: readonly string[];
  readonly small: readonly string[];
}

export function aboutView(version: string, { text }: Words<"data">): AboutView {
  const { about, back } = text.data;
  return {
    title: about.title,
    back,
    paragraphs: about.paragraphs,
    small: [about.version(version), about.licence],
  };
}

/** How to put the app on a phone. */
export interface InstallView {
  readonly title: string;
  readonly back: string;
  readonly text: string;
  /** What kind of address it takes, where to get it, and whether this page has one. */
  readonly address: { readonly title: string; readonly lines: readonly string[] };
  readonly ways: readonly {
    readonly title: string;
    /** What does not work there. */
    readonly note: string | null;
    readonly steps: readonly string[];
  }[];
  /** null where the browser does not offer it. */
  readonly button: string | null;
}

/** @param address - where this page lies, with its scheme */
export function installView(offered: boolean, address: string, { text }: Words<"data">): InstallView {
  const { install, back } = text.data;
  const { title, lines, sound, unsound } = install.address;
  const here = address.startsWith("https://") ? sound(address) : unsound(address);
  return {
    title: install.title,
    back,
    text: install.text,
    address: { title, lines: [...lines, here] },
    ways: [{ ...install.android, note: null }, { ...install.iphone }, { ...install.computer, note: null }],
    button: offered ? install.button : null,
  };
}

/** The words of the trade, explained. */
export interface GlossaryView {
  readonly title: string;
  readonly back: string;
  readonly entries: readonly { readonly id: string; readonly word: string; readonly meaning: string }[];
}

export function glossaryView({ text }: Words<"data">): GlossaryView {
  const { glossary, back } = text.data;
  return {
    title: glossary.title,
    back,
    entries: Object.entries(glossary.entries).map(([id, [word, meaning]]) => ({ id, word, meaning })),
  };
}
