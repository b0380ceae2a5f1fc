import { useState } from "preact/hooks";
import { DietFormScreen } from "../../screens/DietFormScreen.js";
import { dietFormView, linesOf } from "../../views/dietFormView.js";
import { Frame } from "../places/Frame.js";
import { withAvoidedGroup, withDiet } from "./profileEdits.js";
import type { YouPageProps } from "./youPage.js";

/** Diets, groups to smell for, own words. Each change is kept at once. */
export function DietPage({ app, editor, onBack }: YouPageProps) {
  const { profile } = editor.shown.value;
  const [typed, setTyped] = useState(() => profile.ownWords.join("\n"));
  const view = dietFormView(profile, typed, app.diet.groups.value, app.preferences.words.value);
  const calls = {
    onBack,
    onDiet: (diet: string, on: boolean) => void editor.editProfile((now) => withDiet(now, diet, on)),
    onGroup: (group: string, on: boolean) =>
      void editor.editProfile((now) => withAvoidedGroup(now, group, on)),
    onOwnWords: (text: string) => {
      setTyped(text);
      void editor.editProfile((now) => ({ ...now, ownWords: linesOf(text) }));
    },
  };
  return (
    <Frame app={app}>
      <DietFormScreen view={view} calls={calls} />
    </Frame>
  );
}
