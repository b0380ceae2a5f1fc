import type { NoseCardView, NoseGroupView, NoseHomeView, NosePage } from "../views/noseHomeView.js";
import type { RefreshView } from "../views/refreshView.js";
import { ActionBar } from "./parts/ActionBar.js";
import { Below } from "./parts/Below.js";
import { Button } from "./parts/Button.js";
import { Empty } from "./parts/Empty.js";
import { Facts } from "./parts/Facts.js";
import { LinkList } from "./parts/LinkList.js";
import { Notice } from "./parts/Notice.js";
import { RateLine } from "./parts/RateLine.js";

interface Props {
  readonly view: NoseHomeView;
  readonly onOpen: (page: NosePage) => void;
  readonly onRefresh: () => void;
}

/** The Nose place: the nose in use, what it can and cannot do, and the pages behind. */
export function NoseHomeScreen({ view, onOpen, onRefresh }: Props) {
  return (
    <div class="stack stack--wide">
      <h1 tabIndex={-1}>{view.title}</h1>
      {view.loading !== null && <p role="status">{view.loading}</p>}
      {view.problem !== null && (
        <Notice title={view.problem.title} strong>
          {view.problem.text}
        </Notice>
      )}
      {view.empty !== null && <Empty icon="nose" title={view.empty.title} text={view.empty.text} />}
      {view.refresh !== null && <Refresh view={view.refresh} onRefresh={onRefresh} />}
      {view.card !== null && <NoseCard view={view.card} />}
      <Below>
        {view.card !== null && <NoseSkills view={view.card} />}
        <LinkList items={view.links} onOpen={(id) => onOpen(id as NosePage)} />
      </Below>
    </div>
  );
}

function Refresh({ view, onRefresh }: { readonly view: RefreshView; readonly onRefresh: () => void }) {
  return (
    <Notice title={view.title}>
      <p>{view.why}</p>
      <p>{view.ask}</p>
      <ul class="small numbers stack stack--tight">
        {view.missing.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {view.go !== null && (
        <div class="row">
          <Button onClick={onRefresh}>{view.go}</Button>
        </div>
      )}
    </Notice>
  );
}

function NoseCard({ view }: { readonly view: NoseCardView }) {
  return (
    <div class="nose-card">
      <h2>{view.name}</h2>
      <p class="quiet">{view.taught}</p>
      {view.moved !== null && <p class="small numbers">{view.moved}</p>}
      {view.demo !== null && <Notice strong>{view.demo}</Notice>}
      <Facts items={view.facts} />
    </div>
  );
}

function NoseSkills({ view }: { readonly view: NoseCardView }) {
  return (
    <>
      <section class="stack">
        <h2>{view.groupsTitle}</h2>
        <p class="small quiet">{view.groupsText}</p>
        {view.groups.map((group) => (
          <GroupPart key={group.group} view={group} />
        ))}
      </section>
      <section class="stack stack--tight">
        <h2>{view.cannotTitle}</h2>
        <ul class="cannot">
          {view.cannot.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </section>
    </>
  );
}

function GroupPart({ view }: { readonly view: NoseGroupView }) {
  return (
    <article class="card">
      <h3>{view.name}</h3>
      <p class="small quiet numbers">{view.plates}</p>
      {view.rates.map((rate) => (
        <RateLine key={rate.label} {...rate} />
      ))}
      <p class="small numbers">{view.clearing}</p>
      {view.alarming !== null && <p class="small numbers">{view.alarming}</p>}
    </article>
  );
}

/** The one action of the place. */
export function NoseHomeActions({
  label,
  onTeach,
}: {
  readonly label: string;
  readonly onTeach: () => void;
}) {
  return (
    <ActionBar>
      <Button look="main" big wide onClick={onTeach}>
        {label}
      </Button>
    </ActionBar>
  );
}
