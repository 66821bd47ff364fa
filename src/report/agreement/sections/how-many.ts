import type { AgreementPage } from "../../../findings/agreement/page-findings.js";
import type { WantedSize } from "../../../findings/agreement/wanted-size.js";
import type { SizeFindings } from "../../../findings/agreement/plan-findings.js";
import { decimalText, levelText, listText, percentText } from "../../number-text.js";
import type { Section, TextTable } from "../../text.js";

/** How many radiographs and observers would do? */
export function howMany(page: AgreementPage): Section | null {
  const { plan } = page.grades;
  if (plan.estimate === null) return null;
  const two = plan.cells.find(({ raters, width }) => raters === 2 && width === 0.2)!;
  const four = plan.cells.find(({ raters, width }) => raters === 4 && width === 0.2)!;
  return {
    id: "many",
    question: "How many radiographs and observers would do?",
    answer: [
      [
        `For unweighted kappa to within 0.1 either way, where it is about ${decimalText(plan.estimate, 2)} and grades are as common as here, two observers must read ${two.images} radiographs, four observers ${four.images}.`,
      ],
      ...(page.wanted === null ? [] : [[wantedText(page.wanted)]]),
    ],
    cautions: [["A plan made from the study it is to judge is no plan; use it for the next one."]],
    tables: [sizes(plan, page.choices.level), ...(page.wanted === null ? [] : [wantedTable(page.wanted)])],
  };
}

function wantedText({ kappa, width, rows }: WantedSize): string {
  const each = rows.map(({ raters, kappa: images }) => `${images} by ${raters} observers`);
  return `As planned below, kappa of ${decimalText(kappa, 2)} to within ${decimalText(width / 2, 2)} either way: ${listText(each, "or")}.`;
}

function wantedTable({ kappa, width, icc, rows }: WantedSize): TextTable {
  const half = `\u00B1 ${decimalText(width / 2, 2)}`;
  return {
    caption: `Radiographs for the plan: an interval of ${half}`,
    head: [
      "Observers",
      `Kappa about ${decimalText(kappa, 2)}`,
      ...(icc === null ? [] : [`Intraclass correlation about ${decimalText(icc, 2)}`]),
    ],
    rows: rows.map((row) => [String(row.raters), String(row.kappa), ...(row.icc === null ? [] : [String(row.icc)])]),
    notes: icc === null ? [] : ["Correlation: consistency, single reading, as found here (Bonett 2002)."],
  };
}

function sizes(plan: SizeFindings, level: number): TextTable {
  const counts = [...new Set(plan.cells.map(({ raters }) => raters))];
  const widths = [...new Set(plan.cells.map(({ width }) => width))];
  return {
    caption: `Radiographs for a ${levelText(level)} interval of kappa so wide`,
    head: ["Observers", ...widths.map((width) => `\u00B1 ${decimalText(width / 2, 2)}`), "Simulated at \u00B1 0.10"],
    rows: counts.map((count) => {
      const tried = plan.simulated.find(({ found }) => found.model.raters === count)?.found;
      return [
        String(count),
        ...widths.map((width) =>
          String(plan.cells.find((cell) => cell.raters === count && cell.width === width)!.images),
        ),
        tried
          ? `\u00B1 ${decimalText(tried.meanWidth / 2, 2)} on average, ${percentText(tried.coverage, 1)} hold`
          : "too few to try",
      ];
    }),
    notes: [
      "Large-sample variance of Fleiss' kappa when each observer knows the grade or guesses by its share; simulated under the same model, 200 studies.",
    ],
  };
}
