import type { Findings, Rate } from "../../findings/types.js";
import { decimalText, levelText, percentText, pText } from "../number-text.js";
import { countSpan, estimateText, intervalText, rateSpans } from "../rate-text.js";
import type { Paragraph, Section, Span, TextTable } from "../text.js";
import { unitWords } from "../unit-words.js";

/** How often did it work? */
export function howOften(findings: Findings): Section {
  return {
    id: "how-often",
    question: "How often did it work?",
    answer: [
      overall(findings),
      ...byGrade(findings),
      [`Success: ${findings.success.says}${findings.success.primary ? ", the primary outcome of the plan" : ""}.`],
    ],
    cautions: cautions(findings),
    tables: [table(findings)],
  };
}

function overall(findings: Findings): Paragraph {
  const { overall: rate } = findings.howOften;
  const { many } = unitWords(findings);
  if (rate.count.trials === 0) return [`There is no case to count: no ${unitWords(findings).one} could be judged.`];
  return ["Treatment succeeded in ", ...rateSpans(rate, "All analysed", many), "."];
}

function byGrade({ howOften: { byGrade: rows, trend } }: Findings): Paragraph[] {
  const held = rows.filter(({ rate: { count } }) => count.trials > 0);
  const [low, high] = [held[0], held.at(-1)];
  if (low === undefined || high === undefined || low === high) return [];
  const verb =
    low.rate.estimate === null || high.rate.estimate === null || low.rate.estimate === high.rate.estimate
      ? "Success went"
      : high.rate.estimate < low.rate.estimate
        ? "Success fell"
        : "Success rose";
  const ends: Span[] = [
    `${verb} from `,
    countSpan(low.rate.count, `Grade ${low.grade}`),
    ` in grade ${low.grade} to `,
    countSpan(high.rate.count, `Grade ${high.grade}`),
    ` in grade ${high.grade}`,
  ];
  return [[...ends, ` (${trendText(trend)}).`]];
}

function trendText(trend: Findings["howOften"]["trend"]): string {
  if ("estimate" in trend) return `no test for trend: ${trend.because}`;
  if (trend.exact === null) return `large-sample test for trend, ${pText(trend.asymptotic.p)}`;
  return `exact test for trend, ${pText(trend.exact.pointProbability)}, adding up the outcomes no likelier than this one`;
}

function cautions({ howOften: { byGrade: rows, overall: all, withoutGrade }, success, cases }: Findings): Paragraph[] {
  const full = rows.filter(({ rate }) => rate.estimate === 1);
  const least = full.toSorted((a, b) => a.rate.wilson!.low - b.rate.wilson!.low)[0];
  const lines: Paragraph[] = [];
  if (least !== undefined)
    lines.push([
      countSpan(least.rate.count, `Grade ${least.grade}`),
      ` is not a guarantee: the interval still allows a success rate as low as ${percentText(least.rate.wilson!.low, least.rate.count.trials)}.`,
    ]);
  if (all.bounds !== undefined)
    lines.push(["Answer the open questions to get a rate; until then the two ends are all that can be said."]);
  if (withoutGrade.length > 0) {
    const analysed = withoutGrade.filter((id) => cases.find((one) => one.id === id)?.outcome !== "not judged");
    lines.push([
      { text: String(analysed.length), title: "Without a grade", cases: analysed },
      " analysed without a grade: counted overall and in no grade.",
    ]);
  }
  if (!success.primary) lines.push(["This is not the primary outcome of the plan: read it as exploratory."]);
  return lines;
}

function table(findings: Findings): TextTable {
  const {
    howOften: { byGrade: rows, overall: all, trend },
    level,
  } = findings;
  const line = (label: string, title: string, rate: Rate): Span[] => [
    label,
    countSpan(rate.count, title),
    estimateText(rate),
    intervalText(rate),
    exactText(rate),
  ];
  const named = levelText(level);
  return {
    caption: `Success by grade (${unitWords(findings).many})`,
    head: ["Grade", "Succeeded", "Share", `${named} CI, Wilson, %`, `${named} CI, exact, %`],
    rows: [...rows.map(({ grade, rate }) => line(grade, `Grade ${grade}`, rate)), line("All", "All analysed", all)],
    notes: trendNotes(trend),
  };
}

function exactText({ exact, count: { trials } }: Rate): string {
  if (exact === null) return "";
  const decimals = trials < 100 ? 0 : 1;
  return `${decimalText(exact.low * 100, decimals)} to ${decimalText(exact.high * 100, decimals)}`;
}

function trendNotes(trend: Findings["howOften"]["trend"]): string[] {
  if ("estimate" in trend) return [`Trend over grades: ${trend.because}.`];
  const large = `large-sample (Cochran-Armitage) ${pText(trend.asymptotic.p)}`;
  if (trend.exact === null) return [`Trend over grades: ${large}; the exact test would take too long.`];
  return [
    `Trend over grades: exact, no likelier outcomes added up, ${pText(trend.exact.pointProbability)}; exact, smaller tail doubled, ${pText(trend.exact.doubled)}; ${large}.`,
  ];
}
