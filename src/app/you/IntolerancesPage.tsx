import { useState } from "preact/hooks";
import { IntoleranceFormScreen } from "../../screens/IntoleranceFormScreen.js";
import { intoleranceFormView, linesOf } from "../../views/dietFormView.js";
import { Frame } from "../places/Frame.js";
import { splitIntolerances, withIntolerances } from "./profileEdits.js";
import type { YouPageProps } from "./youPage.js";

/** Coeliac disease and intolerances, kept apart. Each change is kept at once. */
export function IntolerancesPage({ app, editor, onBack }: YouPageProps) {
  const { profile } = editor.shown.value;
  // Kept apart from the typed lines, so that a word on its way to another one ticks nothing for good.
  const [ticked, setTicked] = useState(() => splitIntolerances(profile).ticked);
  const [typed, setTyped] = useState(() => splitIntolerances(profile).own.join("\n"));
  const view = intoleranceFormView(profile, typed, app.preferences.words.value);

  function keep(nextTicked: readonly string[], nextTyped: string): void {
    setTicked(nextTicked);
    setTyped(nextTyped);
    void editor.editProfile((now) => withIntolerances(now, nextTicked, linesOf(nextTyped)));
  }

  const calls = {
    onBack,
    onCoeliac: (coeliac: boolean) => void editor.editProfile((now) => ({ ...now, coeliac })),
    onKnown: (name: string, on: boolean) => {
      const others = ticked.filter((one) => one !== name);
      keep(on ? [...others, name] : others, typed);
    },
    onOwn: (text: string) => keep(ticked, text),
  };
  return (
    <Frame app={app}>
      <IntoleranceFormScreen view={view} calls={calls} />
    </Frame>
  );
}
