import { Icon, type IconName } from "./Icon.js";

interface Props {
  readonly items: readonly {
    readonly id: string;
    readonly label: string;
    readonly text: string;
    readonly icon?: IconName;
  }[];
  readonly onOpen: (id: string) => void;
}

/** Pages that lie behind this one. */
export function LinkList({ items, onOpen }: Props) {
  return (
    <ul class="links">
      {items.map((item) => (
        <li key={item.id}>
          <button type="button" onClick={() => onOpen(item.id)}>
            {item.icon !== undefined && <Icon name={item.icon} />}
            <span>
              <span class="links__label">{item.label}</span>
              <span class="small quiet">{item.text}</span>
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}
