import type { Comparison, Contrast, Findings, Rate } from "../../findings/types.js";
import type { Interval } from "../../stats/types.js";
import {
  levelText,
  listText,
  percentText,
  pointsRangeText,
  pointsText,
  pText,
  ratioRangeText,
  ratioText,
} from "../number-text.js";
import { casesSpan, countSpan } from "../rate-text.js";
import type { Paragraph, Section, Span, TextTable } from "../text.js";

const question = "Was it the treatment, or the grade?";

/** Was it the treatment, or the grade? Closed against open: crude, within grades, over grades. */
export function treatmentOrGrade(findings: Findings): Section {
  const { comparison } = findings;
  if ("estimate" in comparison)
    return {
      id: "treatment",
      question,
      answer: [[`Nothing is compared: ${comparison.because}.`]],
      cautions: [],
      tables: [],
    };
  return {
    id: "treatment",
    question,
    answer: [
      crude(comparison.crude, findings.level),
      ...mix(comparison),
      within(comparison, findings.level),
      ...overlap(comparison),
      ...leftOut(comparison),
    ],
    cautions: [
      [
        "Who was treated how was not left to chance: these figures describe the series, they do not show which treatment is better.",
      ],
    ],
    tables: [table(comparison, findings.level)],
  };
}

function crude({ closed, open, difference, fisher }: Contrast, level: number): Paragraph {
  const counts: Span[] = [
    "Treatment succeeded in ",
    countSpan(closed.count, "Closed first"),
    " tried closed first and in ",
    countSpan(open.count, "Open first"),
    " treated open first",
  ];
  if (difference.estimate === null) return [...counts, `: no comparison, as ${difference.because}.`];
  return [
    ...counts,
    `: a difference of ${pointsText(difference.estimate)} percentage points (${levelText(level)} CI ${pointsRangeText(difference.newcombe)}; Fisher exact ${pText(fisher!.pointProbability)}, adding up the tables no likelier than this one).`,
  ];
}

/** How differently the grades were treated: why the crude comparison may mix severity with treatment. */
function mix({ grades }: Comparison): Paragraph[] {
  const upper = grades.slice(Math.ceil(grades.length / 2));
  const total = (rates: readonly Rate[]): number => rates.reduce((sum, { count }) => sum + count.trials, 0);
  const ids = (rates: readonly Rate[]): string[] =>
    rates.flatMap(({ count }) => [...count.succeeded, ...count.failed, ...count.asked]);
  const [closed, open] = [grades.map((grade) => grade.closed), grades.map((grade) => grade.open)];
  if (upper.length === 0 || total(closed) === 0 || total(open) === 0) return [];
  const name = `grade ${listText(
    upper.map(({ grade }) => grade),
    "or",
  )}`;
  const share = (rates: readonly Rate[], all: readonly Rate[], title: string): Span =>
    casesSpan(`${total(rates)} of ${total(all)}`, title, ids(rates));
  return [
    [
      "Of those treated open first, ",
      share(
        upper.map((grade) => grade.open),
        open,
        `Open first, ${name}`,
      ),
      ` were ${name}; of those tried closed first, `,
      share(
        upper.map((grade) => grade.closed),
        closed,
        `Closed first, ${name}`,
      ),
      ".",
    ],
  ];
}

function within({ exactCommon, mantelHaenszel }: Comparison, level: number): Paragraph {
  if (exactCommon.estimate === null) return [`Within grades there is nothing to compare: ${exactCommon.because}.`];
  const exact = `Within grades the common odds ratio of success, closed against open, is ${ratioText(exactCommon.estimate)} (exact ${levelText(level)} CI ${ratioRangeText(exactCommon.interval)}; ${pText(exactCommon.p)})`;
  if (!("difference" in mantelHaenszel) || mantelHaenszel.difference === null) return [`${exact}.`];
  const { difference, differenceInterval } = mantelHaenszel;
  const range = differenceInterval === null ? "" : ` (${pointsRangeText(differenceInterval)})`;
  return [
    `${exact}; the Mantel-Haenszel difference is ${pointsText(difference)} points${range}. ${reading(exactCommon.interval)}`,
  ];
}

