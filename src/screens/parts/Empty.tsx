import type { ComponentChildren } from "preact";
import { Icon, type IconName } from "./Icon.js";

interface Props {
  readonly icon: IconName;
  readonly title: string;
  readonly text: string;
  readonly children?: ComponentChildren;
}

/** A place with nothing in it yet: says what will be here and how it comes. */
export function Empty({ icon, title, text, children }: Props) {
  return (
    <section class="empty">
      <Icon name={icon} />
      <h2>{title}</h2>
      <p>{text}</p>
      {children}
    </section>
  );
}
