import { version } from "../../../package.json";
import { AboutScreen, GlossaryScreen, InstallScreen } from "../../screens/AboutScreen.js";
import { aboutView, glossaryView, installView } from "../../views/aboutView.js";
import { Frame } from "../places/Frame.js";
import { askToInstall, installOffer } from "./installOffer.js";
import type { YouPageProps } from "./youPage.js";

/** What the app is, and what it can never tell. */
export function AboutPage({ app, onBack }: YouPageProps) {
  return (
    <Frame app={app}>
      <AboutScreen view={aboutView(version, app.preferences.words.value)} onBack={onBack} />
    </Frame>
  );
}

/** How to put it on a phone. */
export function InstallPage({ app, onBack }: YouPageProps) {
  const view = installView(
    installOffer.value !== null,
    location.origin + location.pathname,
    app.preferences.words.value,
  );
  return (
    <Frame app={app}>
      <InstallScreen view={view} onBack={onBack} onInstall={() => void askToInstall()} />
    </Frame>
  );
}

/** The words of the trade. */
export function GlossaryPage({ app, onBack }: YouPageProps) {
  return (
    <Frame app={app}>
      <GlossaryScreen view={glossaryView(app.preferences.words.value)} onBack={onBack} />
    </Frame>
  );
}
