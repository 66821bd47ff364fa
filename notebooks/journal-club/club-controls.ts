import { firstSliders, type Sliders } from "../../src/findings/club/club-findings.js";
import type { EveningFile } from "../../src/findings/club/evening-file.js";
import { highSteps } from "../../src/findings/club/grade-mix-play.js";
import { mostBothHigh } from "../../src/findings/club/prevalence-play.js";
import { choice, levelSlider } from "../../src/notebook/controls.js";
import { element } from "../../src/notebook/element.js";
import type { Notebook } from "../../src/notebook/notebook.js";
import { valueSlider } from "../../src/notebook/value-slider.js";
import type { JournalClub } from "./journal-club.js";

/** Cases that the room's guess may be worth. */
const worths = [2, 5, 10, 20, 50];

/** The controls of the evening, by the question they stand under. */
export function clubControls(notebook: Notebook<JournalClub>) {
  let sliders: Sliders = firstSliders;
  const move = (part: Partial<Sliders>): void => {
    sliders = { ...sliders, ...part };
    notebook.set("sliders", sliders);
  };
  const slider = (
    id: keyof Sliders,
    label: string,
    [min, max, step]: readonly [number, number, number],
    value: number,
  ) => valueSlider({ id, label, min, max, step, value, changed: (moved) => move({ [id]: moved }) });
  const lost = slider("lost", "Lost cases", [0, 20, 1], 0);
  const lostFirst = slider("lostFirst", "Of them, first technique", [0, 20, 1], 0);
  const asked = element("div");
  let listed = "";
  const pick = (name: string): void => {
    // Another paper brings its own number of lost cases.
    move({ lost: null, lostFirst: null });
    notebook.set("series", name);
  };
  notebook.observe("findings", {
    fulfilled: ({ series, chosen, grade, lostPlay, tipping }) => {
      lost.show(lostPlay.lost);
      lostFirst.node.hidden = "estimate" in tipping;
      if (!("estimate" in tipping)) lostFirst.show(tipping.first.lost);
      const names = series.series.map(({ card }) => card.name);
      const grades = (chosen?.grades ?? []).map((one) => one.grade);
      const now = JSON.stringify([names, grades, chosen?.card.name, grade]);
      if (now === listed) return;
      listed = now;
      const had = asked.contains(document.activeElement) ? document.activeElement!.id : "";
      asked.replaceChildren(
        choice("Series", names.map(plain), chosen?.card.name ?? "", pick, {
          id: "club-series",
        }),
        choice(
          "Grade",
          [{ value: "", text: "all" }, ...grades.map(plain)],
          grade ?? "",
          (one) => notebook.set("grade", one === "" ? null : one),
          { id: "club-grade" },
        ),
      );
      if (had !== "") document.getElementById(had)?.focus();
    },
    rejected: () => asked.replaceChildren(),
  });
  const width = choice(
    "The guess is",
    [
      { value: "hands", text: "as wide as the hands lie apart" },
      ...worths.map((n) => ({ value: String(n), text: `worth ${n} cases` })),
    ],
    "hands",
    (value) => notebook.set("beliefWidth", value === "hands" ? "hands" : { cases: Number(value) }),
    { id: "belief-width" },
  );
  const takeHome = element("input", { type: "text", id: "take-home-text", autocomplete: "off", maxlength: 300 });
  takeHome.addEventListener("input", () => notebook.set("takeHome", takeHome.value));
  const byId: Record<string, readonly HTMLElement[]> = {
    claim: [levelSlider(0.95, (value) => notebook.set("level", value)).node],
    "first-vote": [asked],
    sure: [slider("cases", "Cases, four in five succeed", [5, 200, 5], firstSliders.cases).node],
    who: [lost.node, lostFirst.node],
    fair: [
      slider("high", "Grades III and IV in team 2", [highSteps[0], highSteps.at(-1)!, highSteps[1]], firstSliders.high)
        .node,
    ],
    grading: [slider("bothHigh", "Both say high", [0, mostBothHigh, 1], firstSliders.bothHigh).node],
    belief: [width],
    "take-home": [
      element("div", { class: "control" }, element("label", { for: "take-home-text" }, "We will"), takeHome),
    ],
  };
  return {
    controlsOf: (id: string): readonly HTMLElement[] => byId[id] ?? [],
    /** What a saved evening asks about, and what it took home. */
    take({ series, grade, takeHome: typed }: Pick<EveningFile, "series" | "grade" | "takeHome">): void {
      move({ lost: null, lostFirst: null });
      notebook.set("series", series);
      notebook.set("grade", grade);
      takeHome.value = typed;
      notebook.set("takeHome", typed);
    },
  };
}

const plain = (text: string) => ({ value: text, text });
