import type { MealRowView } from "../../views/mealRowView.js";
import { VerdictMark } from "./VerdictMark.js";

interface Props {
  readonly view: MealRowView;
  readonly href: string;
  /** Address of the first photo; undefined while it is not loaded. */
  readonly photoUrl?: string | undefined;
}

/** One meal in a list; the whole row leads to it. */
export function MealRow({ view, href, photoUrl }: Props) {
  return (
    <a class="meal-row" href={href}>
      <span class="meal-row__words">
        <span class="meal-row__dish">
          {view.dish} {view.demo !== null && <span class="mark-demo">{view.demo}</span>}
        </span>
        <span class="small quiet numbers">{view.line}</span>
        {view.marks.length > 0 && (
          <span class="row">
            {view.marks.map((mark) => (
              <span key={mark} class="tag">
                {mark}
              </span>
            ))}
          </span>
        )}
        {view.notSniffed !== null && <span class="small quiet">{view.notSniffed}</span>}
        {view.findings.length > 0 && (
          <span class="meal-row__findings small">
            {view.findings.map((finding) => (
              <span key={finding.group} class="meal-row__finding">
                <VerdictMark tone={finding.tone} small />
                {finding.text}
              </span>
            ))}
          </span>
        )}
      </span>
      {photoUrl !== undefined && <img class="meal-row__photo" src={photoUrl} alt="" loading="lazy" />}
    </a>
  );
}
