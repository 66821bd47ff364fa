import type { Control } from "./controls.js";
import { element } from "./element.js";

export interface ValueSliderOptions {
  readonly id: string;
  readonly label: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: number;
  readonly changed: (value: number) => void;
}

/** A slider of whole numbers with its label and its value. */
export function valueSlider({ id, label, min, max, step, value, changed }: ValueSliderOptions): Control<number> {
  const input = element("input", { type: "range", id, min, max, step });
  const shown = element("output", { for: id });
  const show = (shownValue: number): void => {
    input.value = String(shownValue);
    shown.textContent = String(shownValue);
  };
  show(value);
  input.addEventListener("input", () => {
    shown.textContent = input.value;
    changed(input.valueAsNumber);
  });
  return { node: element("div", { class: "control" }, element("label", { for: id }, label), input, shown), show };
}
