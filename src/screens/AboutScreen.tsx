import type { AboutView, GlossaryView, InstallView } from "../views/aboutView.js";
import { Button } from "./parts/Button.js";
import { PageHead } from "./parts/PageHead.js";

/** What it is, and what it can never tell. */
export function AboutScreen({ view, onBack }: { readonly view: AboutView; readonly onBack: () => void }) {
  return (
    <div class="stack">
      <PageHead title={view.title} back={{ label: view.back, onBack }} />
      {view.paragraphs.map((paragraph) => (
        <p key={paragraph}>{paragraph}</p>
      ))}
      {view.small.map((line) => (
        <p key={line} class="small quiet numbers">
          {line}
        </p>
      ))}
    </div>
  );
}

/** How to put it on a phone. */
export function InstallScreen({
  view,
  onBack,
  onInstall,
}: {
  readonly view: InstallView;
  readonly onBack: () => void;
  readonly onInstall: () => void;
}) {
  return (
    <div class="stack stack--wide">
      <PageHead title={view.title} text={view.text} back={{ label: view.back, onBack }} />
      <section class="stack stack--tight">
        <h2>{view.address.title}</h2>
        {view.address.lines.map((line) => (
          <p key={line} class="own-words">
            {line}
          </p>
        ))}
      </section>
      {view.ways.map(({ title, note, steps }) => (
        <section key={title} class="stack stack--tight">
          <h2>{title}</h2>
          {note !== null && <p>{note}</p>}
          <ol class="questions">
            {steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </section>
      ))}
      {view.button !== null && (
        <Button look="main" big wide onClick={onInstall}>
          {view.button}
        </Button>
      )}
    </div>
  );
}

/** The words of the trade. */
export function GlossaryScreen({
  view,
  onBack,
}: {
  readonly view: GlossaryView;
  readonly onBack: () => void;
}) {
  return (
    <div class="stack">
      <PageHead title={view.title} back={{ label: view.back, onBack }} />
      <dl class="glossary">
        {view.entries.map((entry) => (
          <div key={entry.id} id={`word-${entry.id}`}>
            <dt>{entry.word}</dt>
            <dd>{entry.meaning}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
