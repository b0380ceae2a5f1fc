import type { DayRangeView } from "../../views/dayRangeView.js";
import { TextField } from "./TextField.js";

interface Props {
  readonly id: string;
  readonly view: DayRangeView;
  readonly onDays: (from: string, upto: string) => void;
}

/** From one day up to another. */
export function DayRangeFields({ id, view, onDays }: Props) {
  const { from, upto, fault } = view;
  return (
    <div class="day-range">
      <TextField
        id={`${id}-from`}
        type="date"
        label={from.label}
        value={from.value}
        onInput={(day) => onDays(day, upto.value)}
      />
      <TextField
        id={`${id}-upto`}
        type="date"
        label={upto.label}
        value={upto.value}
        fault={fault}
        onInput={(day) => onDays(from.value, day)}
      />
    </div>
  );
}
