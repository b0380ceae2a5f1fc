import { renderToString } from "preact-render-to-string";
import { describe, expect, it } from "vitest";
import { FindingCard } from "../../src/screens/parts/FindingCard.js";
import { findingCardView } from "../../src/views/findingCardView.js";
import { NOT_SMELLED, SMELLED, UNCERTAIN } from "../browser/gallery/fixtures/findings.js";
import { ENGLISH, GERMAN, NOW_MS } from "../browser/gallery/fixtures/words.js";
import { PAGES } from "../browser/gallery/pages.js";

const pages = Object.entries(PAGES);

describe.each([
  ["English", ENGLISH],
  ["German", GERMAN],
])("in %s", (_language, words) => {
  it.each(pages)("%s renders words, not leftovers of code", (_name, page) => {
    const shown = page(words);
    const html = renderToString(
      <>
        {shown.body}
        {shown.note}
        {shown.actions}
      </>,
    );
    expect(html).not.toMatch(/undefined|\bNaN\b|\[object|=&gt;/);
    expect(html.match(/<h1/g) ?? []).toHaveLength(1);
  });

  it.each(pages)("%s gives each id once, and each label something to point at", (_name, page) => {
    const shown = page(words);
    const html = renderToString(
      <>
        {shown.body}
        {shown.note}
        {shown.actions}
      </>,
    );
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const pointed = [...html.matchAll(/ (?:for|aria-labelledby|aria-describedby)="([^"]+)"/g)];
    for (const [, names = ""] of pointed) for (const name of names.split(" ")) expect(ids).toContain(name);
  });
});

it("tells the three findings apart by word and by shape", () => {
  const context = { acceptedMissRate: 0.05, allergyGroups: [], nowMs: NOW_MS };
  const cards = [SMELLED, NOT_SMELLED, UNCERTAIN].map((finding) =>
    renderToString(<FindingCard view={findingCardView(finding, context, ENGLISH)} />),
  );
  const marks = cards.map((html) => /<svg class="verdict-mark".*?<\/svg>/s.exec(html)?.[0]);
  expect(new Set(marks).size).toBe(3);
  expect(cards[2]).toContain("do not rely on this");
});

it("puts text from a file on the screen as text, never as markup", () => {
  const context = { acceptedMissRate: 0.05, allergyGroups: [], nowMs: NOW_MS };
  const hostile = { ...SMELLED, group: "<img src=x onerror=alert(1)>" };
  const html = renderToString(<FindingCard view={findingCardView(hostile, context, ENGLISH)} />);
  expect(html).not.toContain("<img");
});
