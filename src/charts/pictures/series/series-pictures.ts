import type { CardFindings, SeriesFindings } from "../../../findings/series/series-findings.js";
import { levelText, percentRangeText, percentText } from "../../../report/number-text.js";
import { casesOf, matchNote } from "../../../report/series/series-text.js";
import { seriesSections } from "../../../report/series/series-sections.js";
import { plainText } from "../../../report/text.js";
import { caseMarks, type CaseMarksRow } from "../../case-marks.js";
import type { SectionPicture } from "../../section-pictures.js";
import { seriesRow } from "./series-row.js";

type Maker = (
  findings: SeriesFindings,
) => { readonly name: string; readonly caption: string; readonly rows: readonly CaseMarksRow[] } | null;

const makers: Readonly<Record<string, Maker>> = { grades, mix, lost, together };

/** The pictures of the page of published series, in reading order. */
export function seriesPictures(findings: SeriesFindings, note = ""): SectionPicture[] {
  return seriesSections(findings).flatMap(({ id, question, answer }) => {
    const made = makers[id]?.(findings);
    if (!made || made.rows.length === 0) return [];
    const bands = `Bands: 50% and ${levelText(findings.level)} intervals.`;
    return [
      {
        section: id,
        name: made.name,
        title: question,
        description: answer.map(plainText).join(" "),
        caption: [made.caption, bands, note].filter(Boolean).join(" "),
        drawing: (width?: number) => caseMarks(made.rows, width === undefined ? {} : { width }),
      },
    ];
  });
}

const marksSaid = "Each mark is one case, filled when it succeeded; dashed where success is not known to be ours.";

function grades({ series, grades: names }: SeriesFindings): ReturnType<Maker> {
  const rows = names.flatMap((grade) => {
    const ofGrade = series.flatMap((one) => {
      const rate = one.grades.find((held) => held.grade === grade)?.rate;
      return rate === undefined ? [] : [seriesRow(`${grade} · ${one.card.name}`, rate, one)];
    });
    return ofGrade.map((row, i) => ({ ...row, apart: i === 0 }));
  });
  return { name: "series-by-grade", caption: marksSaid, rows };
}

function mix({ series, mixOf }: SeriesFindings): ReturnType<Maker> {
  const rows = series.flatMap((one) => [
    { ...seriesRow(one.card.name + matchNote(one), one.crude, one), apart: true },
    standardisedRow(one),
  ]);
  return {
    name: "series-one-mix",
    caption: `${marksSaid} Rows without marks (same mix): the series above with the grade mix of ${mixOf}.`,
    rows,
  };
}

function standardisedRow(one: CardFindings): CaseMarksRow {
  const label = "same mix";
  const { standardised } = one;
  const none = { low: 0, high: 0 };
  if (standardised.estimate === null)
    return { label, count: "cannot be said", note: "", marks: [], estimate: null, interval: none, inner: none };
  const { estimate, interval, inner } = standardised;
  return {
    label,
    count: percentText(estimate, casesOf(one)),
    note: `(${percentRangeText(interval, casesOf(one))})`,
    marks: [],
    estimate,
    interval,
    inner,
  };
}

function lost({ series }: SeriesFindings): ReturnType<Maker> {
  const rows = series.flatMap((one) => {
    const reported = { ...seriesRow(one.card.name, one.crude, one), apart: true };
    if ("because" in one.lost) return [reported];
    return [
      reported,
      seriesRow("all lost failed", one.lost.worst, one),
      seriesRow("all lost succeeded", one.lost.best, one),
    ];
  });
  return { name: "series-lost", caption: marksSaid, rows };
}

function together({ series, pooled }: SeriesFindings): ReturnType<Maker> {
  if (pooled === null || "because" in pooled.overall) return null;
  const { estimate, interval, prediction, trials } = pooled.overall;
  const bare = { count: percentText(estimate, trials), marks: [], estimate };
  const rows: CaseMarksRow[] = [
    ...series.map((one) => seriesRow(one.card.name + matchNote(one), one.crude, one)),
    {
      ...bare,
      label: "the middle series",
      note: `(${percentRangeText(interval, trials)})`,
      interval,
      inner: { low: estimate, high: estimate },
    },
    ...(prediction === null
      ? []
      : [
          {
            ...bare,
            label: "a new series",
            count: "",
            note: `anywhere from ${percentRangeText(prediction, trials)}`,
            interval: prediction,
            inner: { low: estimate, high: estimate },
          },
        ]),
  ];
  return { name: "series-together", caption: marksSaid, rows };
}
