import type { CardFindings, SeriesFindings } from "../../findings/series/series-findings.js";
import { counted, levelText, listText, percentText } from "../number-text.js";
import type { Paragraph, Section, TextTable } from "../text.js";
import { pooledSection } from "./pooled-section.js";
import { bandText, casesOf, countText, matchNote, shareText } from "./series-text.js";

/** The questions of the page of published series, in reading order. */
export function seriesSections(findings: SeriesFindings): Section[] {
  return [beside, byGrade, gradeMix, missing, nextCases, pooledSection].map((section) => section(findings));
}

function beside({ series }: SeriesFindings): Section {
  const other = series.filter(({ card }) => card.match !== "same as ours").map(({ card }) => card.name);
  return {
    id: "beside",
    question: "Who is set beside whom?",
    answer: [
      [
        series.length === 0
          ? "No series yet: type one from its paper, or drop a file."
          : `${counted(series.length, "series", "series")}: ${listText(series.map(({ card }) => card.name))}.`,
      ],
      ...(other.length === 0
        ? []
        : [[`Success is not known to be the same thing in ${listText(other)}: their marks are dashed.`]]),
    ],
    cautions: [],
    tables: [
      {
        caption: "The series and what their papers state",
        head: ["Series", "Succeeded", "Unit", "Success", "Follow-up", "Lost", "Complications"],
        rows: series.map(({ card, crude }) => [
          card.name,
          countText(crude),
          card.unit,
          card.definition ?? "not stated",
          card.followUp ?? "not stated",
          card.lost === null ? "not stated" : String(card.lost),
          card.complications ?? "not stated",
        ]),
        notes: [],
      },
    ],
  };
}

function byGrade({ series, grades, level }: SeriesFindings): Section {
  const lines = grades.map((grade): Paragraph => {
    const told = series.flatMap((one) => {
      const rate = one.grades.find((held) => held.grade === grade)?.rate;
      return rate === undefined || rate.estimate === null ? [] : [`${one.card.name} ${countText(rate)}`];
    });
    return [told.length === 0 ? `Grade ${grade}: no series states its counts.` : `Grade ${grade}: ${listText(told)}.`];
  });
  return {
    id: "grades",
    question: "How often did it work, grade by grade?",
    answer: lines,
    cautions: [],
    tables: [
      {
        caption: `Success by grade, share and ${levelText(level)} Wilson interval, %`,
        head: ["Series", ...grades.map((grade) => `Grade ${grade}`)],
        rows: series.map((one) => [
          one.card.name + matchNote(one),
          ...grades.map((grade) => {
            const rate = one.grades.find((held) => held.grade === grade)?.rate;
            return rate === undefined
              ? "no such grade"
              : rate.estimate === null
                ? rate.because
                : `${countText(rate)}, ${bandText(rate)}`;
          }),
        ]),
        notes: [],
      },
    ],
  };
}

function gradeMix(findings: SeriesFindings): Section {
  const { series, mix, mixOf, level } = findings;
  return {
    id: "mix",
    question: "Was it the grade mix?",
    answer: series.map((one): Paragraph => [mixLine(one, mixOf)]),
    cautions:
      series.length < 2
        ? []
        : [["One grade mix makes series comparable in grade only; who was treated, and how, may still differ."]],
    tables: [mixTable()],
  };
  function mixTable(): TextTable {
    return {
      caption: `As reported, and with the grade mix of ${mixOf}`,
      head: ["Series", "As reported", `${levelText(level)} CI`, "With that mix"],
      rows: series.map((one) => [
        one.card.name + matchNote(one),
        countText(one.crude),
        one.crude.estimate === null ? "" : bandText(one.crude),
        one.standardised.estimate === null
          ? one.standardised.because
          : shareText(one.standardised.estimate, one.standardised.interval, casesOf(one)),
      ]),
      notes: [
        `The mix: ${mix.map(({ grade, share }) => `${grade} ${percentText(share, 1)}`).join(", ")}. Direct standardisation; limits from the Wilson limits of the grades.`,
      ],
    };
  }
}

function mixLine(one: CardFindings, mixOf: string): string {
  const { card, crude, standardised } = one;
  const reported =
    crude.estimate === null
      ? `${card.name}: no overall rate, as ${crude.because}`
      : `${card.name} reported ${countText(crude)} (${percentText(crude.estimate, crude.cases)})`;
  if (standardised.estimate === null)
    return `${reported}; with the mix of ${mixOf} it cannot be said: ${standardised.because}.`;
  return `${reported}; with the grade mix of ${mixOf} it would be ${percentText(standardised.estimate, casesOf(one))}.`;
}

function missing({ series, level }: SeriesFindings): Section {
  return {
    id: "lost",
    question: "Who is missing?",
    answer: series.map(({ card, crude, lost }): Paragraph => {
      if ("because" in lost) return [`${card.name}: ${lost.because}.`];
      const [worst, best] = [
        percentText(lost.worst.estimate, lost.worst.cases),
        percentText(lost.best.estimate, lost.best.cases),
      ];
      return [
        `${card.name}: with ${counted(card.lost!, "lost case")} counted either way, ${countText(crude)} becomes ${worst} to ${best}.`,
      ];
    }),
    cautions: [],
    tables: [
      {
        caption: "Success with the lost counted either way",
        head: ["Series", "As reported", "All lost failed", "All lost succeeded"],
        rows: series.map(({ card, crude, lost }) => [
          card.name,
          crude.estimate === null ? crude.because : `${countText(crude)}, ${bandText(crude)}`,
          "because" in lost ? lost.because : `${countText(lost.worst)}, ${bandText(lost.worst)}`,
          "because" in lost ? "" : `${countText(lost.best)}, ${bandText(lost.best)}`,
        ]),
        notes: [`${levelText(level)} Wilson intervals, %.`],
      },
    ],
  };
}

function nextCases({ series, level }: SeriesFindings): Section {
  return {
    id: "next",
    question: "What could happen to the next cases?",
    answer: series.map(({ card, next }): Paragraph =>
      next.estimate === null
        ? [`${card.name}: ${next.because}.`]
        : [
            `${card.name}: of the next ${next.cases} such cases ${next.interval.low} to ${next.interval.high} would succeed (${levelText(level)}).`,
          ],
    ),
    cautions: [["Only if the next cases are like those of the paper, in the same hands."]],
    tables: [],
  };
}
