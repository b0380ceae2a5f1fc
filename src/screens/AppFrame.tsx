import type { ComponentChildren } from "preact";
import type { ShellView } from "../views/shellView.js";
import { BrandMark } from "./parts/BrandMark.js";
import { Button } from "./parts/Button.js";
import { Icon } from "./parts/Icon.js";

interface Props {
  readonly view: ShellView;
  readonly children: ComponentChildren;
  /** The bar of actions above the places. */
  readonly actions?: ComponentChildren;
  /** A bar of the page's own that comes and goes by itself. */
  readonly note?: ComponentChildren;
  readonly onUpdate: () => void;
  readonly onUpdateLater: () => void;
  readonly onUndo: () => void;
}

/** The frame: brand, the page, and at the thumb the bars that come by themselves, the actions, the four places. */
export function AppFrame({ view, children, actions, note, onUpdate, onUpdateLater, onUndo }: Props) {
  return (
    <div class="app">
      <div>
        <a class="skip" href="#content">
          {view.skip}
        </a>
        <header class="app__head">
          <span class="brand">
            <BrandMark />
            {view.appName}
          </span>
        </header>
      </div>
      <main class="app__main" id="content" tabIndex={-1}>
        {children}
      </main>
      <footer class="app__foot">
        <div class="over">
          {view.toast !== null && (
            <div class="toast" role="status">
              <span>{view.toast.text}</span>
              {view.toast.undo !== null && (
                <Button look="quiet" onClick={onUndo}>
                  {view.toast.undo}
                </Button>
              )}
            </div>
          )}
          {view.update !== null && (
            <div class="bar" role="status">
              <span>
                <strong>{view.update.title}</strong> {view.update.text}
              </span>
              <span class="row">
                <Button onClick={onUpdate}>{view.update.now}</Button>
                <Button look="quiet" onClick={onUpdateLater}>
                  {view.update.later}
                </Button>
              </span>
            </div>
          )}
          {view.network !== null && (
            <p class="bar small" role="status">
              {view.network}
            </p>
          )}
          {note}
        </div>
        {actions}
        {/* Anew with the actions: a browser counts it as moved when the bar it sticks to grows above it. */}
        {view.places !== null && <Places key={!actions} places={view.places} />}
      </footer>
    </div>
  );
}

function Places({ places }: { readonly places: NonNullable<ShellView["places"]> }) {
  return (
    <nav class="places" aria-label={places.label}>
      <ul>
        {places.items.map((place) => (
          <li key={place.id}>
            <a href={place.href} aria-current={place.here ? "page" : undefined}>
              <Icon name={place.id} />
              {place.label}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
