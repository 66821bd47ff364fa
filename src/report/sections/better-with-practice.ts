import type { Findings, Practice } from "../../findings/types.js";
import { levelText, pText, ratioRangeText, ratioText } from "../number-text.js";
import { casesSpan } from "../rate-text.js";
import type { Paragraph, Section } from "../text.js";

const question = "Did it get better with practice?";

/** Did it get better with practice? Cumulative failures less those expected, and the order as a covariate. */
export function betterWithPractice({ practice, level }: Findings): Section {
  if ("estimate" in practice)
    return {
      id: "practice",
      question,
      answer: [[`This cannot be shown: ${practice.because}.`]],
      cautions: [],
      tables: [],
    };
  const failures = practice.steps.filter(({ failed }) => failed).map(({ id }) => id);
  return {
    id: "practice",
    question,
    answer: [
      [
        "The line adds up ",
        casesSpan(`${failures.length} failures`, "Failures in order", failures),
        ` in the order of treatment less those expected of such grades (${practice.expectation}).`,
      ],
      effect(practice, level),
    ],
    cautions: [
      ["With so few failures only large changes could be seen; no point of the line was chosen to split the series."],
    ],
    tables: practice.operators.length < 2 ? [] : [operators(practice)],
  };
}

function effect({ effect: found }: Practice, level: number): Paragraph {
  if (!("perCases" in found)) return [`No effect of case order is given: ${found.because}.`];
  const { perCases, estimate, interval, p } = found;
  const seen = interval.low > 1 || interval.high < 1;
  const start = seen
    ? "Failure changed with case order after allowing for grade"
    : "Failure did not visibly change with case order after allowing for grade";
  return [
    `${start}: ${perCases} further cases multiply the odds of success by ${ratioText(estimate)} (${levelText(level)} CI ${ratioRangeText(interval)}; ${pText(p)}).`,
  ];
}

function operators({ operators: rows }: Practice): Section["tables"][number] {
  return {
    caption: "Cases by operator",
    head: ["Operator", "Cases", "Failed"],
    rows: rows.map(({ operator, cases, failed }) => [
      operator,
      casesSpan(String(cases.length), `Operator ${operator}`, cases),
      casesSpan(String(failed.length), `Operator ${operator}, failed`, failed),
    ]),
    notes: ["Operators are not ranked: they did not treat the same grades."],
  };
}
