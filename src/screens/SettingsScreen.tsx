import type { MissRateView, SettingsView } from "../views/settingsView.js";
import { Choices } from "./parts/Choices.js";
import { PageHead } from "./parts/PageHead.js";
import { Switch } from "./parts/Switch.js";
import { SelectField } from "./parts/SelectField.js";

export interface SettingsCalls {
  readonly onBack: () => void;
  readonly onJurisdiction: (id: string) => void;
  readonly onTheme: (theme: string) => void;
  /** "auto", or a BCP 47 tag. */
  readonly onLanguage: (language: string) => void;
  readonly onVibration: (on: boolean) => void;
}

/** Legal list, appearance, language. */
export function SettingsScreen({
  view,
  calls,
}: {
  readonly view: SettingsView;
  readonly calls: SettingsCalls;
}) {
  return (
    <div class="stack stack--wide">
      <PageHead title={view.title} back={{ label: view.back, onBack: calls.onBack }} />
      <div class="stack stack--tight">
        <SelectField
          id="jurisdiction"
          label={view.jurisdiction.label}
          hint={view.jurisdiction.hint}
          options={view.jurisdiction.options}
          onChoose={calls.onJurisdiction}
        />
        {view.jurisdiction.source.map((line) => (
          <p key={line} class="small quiet">
            {line}
          </p>
        ))}
      </div>
      <Choices name="theme" legend={view.theme.label} options={view.theme.options} onChoose={calls.onTheme} />
      <Choices
        name="language"
        legend={view.language.label}
        options={view.language.options}
        onChoose={calls.onLanguage}
      />
      <Switch
        id="vibration"
        label={view.vibration.label}
        hint={view.vibration.hint}
        on={view.vibration.on}
        onChange={calls.onVibration}
      />
    </div>
  );
}

/** The accepted miss rate, with what each takes. */
export function MissRateScreen({
  view,
  onBack,
  onRate,
}: {
  readonly view: MissRateView;
  readonly onBack: () => void;
  readonly onRate: (rate: string) => void;
}) {
  return (
    <div class="stack">
      <PageHead title={view.title} text={view.text} back={{ label: view.back, onBack }} />
      <Choices
        name="miss-rate"
        legend={view.title}
        legendHidden
        rows
        options={view.options}
        onChoose={onRate}
      />
      {view.shown.map((line) => (
        <p key={line} class="numbers">
          {line}
        </p>
      ))}
    </div>
  );
}