function reading({ low, high }: Interval): string {
  if (low > 1 || high < 1) return "The difference remains within grades.";
  return "The interval leaves room for either technique: too few cases to separate treatment from grade.";
}

function overlap({ withoutOverlap }: Comparison): Paragraph[] {
  if (withoutOverlap.length === 0) return [];
  const one = withoutOverlap.length === 1;
  return [
    [
      `Grade${one ? "" : "s"} ${listText(withoutOverlap)} ${one ? "was" : "were"} treated one way only and ${one ? "takes" : "take"} no part in the comparison within grades.`,
    ],
  ];
}

function leftOut({ leftOut: groups }: Comparison): Paragraph[] {
  return groups.map(({ reason, cases }) => [
    casesSpan(String(cases.length), reason, cases),
    ` left out of the comparison: ${reason}.`,
  ]);
}

function table(comparison: Comparison, level: number): TextTable {
  const line = (label: string, contrast: Contrast): Span[] => [
    label,
    countSpan(contrast.closed.count, `${label}, closed first`),
    countSpan(contrast.open.count, `${label}, open first`),
    contrast.difference.estimate === null
      ? ""
      : `${pointsText(contrast.difference.estimate)} (${pointsRangeText(contrast.difference.newcombe)})`,
    "because" in contrast.oddsRatio
      ? ""
      : `${ratioText(contrast.oddsRatio.conditional)} (${ratioRangeText(contrast.oddsRatio.exact)})`,
    contrast.fisher === null ? "" : pText(contrast.fisher.pointProbability),
  ];
  return {
    caption: "Success by the technique tried first",
    head: [
      "",
      "Closed first",
      "Open first",
      `Difference, points (${levelText(level)} CI)`,
      `Odds ratio (${levelText(level)} CI)`,
      "Fisher exact",
    ],
    rows: [
      line("All grades, crude", comparison.crude),
      ...comparison.grades.map((grade) => line(`Grade ${grade.grade}`, grade)),
      pooledLine(comparison),
    ],
    notes: notes(comparison),
  };
}

function pooledLine({ mantelHaenszel, exactCommon }: Comparison): Span[] {
  const difference = "difference" in mantelHaenszel && mantelHaenszel.difference !== null ? mantelHaenszel : null;
  const range = difference?.differenceInterval;
  return [
    "Over grades",
    "",
    "",
    difference === null ? "" : `${pointsText(difference.difference!)}${range ? ` (${pointsRangeText(range)})` : ""}`,
    exactCommon.estimate === null ? "" : `${ratioText(exactCommon.estimate)} (${ratioRangeText(exactCommon.interval)})`,
    exactCommon.estimate === null ? "" : pText(exactCommon.p),
  ];
}

function notes({ crude: { fisher }, mantelHaenszel, standardised }: Comparison): string[] {
  const lines = [
    "Differences: Newcombe intervals; over grades Mantel-Haenszel with Sato's interval. Odds ratios: conditional, exact intervals.",
  ];
  if (fisher !== null)
    lines.push(
      `Fisher exact, crude, by convention: no likelier tables added up, ${pText(fisher.pointProbability)}; smaller tail doubled, ${pText(fisher.doubled)}; mid-P, ${pText(fisher.midP)}.`,
    );
  if ("oddsRatio" in mantelHaenszel && mantelHaenszel.oddsRatio !== null) {
    const range = mantelHaenszel.oddsRatioInterval;
    lines.push(
      `Mantel-Haenszel odds ratio ${ratioText(mantelHaenszel.oddsRatio)}${range ? ` (${ratioRangeText(range)})` : ""}.`,
    );
  }
  if ("closed" in standardised)
    lines.push(
      `With the grade mix of all compared cases: closed ${percentText(standardised.closed, 1)}, open ${percentText(standardised.open, 1)}.`,
    );
  return lines;
}
