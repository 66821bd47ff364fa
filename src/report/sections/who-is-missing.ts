import type { Findings } from "../../findings/types.js";
import { counted, decimalText, levelText } from "../number-text.js";
import { casesSpan, countSpan, estimateText, intervalText, rateSpans } from "../rate-text.js";
import type { Paragraph, Section } from "../text.js";
import { tippingTable, tippingText } from "../tipping-text.js";
import { unitWords } from "../unit-words.js";

/** Who is missing? Loss with both denominators, worst and best case. */
export function whoIsMissing(findings: Findings): Section {
  const { missing: loss, level } = findings;
  const { one, many } = unitWords(findings);
  const absent = [...loss.lost, ...loss.notRecorded];
  const line = (label: string, rate: typeof loss.worst) =>
    [label, countSpan(rate.count, label), estimateText(rate), intervalText(rate)] as const;
  return {
    id: "missing",
    question: "Who is missing?",
    answer: [
      absent.length === 0
        ? [`No eligible ${one} is missing.`]
        : [
            casesSpan(counted(absent.length, one, many), "Missing", absent),
            ` ${absent.length === 1 ? "is" : "are"} missing. Had all failed, success would be `,
            ...rateSpans(loss.worst, "Worst case"),
            "; had all succeeded, ",
            ...rateSpans(loss.best, "Best case"),
            ".",
          ],
      ...("estimate" in loss.tipping ? [] : [[tippingText(loss.tipping)]]),
      followUp(findings),
    ],
    cautions:
      absent.length === 0
        ? []
        : [["Those who are lost need not be like those who were seen: between the two ends the sheet cannot decide."]],
    tables: [
      {
        caption: `Success with the missing ${many} counted either way`,
        head: ["", "Succeeded", "Share", `${levelText(level)} CI, %`],
        rows: [
          line("As analysed", loss.analysed),
          line("All missing failed", loss.worst),
          line("All missing succeeded", loss.best),
        ],
        notes: ["Wilson intervals."],
      },
      {
        caption: `Missing and analysed ${many} by grade`,
        head: ["Grade", "Missing", "Analysed"],
        rows: loss.lostByGrade.map(({ grade, lost, kept }) => [
          grade,
          casesSpan(String(lost.length), `Missing, grade ${grade}`, lost),
          casesSpan(String(kept.length), `Analysed, grade ${grade}`, kept),
        ]),
        notes: [],
      },
      ...("estimate" in loss.tipping ? [] : [tippingTable(loss.tipping)]),
    ],
  };
}

function followUp({ missing: { followUp: times } }: Findings): Paragraph {
  if ("estimate" in times) return [`Follow-up: ${times.because}.`];
  const months = (value: number): string => decimalText(value, Number.isInteger(value) ? 0 : 1);
  return [
    `Follow-up was ${months(times.median)} months at the median (${months(times.low)} to ${months(times.high)}; recorded for ${times.cases}).`,
  ];
}
