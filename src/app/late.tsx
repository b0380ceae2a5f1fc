import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { AppModel } from "./appModel.js";
import { Frame } from "./places/Frame.js";

/**
 * A page in a piece of its own, fetched when it is first opened. The frame stands meanwhile; where the piece cannot be
 * had, the page breaks and `Broken` says so.
 */
export function late<P extends { readonly app: AppModel }>(
  load: () => Promise<ComponentType<P>>,
): (props: P) => preact.JSX.Element {
  let loaded: ComponentType<P> | null = null;
  return function Late(props: P) {
    const [outcome, settle] = useState<{ readonly cause?: unknown } | null>(loaded === null ? null : {});
    useEffect(() => {
      if (loaded !== null) return;
      load().then(
        (page) => {
          loaded = page;
          settle({});
        },
        (cause: unknown) => settle({ cause }),
      );
    }, []);
    const Page = loaded;
    if (Page !== null) return <Page {...props} />;
    if (outcome !== null) throw outcome.cause;
    return <Frame app={props.app}>{null}</Frame>;
  };
}
