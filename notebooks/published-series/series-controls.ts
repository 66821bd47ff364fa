import { choice, levelSlider } from "../../src/notebook/controls.js";
import { element } from "../../src/notebook/element.js";
import type { Notebook } from "../../src/notebook/notebook.js";
import type { MixChoice, PublishedSeries } from "./published-series.js";

/** The controls of the page, by the question they stand under. */
export function seriesControls(notebook: Notebook<PublishedSeries>) {
  const level = levelSlider(0.95, (value) => notebook.set("level", value));
  const mix = element("div");
  const weights = element("div");
  let held: Record<string, number> = {};
  let names = "";
  let chosen: MixChoice = { kind: "all" };
  const showWeights = (grades: readonly string[]): void => {
    weights.hidden = chosen.kind !== "own";
    weights.replaceChildren(
      ...grades.map((grade, i) =>
        weightSlider(grade, `weight-${i}`, held[grade] ?? 1, (value) => {
          held = { ...held, [grade]: value };
          notebook.set("ownWeights", held);
        }),
      ),
    );
  };
  notebook.observe("findings", {
    fulfilled: ({ series, grades }) => {
      const now = JSON.stringify([series.map(({ card }) => card.name), grades]);
      if (now === names) return;
      names = now;
      const options = [
        { value: "all", text: "of all series together" },
        ...series.map(({ card }, i) => ({ value: `series ${i}`, text: `of ${card.name}` })),
        { value: "own", text: "of my own choice" },
      ];
      const value =
        chosen.kind === "series"
          ? `series ${series.findIndex(({ card }) => chosen.kind === "series" && card.name === chosen.name)}`
          : chosen.kind;
      const changed = (picked: string): void => {
        const at = /^series (\d+)$/.exec(picked);
        chosen = at ? { kind: "series", name: series[Number(at[1])]!.card.name } : { kind: picked as "all" | "own" };
        notebook.set("mixChoice", chosen);
        weights.hidden = chosen.kind !== "own";
      };
      mix.replaceChildren(choice("Grade mix", options, value, changed, { id: "mix-of" }));
      showWeights(grades);
    },
    rejected: () => {},
  });
  const pool = element("input", { type: "checkbox", id: "pool" });
  pool.addEventListener("change", () => notebook.set("pool", pool.checked));
  const together = element(
    "div",
    { class: "control" },
    pool,
    element("label", { for: "pool" }, "Put them together all the same"),
  );
  const next = choice(
    "Next cases",
    [10, 20, 50].map((n) => ({ value: String(n), text: String(n) })),
    "20",
    (n) => notebook.set("next", Number(n)),
    { id: "next-cases" },
  );
  const byId: Record<string, readonly HTMLElement[]> = {
    grades: [level.node],
    mix: [mix, weights],
    next: [next],
    together: [together],
  };
  return { controlsOf: (id: string): readonly HTMLElement[] => byId[id] ?? [] };
}

function weightSlider(grade: string, id: string, value: number, changed: (value: number) => void): HTMLElement {
  const input = element("input", { type: "range", id, min: 0, max: 20, step: 1 });
  const out = element("output", { for: id }, String(value));
  input.value = String(value);
  input.addEventListener("input", () => {
    out.textContent = input.value;
    changed(input.valueAsNumber);
  });
  return element("div", { class: "control" }, element("label", { for: id }, `Grade ${grade}`), input, out);
}
