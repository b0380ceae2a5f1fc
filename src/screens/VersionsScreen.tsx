import type { VersionsView } from "../views/versionsView.js";
import { Button } from "./parts/Button.js";
import { FileButton } from "./parts/FileButton.js";
import { Fold } from "./parts/Fold.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";

export interface VersionsCalls {
  readonly onBack: () => void;
  readonly onCompare: (noseId: string) => void;
  readonly onExport: (noseId: string) => void;
  readonly onImport: (file: File) => void;
  readonly onImportSamples: (file: File) => void;
  readonly onExportSamples: () => void;
}

/** All noses that were ever taught, and files in and out. */
export function VersionsScreen({
  view,
  calls,
}: {
  readonly view: VersionsView;
  readonly calls: VersionsCalls;
}) {
  return (
    <div class="stack stack--wide">
      <PageHead title={view.title} text={view.text} back={{ label: view.back, onBack: calls.onBack }} />
      {view.fault !== null && (
        <Notice strong live>
          {view.fault}
        </Notice>
      )}
      {view.brought !== null && (
        <Notice title={view.brought.text} live>
          <ul class="small numbers">
            {view.brought.faults.map((fault) => (
              <li key={fault}>{fault}</li>
            ))}
          </ul>
        </Notice>
      )}
      <div class="stack">
        {view.noses.map((nose) => (
          <article key={nose.id} class={nose.active === null ? "card" : "nose-card"}>
            <h2>
              {nose.name} {nose.demo !== null && <span class="mark-demo">{nose.demo}</span>}
            </h2>
            <p class="small quiet numbers">{nose.taught}</p>
            {nose.moved !== null && <p class="small numbers">{nose.moved}</p>}
            {nose.active !== null && <p class="tag tag--start">{nose.active}</p>}
            <div class="row">
              {nose.active === null && (
                <Button label={nose.compareLabel} onClick={() => calls.onCompare(nose.id)}>
                  {nose.compare}
                </Button>
              )}
              <Button look="quiet" label={nose.exportLabel} onClick={() => calls.onExport(nose.id)}>
                {nose.export}
              </Button>
            </div>
          </article>
        ))}
      </div>
      <section class="stack stack--tight">
        <FileButton label={view.import.label} accept=".json" onFile={calls.onImport} />
        <p class="field__hint">{view.import.text}</p>
        <FileButton label={view.samples.import} accept=".jsonl,.json,.txt" onFile={calls.onImportSamples} />
        <div class="row">
          <Button onClick={calls.onExportSamples}>{view.samples.export}</Button>
        </div>
      </section>
      <Fold title={view.history.title}>
        <ul class="small numbers stack stack--tight">
          {view.history.lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Fold>
    </div>
  );
}
