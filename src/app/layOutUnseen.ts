import { render, type VNode } from "preact";

/**
 * Lays a page out where nobody sees it, and takes it away again before the next frame: the letters and styles that a
 * page is the first to use are most of what its first layout costs.
 */
export function layOutUnseen(page: VNode): void {
  const host = document.createElement("div");
  host.className = "unseen";
  document.body.append(host);
  render(page, host);
  host.getBoundingClientRect();
  render(null, host);
  host.remove();
}
