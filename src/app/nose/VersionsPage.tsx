import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { VersionsScreen } from "../../screens/VersionsScreen.js";
import type { NoseList } from "../../store/noseStore.js";
import { versionsView, type NoseImportFault, type VersionsState } from "../../views/versionsView.js";
import type { AppModel } from "../appModel.js";
import { download, fileName } from "../files.js";
import { Frame } from "../places/Frame.js";

/** No nose comes near this; what does is something else. */
const LARGEST_NOSE_BYTES = 16 * 1024 * 1024;

/** All noses, what was decided of them, and files in and out. */
export function VersionsPage({ app }: { readonly app: AppModel }) {
  const list = useSignal<NoseList | null>(null);
  const { store } = app.ports;
  const load = async () => {
    const read = await store.listNoses();
    if (read.ok) list.value = read.value;
    else {
      list.value ??= { noses: [], activeId: null, history: [], setAside: [] };
      app.tellStoreError(read.error);
    }
  };
  useEffect(() => {
    void load();
    return store.subscribe(["noses"], () => void load());
  }, []);
  // What stands below the list would move when it comes.
  return list.value === null ? <Frame app={app}>{null}</Frame> : <Versions app={app} list={list.value} />;
}

function Versions({ app, list }: { readonly app: AppModel; readonly list: NoseList }) {
  const fault = useSignal<NoseImportFault | null>(null);
  const brought = useSignal<VersionsState["brought"]>(null);
  const { noses, samples } = app;

  const view = versionsView(
    {
      noses: list.noses,
      activeId: list.activeId,
      decisions: list.history.toReversed(),
      fault: fault.value,
      brought: brought.value,
    },
    app.preferences.words.value,
  );

  async function compare(id: string): Promise<void> {
    app.router.go("nose", "teach");
    const offered = await noses.offerVersion(id);
    if (!offered.ok) app.tellStoreError(offered.error);
  }

  async function exportNose(id: string): Promise<void> {
    const text = await noses.exportNose(id);
    const name = list.noses.find((nose) => nose.id === id)?.name ?? id;
    if (text.ok) download(fileName("nose", `${name}.json`), text.value, "application/json");
    else app.tellStoreError(text.error);
  }

  async function importNose(file: File): Promise<void> {
    fault.value = null;
    if (file.size > LARGEST_NOSE_BYTES) {
      fault.value = { kind: "tooLarge" };
      return;
    }
    const text = await file.text().catch(() => null);
    if (text === null) {
      fault.value = { kind: "unreadable" };
      return;
    }
    const sniffer = app.sniffers.state.value;
    const channels = sniffer.kind === "ready" ? sniffer.sniffer.layout.channels : null;
    const read = await noses.importNose(text, channels);
    if (read.ok) app.router.go("nose", "teach");
    else fault.value = read.error;
  }

  async function importSamples(file: File): Promise<void> {
    brought.value = null;
    fault.value = null;
    const read = await samples.bringIn(file);
    if (read.ok) brought.value = read.value;
    else fault.value = read.error.kind === "tooLarge" ? { kind: "tooLarge" } : { kind: "storage" };
  }

  async function exportSamples(): Promise<void> {
    const text = await samples.asFile();
    if (text.ok) download("nidor-samples.sniffs.jsonl", text.value, "application/jsonl");
    else app.tellStoreError(text.error);
  }

  return (
    <Frame app={app}>
      <VersionsScreen
        view={view}
        calls={{
          onBack: () => app.router.go("nose"),
          onCompare: (id) => void compare(id),
          onExport: (id) => void exportNose(id),
          onImport: (file) => void importNose(file),
          onImportSamples: (file) => void importSamples(file),
          onExportSamples: () => void exportSamples(),
        }}
      />
    </Frame>
  );
}
