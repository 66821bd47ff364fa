import type { ComplicationRow, FailureLine, Findings } from "../../findings/types.js";
import { counted, decimalText, levelText, percentText } from "../number-text.js";
import { casesSpan, countSpan, estimateText, intervalText, rateSpans } from "../rate-text.js";
import type { Paragraph, Section, TextTable } from "../text.js";
import { unitWords } from "../unit-words.js";

/** What went wrong? Failures one line each, complications with their zero rows. */
export function wentWrong(findings: Findings): Section {
  const { failures, complications } = findings.wentWrong;
  const { one, many } = unitWords(findings);
  const ids = failures.map(({ id }) => id);
  const noReason = failures.filter(({ reason }) => reason === null).map(({ id }) => id);
  return {
    id: "wrong",
    question: "What went wrong?",
    answer: [
      failures.length === 0
        ? ["No failure was recorded."]
        : [
            "Treatment failed in ",
            casesSpan(counted(failures.length, one, many), "Failures", ids),
            ", listed one by one below.",
          ],
      ...("estimate" in complications
        ? [[`Complications cannot be counted: ${complications.because}.`]]
        : complicationLines(complications, findings)),
    ],
    cautions:
      noReason.length === 0
        ? []
        : [
            [
              casesSpan(String(noReason.length), "Failures without a reason", noReason),
              " failed without a recorded reason: a reviewer will ask.",
            ],
          ],
    tables: [
      failureTable(failures),
      ...("estimate" in complications ? [] : [complicationTable(complications, findings)]),
    ],
  };
}

function complicationLines(rows: readonly ComplicationRow[], findings: Findings): Paragraph[] {
  const any = rows[0]!;
  const zero = rows.slice(1).filter(({ rate }) => rate.count.successes === 0);
  const lines: Paragraph[] = [
    ["Complications were recorded in ", ...rateSpans(any.rate, any.name, unitWords(findings).many), "."],
  ];
  for (const { name, rate, upperLimit } of zero)
    lines.push([
      `No ${name} was seen (`,
      countSpan(rate.count, name),
      `; ${levelText(findings.level)} CI ${intervalText(rate)}%; one-sided upper limit ${percentText(upperLimit, rate.count.trials)}).`,
    ]);
  return lines;
}

function failureTable(failures: readonly FailureLine[]): TextTable {
  return {
    caption: "Failures, one line each",
    head: ["Case", "Grade", "First technique", "Final technique", "Age, years", "Follow-up, months", "Reason"],
    rows: failures.map(({ id, grade, firstTechnique, finalTechnique, ageYears, followUpMonths, reason }) => [
      casesSpan(id, `Case ${id}`, [id]),
      grade ?? "not known",
      firstTechnique ?? "not known",
      finalTechnique ?? "not known",
      ageYears === null ? "not known" : String(ageYears),
      followUpMonths === null ? "not known" : decimalText(followUpMonths, Number.isInteger(followUpMonths) ? 0 : 1),
      reason ?? "not recorded",
    ]),
    notes: ["Ages in completed years; no dates."],
  };
}

function complicationTable(rows: readonly ComplicationRow[], { level }: Findings): TextTable {
  return {
    caption: "Complications, with those looked for and not seen",
    head: ["", "Cases", "Share", `${levelText(level)} CI, %`, `One-sided upper limit, ${levelText(level)}`],
    rows: rows.map(({ name, rate, upperLimit }) => [
      name,
      countSpan(rate.count, name),
      estimateText(rate),
      intervalText(rate),
      percentText(upperLimit, rate.count.trials),
    ]),
    notes: [
      "Counted among eligible cases with an entry for complications. Two-sided intervals: Wilson; one-sided limits: exact.",
    ],
  };
}
