import { choice, levelSlider } from "../../src/notebook/controls.js";
import { element } from "../../src/notebook/element.js";
import type { Notebook } from "../../src/notebook/notebook.js";
import type { Agreement, Page } from "./agreement.js";

/** Controls under the answers, by the id of their question, and what keeps them in step with the readings. */
export function agreementControls(notebook: Notebook<Agreement>) {
  const [pair, cuts, treated] = [element("div"), element("div"), element("div")];
  const level = levelSlider(0.95, (value) => notebook.set("level", value));
  const prevalence = shareSlider({ id: "prevalence", label: "How common", most: 99, said: (n) => `${n}%` }, (share) =>
    notebook.set("prevalence", share),
  );
  const kappa = shareSlider(
    { id: "plan-kappa", label: "Kappa expected", most: 95, said: (n) => (n / 100).toFixed(2) },
    (share) => notebook.set("planKappa", share),
  );
  const width = choice(
    "To within",
    [0.05, 0.1, 0.15, 0.2].map((half) => ({ value: String(2 * half), text: `${half.toFixed(2)} either way` })),
    "0.2",
    (value) => notebook.set("planWidth", Number(value)),
    { id: "plan-width" },
  );
  let shape = "";
  return {
    of: (id: string): HTMLElement[] =>
      id === "same"
        ? [pair, level.node]
        : id === "change"
          ? [cuts, treated]
          : id === "why"
            ? [prevalence.node]
            : id === "many"
              ? [kappa.node, width]
              : [],
    show({ found }: Page): void {
      const { readings, graded, choices } = found;
      prevalence.show(choices.prevalence);
      kappa.show(choices.plan.kappa);
      const now = JSON.stringify([readings.columns, graded.grades, readings.kind]);
      if (now === shape) return;
      shape = now;
      const pairs = found.grades.pairs.map(({ raters }) => ({
        value: raters.join(),
        text: raters.map((place) => readings.columns[place]!.name).join(" and "),
      }));
      const paired = (value: string): void => {
        const [a, b] = value.split(",").map(Number);
        notebook.set("pair", [a!, b!]);
      };
      pair.replaceChildren(choice("Readings", pairs, choices.pair.join(), paired, { id: "pair" }));
      cuts.replaceChildren(...(readings.kind === "measurements" ? [cutInput(notebook, choices.cuts)] : []));
      const from = graded.grades.slice(1).map((grade, k) => ({ value: String(k + 1), text: `from grade ${grade} on` }));
      const chosen = (value: string): void => notebook.set("treatedFrom", Number(value));
      treated.replaceChildren(
        choice("Treatment changes", from, String(choices.treatedFrom), chosen, { id: "treated" }),
      );
    },
  };
}

/** Cut-points as text; what is no rising list of at most nine numbers is refused and changes nothing. */
function cutInput(notebook: Notebook<Agreement>, cuts: readonly number[]): HTMLElement {
  const input = element("input", { type: "text", id: "cuts", value: cuts.join(", "), "aria-describedby": "cuts-rule" });
  const rule = element("p", { class: "note", id: "cuts-rule" }, "Rising numbers, one to nine, with commas between.");
  input.addEventListener("change", () => {
    const given = input.value.split(",").map((part) => (part.trim() === "" ? NaN : Number(part)));
    const right =
      given.length <= 9 && given.every((cut, k) => Number.isFinite(cut) && (k === 0 || cut > given[k - 1]!));
    input.setAttribute("aria-invalid", String(!right));
    rule.textContent = right
      ? "Rising numbers, one to nine, with commas between."
      : "Not taken: give rising numbers, one to nine, with commas between.";
    if (right) notebook.set("cuts", given);
  });
  return element(
    "div",
    {},
    element("div", { class: "control" }, element("label", { for: "cuts" }, "Cut-points"), input),
    rule,
  );
}

interface ShareSlider {
  readonly id: string;
  readonly label: string;
  /** Hundredths at most. */
  readonly most: number;
  readonly said: (hundredths: number) => string;
}

/** A share in hundredths from 1 up; "as found" until it is moved. */
function shareSlider({ id, label, most, said }: ShareSlider, changed: (share: number) => void) {
  const input = element("input", { type: "range", id, min: 1, max: most, step: 1 });
  const shown = element("output", { for: id });
  const write = (text: string): void => {
    shown.textContent = text;
    input.setAttribute("aria-valuetext", text);
  };
  input.addEventListener("input", () => {
    write(said(input.valueAsNumber));
    changed(input.valueAsNumber / 100);
  });
  return {
    node: element("div", { class: "control" }, element("label", { for: id }, label), input, shown),
    show(share: number | null): void {
      if (share === null) {
        input.value = "50";
        write("as found");
      }
    },
  };
}
