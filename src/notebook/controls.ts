import { element } from "./element.js";

/** A control with its label; `show` sets it without telling anyone. */
export interface Control<T> {
  readonly node: HTMLElement;
  readonly show: (value: T) => void;
}

/** The level of all intervals, a fraction, chosen in whole percent from 80 to 99. */
export function levelSlider(level: number, changed: (level: number) => void): Control<number> {
  const input = element("input", { type: "range", id: "level", min: 80, max: 99, step: 1 });
  const shown = element("output", { for: "level" });
  const show = (value: number): void => {
    const text = `${Math.round(value * 100)}%`;
    input.value = String(Math.round(value * 100));
    input.setAttribute("aria-valuetext", text);
    if (shown.textContent !== text) shown.textContent = text;
  };
  input.addEventListener("input", () => {
    show(input.valueAsNumber / 100);
    changed(input.valueAsNumber / 100);
  });
  show(level);
  return {
    node: element("div", { class: "control" }, element("label", { for: "level" }, "Confidence"), input, shown),
    show,
  };
}

export interface Choice {
  readonly value: string;
  readonly text: string;
}

/** One of several, with a label before it or, when `hidden`, only spoken. */
export function choice(
  label: string,
  options: readonly Choice[],
  value: string,
  changed: (value: string) => void,
  more: { readonly id: string; readonly hidden?: boolean },
): HTMLElement {
  const entries = options.map((one) =>
    element("option", { value: one.value, selected: one.value === value }, one.text),
  );
  const select = element("select", { id: more.id }, ...entries);
  select.addEventListener("change", () => changed(select.value));
  if (more.hidden) {
    select.setAttribute("aria-label", label);
    return select;
  }
  return element("div", { class: "control" }, element("label", { for: more.id }, label), select);
}
