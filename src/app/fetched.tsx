import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { untilHere } from "./pieces.js";

/**
 * A component in a piece of its own, fetched when it is first wanted. Where there is no network for it, what stands
 * meanwhile stays; where the piece itself is at fault, the page breaks and `Broken` says so.
 *
 * @param meanwhile - what stands until it is here
 */
export function fetched<P extends object>(
  load: () => Promise<ComponentType<P>>,
  meanwhile: (props: P) => preact.JSX.Element | null,
): (props: P) => preact.JSX.Element | null {
  let loaded: ComponentType<P> | null = null;
  return function Fetched(props: P) {
    const [outcome, settle] = useState<{ readonly cause?: unknown } | null>(loaded === null ? null : {});
    useEffect(() => {
      if (loaded !== null) return;
      untilHere(load).then(
        (component) => {
          loaded = component;
          settle({});
        },
        (cause: unknown) => settle({ cause }),
      );
    }, []);
    const Component = loaded;
    if (Component !== null) return <Component {...props} />;
    if (outcome !== null) throw outcome.cause;
    return meanwhile(props);
  };
}
