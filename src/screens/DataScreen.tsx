import type { DataView } from "../views/dataView.js";
import { Button } from "./parts/Button.js";
import { Choices } from "./parts/Choices.js";
import { Facts } from "./parts/Facts.js";
import { FileButton } from "./parts/FileButton.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";
import { Sheet } from "./parts/Sheet.js";

export interface DataCalls {
  readonly onBack: () => void;
  readonly onPersist: () => void;
  readonly onSave: (withPhotos: boolean) => void;
  readonly onFile: (file: File) => void;
  readonly onDropDemo: () => void;
  readonly onErase: (what: "open" | "close" | "now") => void;
  readonly onEraseSure: (sure: boolean) => void;
}

/** Where the data are, and how they go out, come in and vanish. */
export function DataScreen({ view, calls }: { readonly view: DataView; readonly calls: DataCalls }) {
  return (
    <div class="stack stack--wide">
      <div class="stack">
        <PageHead title={view.title} text={view.text} back={{ label: view.back, onBack: calls.onBack }} />
        <Facts items={view.facts} />
        <p class="small quiet">{view.persistence.text}</p>
        {view.persistence.ask !== null && (
          <div class="row">
            <Button onClick={calls.onPersist}>{view.persistence.ask}</Button>
          </div>
        )}
        {view.setAside !== null && <Notice>{view.setAside}</Notice>}
      </div>
      <section class="stack stack--tight">
        <h2>{view.out.title}</h2>
        <p class="quiet">{view.out.text}</p>
        <p>{view.out.last}</p>
        <Fault text={view.out.fault} />
        <div class="stack stack--tight">
          <Button look="main" blocked={view.out.saving} onClick={() => calls.onSave(true)}>
            {view.out.save}
          </Button>
          <Button blocked={view.out.saving} onClick={() => calls.onSave(false)}>
            {view.out.saveNoPhotos}
          </Button>
        </div>
      </section>
      <section class="stack stack--tight">
        <h2>{view.in.title}</h2>
        <p class="quiet">{view.in.text}</p>
        <Fault text={view.in.fault} />
        <FileButton label={view.in.choose} accept=".nidor,.jsonl,.txt" onFile={calls.onFile} />
      </section>
      {view.demo !== null && (
        <section class="stack stack--tight">
          <h2>{view.demo.title}</h2>
          <p class="quiet">{view.demo.text}</p>
          <div class="row">
            <Button onClick={calls.onDropDemo}>{view.demo.drop}</Button>
          </div>
        </section>
      )}
      <section class="stack stack--tight">
        <h2>{view.erase.title}</h2>
        <p class="quiet">{view.erase.text}</p>
        <div class="row">
          <Button onClick={() => calls.onErase("open")}>{view.erase.open}</Button>
        </div>
      </section>
      {view.erase.sheet !== null && <EraseSheet view={view.erase.sheet} calls={calls} />}
    </div>
  );
}

/** Beside the button that was tapped: at the top of the page nobody would see it. */
function Fault({ text }: { readonly text: string | null }) {
  if (text === null) return null;
  return (
    <Notice strong live>
      {text}
    </Notice>
  );
}

function EraseSheet({
  view,
  calls,
}: {
  readonly view: NonNullable<DataView["erase"]["sheet"]>;
  readonly calls: DataCalls;
}) {
  return (
    <Sheet title={view.title} onClose={() => calls.onErase("close")}>
      <p>{view.text}</p>
      <Choices
        name="erase-sure"
        legend={view.sure}
        legendHidden
        many
        rows
        options={[{ id: "sure", label: view.sure, chosen: view.sureOn }]}
        onChoose={(_, sure) => calls.onEraseSure(sure)}
      />
      <Button wide big onClick={() => calls.onErase("close")}>
        {view.cancel}
      </Button>
      <Button wide blocked={!view.sureOn} onClick={() => calls.onErase("now")}>
        {view.now}
      </Button>
    </Sheet>
  );
}
