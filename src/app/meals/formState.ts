/** What a form holds while it is open: shown at once, and kept in the store whenever the hand rests. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { MealDraft, MealFormState } from "../../views/mealFormView.js";
import { nowIso, type Ports } from "../ports.js";
import { beginForm, type BegunForm, type FormStart } from "./beginForm.js";
import type { FormPhotos } from "./formPhotos.js";
import { draftRecord } from "./formRecord.js";
import type { PhotoFault } from "./scalePhoto.js";

/** What was typed is kept when the hand rests so long. */
const REST_MS = 300;

export interface OpenForm extends BegunForm {
  readonly photoFault: PhotoFault | null;
  readonly status: MealFormState["status"];
}

export interface FormState {
  /** null while it is being read; "missing" if the meal to edit is not here. */
  readonly open: ReadonlySignal<OpenForm | "missing" | null>;
  /** The form, as long as it can be changed. */
  current(): OpenForm | null;
  change(patch: Partial<OpenForm>): void;
  edit(patch: Partial<MealDraft>): void;
  /** Keeps what was typed, and the photos with it. A store that is full is told, and nothing leaves the form. */
  keep(): Promise<void>;
  /** Keeps what was typed since the last time, if anything. */
  keepRest(): void;
  /** Nothing is kept any more. */
  end(): void;
}

export function createFormState(ports: Ports, start: FormStart, photos: FormPhotos): FormState {
  const open = signal<OpenForm | "missing" | null>(null);
  let resting: ReturnType<typeof setTimeout> | undefined;
  let ended = false;

  const current = () => (ended || open.value === null || open.value === "missing" ? null : open.value);

  function change(patch: Partial<OpenForm>): void {
    const form = current();
    if (form !== null) open.value = { ...form, ...patch };
  }

  function rest(): void {
    clearTimeout(resting);
    resting = undefined;
  }

  async function keep(): Promise<void> {
    rest();
    const form = current();
    if (form === null || form.status === "saving") return;
    const held = photos.held();
    const { subject, draft, origin, base } = form;
    const record = { subject, draft, origin, baseChangedAt: base?.changedAt ?? null };
    const kept = await ports.store.save({
      drafts: [draftRecord(record, nowIso(ports))],
      photos: held,
      demo: origin?.practice ?? false,
    });
    if (kept.ok) photos.acknowledged(held);
    if (current()?.status !== "saving") change({ status: kept.ok ? "editing" : "failed" });
  }

  async function begin(): Promise<void> {
    const begun = await beginForm(ports, start);
    open.value = begun === null ? "missing" : { ...begun, photoFault: null, status: "editing" };
    // A finding that was never saved must outlast a reload, even before a word was typed.
    if (begun !== null && begun.origin !== null && !begun.resumed) await keep();
  }

  void begin();
  return {
    open,
    current,
    change,
    edit: (patch) => {
      const form = current();
      if (form === null) return;
      change({ draft: { ...form.draft, ...patch } });
      rest();
      resting = setTimeout(() => void keep(), REST_MS);
    },
    keep,
    keepRest: () => {
      if (resting !== undefined) void keep();
    },
    end: () => {
      rest();
      ended = true;
    },
  };
}
