import { useEffect, useMemo } from "preact/hooks";
import { TransferActions, TransferScreen } from "../../screens/TransferScreen.js";
import { transferView } from "../../views/transferView.js";
import { isVirtualSniffer, VIRTUAL_SNIFFER_ID } from "../../virtual/virtualSnifferId.js";
import type { AppModel } from "../appModel.js";
import { Frame } from "../places/Frame.js";
import { connectedSniffer, createMoving } from "./moving.js";

/** Moves the nose in use to the connected sniffer, by plates and jar readings of both. */
export function TransferPage({ app }: { readonly app: AppModel }) {
  const moving = useMemo(() => createMoving(app), []);
  const nose = app.noses.current.value;
  const sniffer = connectedSniffer(app);
  useEffect(() => void app.reach.load(), []);
  useEffect(() => {
    void moving.start();
    return moving.leave;
  }, [nose?.id, sniffer?.id, app.samples.samples.value.length]);
  const { outcome, plates, jarReadings, moved } = moving.state.value;
  const view = transferView(
    {
      noseName: nose?.name ?? null,
      taughtOn: nose === null ? null : nameOf(nose.sniffer.id, app),
      connected: sniffer === null ? null : nameOf(sniffer.id, app),
      plates,
      jarReadings,
      outcome,
    },
    app.preferences.words.value,
  );

  async function accept(): Promise<void> {
    if (moved === null) return;
    const offered = await app.noses.offerMoved(moved.nose, moved.compared);
    if (offered.ok || offered.error.kind === "busy") app.router.go("nose", "teach");
    else app.tellStoreError(offered.error);
  }

  const calls = {
    onAccept: () => void accept(),
    onStop: moving.stop,
    onAgain: () => void moving.start(),
  };
  return (
    <Frame app={app} actions={<TransferActions view={view} calls={calls} />}>
      <TransferScreen view={view} onBack={() => app.router.go("nose")} />
    </Frame>
  );
}

/** As people know it; two of one name are told apart by their ids, and one that is not known goes by its id. */
function nameOf(snifferId: string, { reach, preferences }: AppModel): string {
  const { sniffer, practice } = preferences.words.value.text;
  if (isVirtualSniffer(snifferId))
    return snifferId === VIRTUAL_SNIFFER_ID ? sniffer.virtualName : practice.otherUnit;
  const known = reach.known.value ?? [];
  const name = known.find((one) => one.snifferId === snifferId)?.name ?? "";
  const alike = known.filter((one) => one.name === name).length > 1;
  return name === "" ? snifferId : alike ? `${name} (${snifferId})` : name;
}
