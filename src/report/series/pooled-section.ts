import type { PoolReason } from "../../findings/series/reasons-not-to-pool.js";
import type { PoolFindings, SeriesFindings } from "../../findings/series/series-findings.js";
import type { PooledProportion } from "../../stats/series/pool-logistic-normal.js";
import type { NotEstimable } from "../../stats/types.js";
import { decimalText, levelText, percentRangeText, percentText } from "../number-text.js";
import type { Paragraph, Section } from "../text.js";

/** May they be put together? Only when asked, with the reasons against. */
export function pooledSection({ reasonsNotToPool, pooled, level }: SeriesFindings): Section {
  const against = reasonsNotToPool.map((reason) => reasonText(reason));
  const reasons: Paragraph[] =
    against.length === 0 ? [] : [[`Reasons against putting them together: ${against.join("; ")}.`]];
  const section = { id: "together", question: "May they be put together?" };
  if (pooled === null)
    return {
      ...section,
      answer: [["They are not put together unless you ask."], ...reasons],
      cautions: [],
      tables: [],
    };
  return {
    ...section,
    answer: [overall(pooled.overall, level), ...reasons],
    cautions: [
      [
        "A number for all series together hides how they differ: read the range for a new series, not the middle alone.",
      ],
    ],
    tables: [table(pooled, level)],
  };
}

function overall(found: PooledProportion | NotEstimable, level: number): Paragraph {
  if ("because" in found) return [`They cannot be put together: ${found.because}.`];
  const { estimate, interval, prediction, tau, heterogeneity, trials } = found;
  const next =
    prediction === null
      ? "; a range for a new series needs three series"
      : `; a new series may lie anywhere from ${percentRangeText(prediction, trials)}%`;
  return [
    `The middle series would have ${percentText(estimate, trials)} (${levelText(level)} CI ${percentRangeText(interval, trials)})${next}. Between series the log odds vary by ${decimalText(tau.estimate, 2)} (standard deviation); ${percentText(heterogeneity.iSquared, 1)} of the variation is beyond chance.`,
  ];
}

function table({ overall: all, byGrade, without }: PoolFindings, level: number): Section["tables"][number] {
  const line = (label: string, found: PooledProportion | NotEstimable): string[] =>
    "because" in found
      ? [label, found.because, "", ""]
      : [
          label,
          percentText(found.estimate, found.trials),
          percentRangeText(found.interval, found.trials),
          found.prediction === null ? "" : percentRangeText(found.prediction, found.trials),
        ];
  return {
    caption: "Series put together",
    head: ["", "Share", `${levelText(level)} CI, %`, "New series, %"],
    rows: [
      line("All series", all),
      ...byGrade.grades.map(({ grade, pooled }) => line(`Grade ${grade}`, pooled)),
      ...without.map(({ name, pooled }) => line(`Without ${name}`, pooled)),
    ],
    notes: ["One-step logistic-normal random effects, profile-likelihood limits."],
  };
}

function reasonText(reason: PoolReason): string {
  switch (reason.kind) {
    case "few series":
      return `only ${reason.series} series state their counts, too few to judge how series differ`;
    case "definitions differ":
      return "success is defined differently";
    case "definition not known":
      return "a definition of success is not stated, or not known to be ours";
    case "units differ":
      return "some count limbs, others children";
    case "mixes differ":
      return `the grade mixes differ (grade ${reason.grade} makes up ${percentText(reason.low, 1)} of one series and ${percentText(reason.high, 1)} of another)`;
    case "rates differ":
      return `the rates differ more than chance explains (I-squared ${percentText(reason.iSquared, 1)})`;
  }
}
