import { signal, type ReadonlySignal } from "@preact/signals";

/** The four places of the app. */
export const PLACES = ["plate", "meals", "nose", "you"] as const;
export type Place = (typeof PLACES)[number];

/** Where the user is: a place, and a page within it (such as a meal's id). */
export interface Route {
  readonly place: Place;
  readonly page: readonly string[];
}

/** Reads a location's hash; what it does not know leads to Plate. */
export function routeOf(hash: string): Route {
  const [place = "", ...page] = hash.replace(/^#\/?/, "").split("/").map(decodePart);
  const known = PLACES.find((candidate) => candidate === place);
  return known === undefined ? { place: "plate", page: [] } : { place: known, page: page.filter(Boolean) };
}

export const hashOf = (place: Place, ...page: readonly string[]): string =>
  `#/${[place, ...page.map(encodeURIComponent)].join("/")}`;

export interface Router {
  readonly route: ReadonlySignal<Route>;
  go(place: Place, ...page: readonly string[]): void;
  /** As `go`, but the way back does not lead here again: for a form that is done with. */
  replace(place: Place, ...page: readonly string[]): void;
  back(): void;
}

/** Follows the address bar, so that back, forward and reload work. */
export function createRouter(): Router {
  const route = signal(routeOf(location.hash));
  addEventListener("hashchange", () => {
    route.value = routeOf(location.hash);
    scrollTo(0, 0);
  });
  return {
    route,
    go: (place, ...page) => {
      location.hash = hashOf(place, ...page);
    },
    replace: (place, ...page) => location.replace(hashOf(place, ...page)),
    back: () => history.back(),
  };
}

function decodePart(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
