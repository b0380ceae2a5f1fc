import type { Words } from "../text/catalogue.js";

/** What is said when a screen broke. */
export interface BrokenView {
  readonly title: string;
  readonly text: string;
  readonly startPage: string;
  readonly href: string;
  readonly detailsTitle: string;
  readonly details: string;
}

export function brokenView(details: string, href: string, { text }: Words<"common">): BrokenView {
  const { common } = text;
  return {
    title: common.brokenTitle,
    text: common.brokenText,
    startPage: common.startPage,
    href,
    detailsTitle: common.brokenDetails,
    details,
  };
}
