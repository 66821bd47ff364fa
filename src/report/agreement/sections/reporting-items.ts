import type { AgreementPage } from "../../../findings/agreement/page-findings.js";
import { counted } from "../../number-text.js";
import type { TextTable } from "../../text.js";
import { columnName } from "./page-words.js";

const missing = "missing: for you to write";

/** What a report of agreement should hold, in our words, and where each item stands. */
export function reportingItems(page: AgreementPage): TextTable {
  const { readings, grades, measured, regrading, choices } = page;
  const raters = new Set(readings.columns.map(({ rater }) => rater));
  const gaps = readings.readings.flat().filter((value) => value === null).length;
  const twice = readings.columns.some(({ occasion }) => occasion > 1);
  const copied = readings.notes.filter((note) => note.endsWith("was one copied?"));
  return {
    caption: "What a report of agreement should hold",
    head: ["Item", "Where it stands"],
    rows: [
      ["Title or abstract says that agreement was studied", missing],
      [
        "What was graded or measured, and how",
        measured
          ? `measurements, graded at ${choices.cuts.join(", ")}; how they were taken is ${missing}`
          : `grades ${grades.grades.join(", ")}; their definition is ${missing}`,
      ],
      ["Whose radiographs, and who may be read with them", missing],
      ["Who the observers are: training, experience", missing],
      ["What is known of agreement already, and why study it", missing],
      ["Why so many radiographs, observers and repeats", missing],
      ["How radiographs were chosen: consecutive, or to fill the grades", missing],
      [
        "Time between readings, what the observers knew, masking",
        twice ? `readings were repeated; the time between is ${missing}` : `nobody read twice; the rest is ${missing}`,
      ],
      [
        "Readings independent of each other",
        copied.length > 0 ? copied.join(" ") : `no two columns are copies; the rest is ${missing}`,
      ],
      ["Statistical methods, weights and models named", "filled: first paragraph"],
      [
        "Radiographs, observers and repeats in fact",
        `filled: ${counted(readings.radiographs.length, "radiograph")}, ${counted(raters.size, "observer")}, ${counted(readings.columns.length, "set", "sets")} of readings, ${counted(gaps, "reading")} missing`,
      ],
      [
        "Sample described: shares of the grades",
        `filled: table of ${columnName(page, choices.pair[0])} against ${columnName(page, choices.pair[1])}`,
      ],
      ["Estimates with their uncertainty", "filled: second paragraph, tables"],
      [
        "What it means in practice",
        regrading
          ? "filled: grades and treatments that would change"
          : `${missing}; needs measurements to count what would change`,
      ],
      ["Detailed results within reach", "filled: cross-table and every pair, to save as CSV"],
    ],
    notes: [
      "Items after the published guideline for reliability and agreement studies (Kottner et al. 2011, J Clin Epidemiol 64:96-106), in our own words.",
    ],
  };
}
