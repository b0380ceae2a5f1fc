/** Shows one screen in one state: `?screen=NAME&theme=dark&language=de`. Without a name it lists them. */
/// <reference types="vite/client" />
import { render } from "preact";
import { AppFrame } from "../../../src/screens/AppFrame.js";
import "../../../src/screens/styles/index.css";
import { shellView } from "../../../src/views/shellView.js";
import { ENGLISH, GERMAN } from "./fixtures/words.js";
import { PAGES } from "./pages.js";

const query = new URLSearchParams(location.search);
const theme = query.get("theme");
if (theme !== null) document.documentElement.dataset.theme = theme;
const words = query.get("language") === "de" ? GERMAN : ENGLISH;
document.documentElement.lang = words.formats.locale;
const page = PAGES[query.get("screen") ?? ""];
const host = document.getElementById("app");
if (host !== null) render(page === undefined ? <Names /> : <Framed page={page} />, host);

function Names() {
  return (
    <ul>
      {Object.keys(PAGES).map((name) => (
        <li key={name}>
          <a href={`?screen=${name}`}>{name}</a>
        </li>
      ))}
    </ul>
  );
}

function Framed({ page }: { readonly page: (typeof PAGES)[string] }) {
  const shown = page(words);
  const view = shellView(
    {
      place: shown.place ?? "plate",
      hrefOf: (place) => `#/${place}`,
      checkRunning: shown.place === null,
      updateWaiting: query.has("update"),
      online: !query.has("offline"),
      kept: true,
      pieceMissing: query.has("missing"),
      toast: query.has("toast") ? { text: "Meal deleted", undoable: true } : null,
    },
    words,
  );
  const nothing = () => undefined;
  return (
    <AppFrame
      view={view}
      actions={shown.actions}
      note={shown.note}
      onUpdate={nothing}
      onUpdateLater={nothing}
      onUndo={nothing}
    >
      {shown.body}
    </AppFrame>
  );
}
