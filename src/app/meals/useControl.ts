import { useEffect, useMemo } from "preact/hooks";

/** Makes a part that lives as long as the page that uses it; another key, another part. */
export function useControl<T extends { close(): void }>(make: () => T, key: string): T {
  const control = useMemo(make, [key]);
  useEffect(() => () => control.close(), [control]);
  return control;
}

/** As `useControl`, for a form: a phone may end a page that is out of sight without another word. */
export function useForm<T extends { close(): void; keepRest(): void }>(make: () => T, key: string): T {
  const form = useControl(make, key);
  useEffect(() => {
    const keep = () => {
      if (document.visibilityState === "hidden") form.keepRest();
    };
    document.addEventListener("visibilitychange", keep);
    return () => document.removeEventListener("visibilitychange", keep);
  }, [form]);
  return form;
}
