import type { Findings } from "../../findings/types.js";
import type { ObserversError, Regrading, RegradingChancesFound } from "../../findings/regrading/types.js";
import {
  counted,
  decimalText,
  levelText,
  listText,
  percentRangeText,
  percentText,
  ratioRangeText,
  ratioText,
} from "../number-text.js";
import { casesSpan, countSpan, estimateText, intervalText } from "../rate-text.js";
import type { Paragraph, Section, TextTable } from "../text.js";
import { unitWords, type UnitWords } from "../unit-words.js";
import { cutMovesText } from "./cut-moves-text.js";
import { numberText } from "./how-the-arm-moves.js";

const question = "Would another observer grade it the same?";

/** Would another observer grade it the same? The observers' error carried into the grades and into success by grade. */
export function gradedTheSame(findings: Findings): Section {
  const { regrading: found, level } = findings;
  if ("estimate" in found)
    return { id: "grading", question, answer: [[`This cannot be shown: ${found.because}.`]], cautions: [], tables: [] };
  const words = unitWords(findings);
  const { chances } = found;
  return {
    id: "grading",
    question,
    answer: [
      "estimate" in chances
        ? [`How many grades would change cannot be told: ${chances.because}.`]
        : answer(found, chances, level, words),
      ...recordedAgainstMeasured(found, words),
      [cutMovesText(found)],
    ],
    cautions: "estimate" in chances ? [] : cautions(found),
    tables: [byGrade(findings, found), ...("estimate" in chances ? [] : nearTable(found, chances))],
  };
}

function answer(found: Regrading, chances: RegradingChancesFound, level: number, words: UnitWords): Paragraph {
  const { cases, near, readGrades, trueGrades, treatments } = chances;
  const range = ({ low, high }: typeof readGrades.range): string => `${levelText(level)} range ${low} to ${high}`;
  const changed =
    treatments === null
      ? []
      : [
          `, and ${decimalText(treatments.expected, 1)} the treatment that goes with it (${range(treatments.range)}; open for ${listText(found.treatedOpen)}, closed otherwise)`,
        ];
  return [
    "Measured once more by another observer, about ",
    `${decimalText(readGrades.expected, 1)} of `,
    casesSpan(counted(cases.length, words.one, words.many), "Measured", found.measured),
    ` would get another grade (${range(readGrades.range)})`,
    ...changed,
    `; about ${decimalText(trueGrades.expected, 1)} would not have the grade of their true value (${range(trueGrades.range)}). `,
    casesSpan(String(near.length), "Within 1.96 errors of a cut-point", near),
    ` ${near.length === 1 ? "lies" : "lie"} within 1.96 errors of a cut-point. `,
    ...errorWords(found, level),
  ];
}

function errorWords({ error }: Regrading, level: number): Paragraph {
  if (!("source" in error)) return [];
  const estimate = ratioText(error.estimate);
  if (error.source === "plan") {
    const beside =
      error.fromReadings === null ? "" : `; the readings of the sheet give ${ratioText(error.fromReadings)}`;
    return [`The error is ${estimate}, as stated in the plan${beside}.`];
  }
  return [
    `The error is ${estimate} (${levelText(level)} CI ${ratioRangeText(error.interval!)}; ${error.method}; ${readingsText(error)}, `,
    casesSpan(counted(error.radiographs.length, "radiograph"), "Read repeatedly", error.radiographs),
    ").",
  ];
}

/** "2 observers, 4 columns of readings"; a column an observer goes without saying. */
function readingsText({ columns, observers }: ObserversError): string {
  const read = `${columns.length} columns of readings`;
  return observers === columns.length ? read : `${counted(observers, "observer")}, ${read}`;
}

