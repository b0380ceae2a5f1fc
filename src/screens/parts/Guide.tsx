import type { GuideView } from "../../views/checkView.js";
import { Pose } from "./Pose.js";

/** How to hold the sniffer: a drawing, and the same in words. */
export function Guide({ view }: { readonly view: GuideView }) {
  return (
    <div class="guide">
      <Pose pose={view.pose} />
      <ul>
        {view.lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
