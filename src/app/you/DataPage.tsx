import { DataScreen } from "../../screens/DataScreen.js";
import { ImportPlanScreen } from "../../screens/ImportPlanScreen.js";
import { FormActions } from "../../screens/parts/FormActions.js";
import { dataView, importPlanView } from "../../views/dataView.js";
import type { AppModel } from "../appModel.js";
import { useControl } from "../meals/useControl.js";
import { Frame } from "../places/Frame.js";
import { MealsTrouble } from "../places/MealsTrouble.js";
import { createDataControl, type DataControl } from "./dataControl.js";
import type { OpenImport } from "./importControl.js";
import type { YouPageProps } from "./youPage.js";

/** Where the data are, and how they go out, come in and vanish. */
export function DataPage({ app, onBack }: YouPageProps) {
  const control = useControl(() => createDataControl(app, startAnew), "data");
  const opened = control.importing.open.value;
  if (opened !== null) return <ImportPage app={app} control={control} opened={opened} />;
  const counting = control.counting.value;
  if (counting.kind === "counting") return <Frame app={app}>{null}</Frame>;
  if (counting.kind === "failed")
    return <MealsTrouble app={app} error={counting.error} onRetry={() => void control.count()} />;
  const view = dataView(
    {
      ...counting.facts,
      fault: control.fault.value,
      saving: control.saving.value,
      erase: control.erase.value,
      nowMs: app.ports.nowMs(),
    },
    app.preferences.words.value,
  );
  return (
    <Frame app={app}>
      <DataScreen view={view} calls={{ onBack, ...control.calls }} />
    </Frame>
  );
}

interface ImportPageProps {
  readonly app: AppModel;
  readonly control: DataControl;
  readonly opened: OpenImport;
}

/** What a backup would do, before anything is done. */
function ImportPage({ app, control, opened }: ImportPageProps) {
  const { plan, contents, doing } = opened;
  const view = importPlanView(plan, contents.writtenAt, doing, app.preferences.words.value);
  const actions = (
    <FormActions
      save={view.do}
      cancel={view.cancel}
      blocked={view.doing || view.allSame !== null}
      onSave={() => void control.carryOut()}
      onCancel={control.importing.drop}
    />
  );
  return (
    <Frame app={app} actions={actions}>
      <ImportPlanScreen view={view} onChoose={control.importing.choose} />
    </Frame>
  );
}

/** The address without its page: the browser loads the app anew. */
function startAnew(): void {
  location.replace(location.pathname + location.search);
}