function recordedAgainstMeasured({ differing, measured, notMeasured }: Regrading, { many }: UnitWords): Paragraph[] {
  const missing: Paragraph[] =
    notMeasured.length === 0
      ? []
      : [[casesSpan(String(notMeasured.length), "Not measured", notMeasured), ` of the ${many} have no measurement.`]];
  if (differing === null) return missing;
  if (differing.length === 0)
    return [["No recorded grade differs from the one that the measurement gives."], ...missing];
  return [
    [
      "The recorded grade is not the one that the measurement gives in ",
      casesSpan(`${differing.length} of ${measured.length}`, "Recorded and measured grade differ", differing),
      "; both are kept, and the table shows success by each.",
    ],
    ...missing,
  ];
}

function cautions({ error }: Regrading): Paragraph[] {
  const readings = "source" in error && error.source === "readings" ? repeatsText(error) : "";
  return [
    [
      `The error is taken to be normal, alike over the whole range, and that of one reading.${readings} The ranges say what grading alone can do; that these are few cases comes on top.`,
    ],
  ];
}

function repeatsText({ columns, observers }: ObserversError): string {
  if (observers === columns.length)
    return " Each column of readings is taken for an observer of its own: where one observer read twice, two observers may differ by more.";
  return observers === 1
    ? " One observer read them all: two observers may differ by more."
    : " Of an observer who read more than once the first reading counts.";
}

function byGrade({ howOften, level }: Findings, found: Regrading): TextTable {
  const both = found.differing !== null && found.differing.length > 0;
  const { simulated } = found;
  const drawn = new Map("grades" in simulated ? simulated.grades.map((one) => [one.grade, one]) : []);
  const recorded = new Map(howOften.byGrade.map(({ grade, rate }) => [grade, rate]));
  return {
    caption: "Success by measured grade, and under simulated gradings",
    head: [
      "Grade",
      ...(both ? ["Succeeded, recorded grade"] : []),
      "Succeeded, measured grade",
      "Share",
      `${levelText(level)} CI, %`,
      ...("grades" in simulated ? ["Cases, simulated", "Share, simulated, %"] : []),
    ],
    rows: found.byMeasuredGrade.map(({ grade, rate }) => {
      const one = drawn.get(grade);
      return [
        grade,
        ...(both ? [countSpan(recorded.get(grade)!.count, `Recorded grade ${grade}`)] : []),
        countSpan(rate.count, `Measured grade ${grade}`),
        estimateText(rate),
        intervalText(rate),
        ...(one === undefined
          ? []
          : [
              `${numberText(one.casesRange.low)} to ${numberText(one.casesRange.high)}`,
              "range" in one.success ? percentRangeText(one.success.range, found.measured.length) : "none",
            ]),
      ];
    }),
    notes: [
      "grades" in simulated
        ? `Wilson intervals. Simulated: ${simulated.simulations} gradings, every measurement drawn anew within the error (seed ${simulated.seed}); the range holds the middle ${levelText(level)} of them.`
        : `Wilson intervals. No gradings were simulated: ${simulated.because}.`,
    ],
  };
}

function nearTable({ column, differing }: Regrading, { cases, near }: RegradingChancesFound): TextTable[] {
  if (near.length === 0) return [];
  const caseOf = new Map(cases.map((one) => [one.id, one]));
  const recorded = differing !== null;
  return [
    {
      caption: "Cases within 1.96 errors of a cut-point, nearest first",
      head: [
        "Case",
        column,
        "Measured grade",
        ...(recorded ? ["Recorded grade"] : []),
        "Chance that the true grade is another",
        "Chance that another reading gives another",
      ],
      rows: near.map((id) => {
        const { value, measuredGrade, recordedGrade, otherTrueGrade, otherReadGrade } = caseOf.get(id)!;
        return [
          casesSpan(id, `Case ${id}`, [id]),
          numberText(value),
          measuredGrade,
          ...(recorded ? [recordedGrade ?? "none"] : []),
          percentText(otherTrueGrade, 1),
          percentText(otherReadGrade, 1),
        ];
      }),
      notes: ["Chances from the normal distribution; against another reading both carry the error."],
    },
  ];
}
