import type { YouHomeView, YouPage } from "../views/youHomeView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { Button } from "./parts/Button.js";
import { LinkList } from "./parts/LinkList.js";
import { Notice } from "./parts/Notice.js";
import { PageHead } from "./parts/PageHead.js";

interface Props {
  readonly view: YouHomeView;
  readonly onOpen: (page: YouPage) => void;
}

/** The You place: who you are in a few lines, and the pages behind. */
export function YouHomeScreen({ view, onOpen }: Props) {
  return (
    <div class="stack">
      <PageHead title={view.title} text={view.text} />
      {view.profileLost !== null && (
        <Notice strong live>
          {view.profileLost}
        </Notice>
      )}
      <LinkList items={view.links} onOpen={(id) => onOpen(id as YouPage)} />
    </div>
  );
}

/** The way on during the first run; nothing later. */
export function YouHomeActions({
  next,
  onNext,
}: {
  readonly next: string | null;
  readonly onNext: () => void;
}) {
  if (next === null) return null;
  return (
    <ActionBar>
      <Button look="main" big wide onClick={onNext}>
        {next}
      </Button>
    </ActionBar>
  );
}
