import { useEffect, useRef } from "preact/hooks";

/** Shows more when it comes near the screen, or at a tap: long lists grow instead of being drawn at once. */
export function ShowMore({ label, onMore }: { readonly label: string; readonly onMore: () => void }) {
  const button = useRef<HTMLButtonElement>(null);
  const latest = useRef(onMore);
  latest.current = onMore;
  useEffect(() => {
    const element = button.current;
    if (element === null || typeof IntersectionObserver === "undefined") return;
    const watcher = new IntersectionObserver(
      (entries) => {
        if (entries.some((entry) => entry.isIntersecting)) latest.current();
      },
      { rootMargin: "1200px" },
    );
    watcher.observe(element);
    return () => watcher.disconnect();
  });
  return (
    <button ref={button} type="button" class="button button--wide" onClick={onMore}>
      {label}
    </button>
  );
}
