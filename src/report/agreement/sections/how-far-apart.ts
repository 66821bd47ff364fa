import type { AgreementPage } from "../../../findings/agreement/page-findings.js";
import { counted, decimalText, levelText, pText } from "../../number-text.js";
import type { Paragraph, Section, TextTable } from "../../text.js";
import { coefficientText, rangeText } from "../coefficient-text.js";
import { columnName, imagesSpan } from "./page-words.js";

/** How far apart are the measurements? Null for readings that are grades. */
export function howFarApart(page: AgreementPage): Section | null {
  if (page.measured === null) return null;
  return {
    id: "far",
    question: "How far apart are the measurements?",
    answer: answer(page),
    cautions: [
      [
        "A high correlation says that the radiographs differ much, not that the observers differ little; read the limits first.",
      ],
    ],
    tables: [pairsTable(page), correlations(page)],
  };
}

function answer(page: AgreementPage): Paragraph[] {
  const { pair, level } = page.choices;
  const measured = page.measured!;
  const found = measured.pairs.find(({ raters }) => raters[0] === pair[0] && raters[1] === pair[1])!;
  const [a, b] = pair.map((place) => columnName(page, place));
  if (!("bias" in found.limits)) return [[`${a} and ${b}: no limits, as ${found.limits.because}.`]];
  const { bias, lower, upper, n } = found.limits;
  const both = page.readings.readings.flatMap((row, k) => (row[pair[0]] !== null && row[pair[1]] !== null ? [k] : []));
  const outside = both.filter((k) => {
    const row = page.readings.readings[k]!;
    const difference = row[pair[0]]! - row[pair[1]]!;
    return difference < lower.estimate || difference > upper.estimate;
  });
  const higher = bias.estimate >= 0 ? "higher" : "lower";
  const sem = measured.error.agreement;
  return [
    [
      `${a} read ${decimalText(Math.abs(bias.estimate), 1)} ${higher} than ${b} on average over `,
      imagesSpan(page, counted(n, "radiograph"), `Measured by ${a} and ${b}`, both),
      ` (${levelText(level)} CI of the difference ${rangeText(bias.interval, 1)}).`,
    ],
    [
      `Of single differences 95% are expected between ${decimalText(lower.estimate, 1)} (${rangeText(lower.exact, 1)}) and ${decimalText(upper.estimate, 1)} (${rangeText(upper.exact, 1)}); `,
      imagesSpan(page, counted(outside.length, "radiograph"), "Outside the limits of agreement", outside),
      " lay outside.",
    ],
    ...(sem.estimate === null
      ? [[`The error of measurement cannot be estimated: ${sem.because}.`]]
      : [
          [
            `The standard error of measurement between observers was ${decimalText(sem.estimate, 1)} (${rangeText(sem.interval, 1)}): two readings of one radiograph by two observers differ by up to ${decimalText(sem.smallestDetectableChange, 0)} without any change.`,
          ],
        ]),
  ];
}

function pairsTable(page: AgreementPage): TextTable {
  return {
    caption: "Differences of every pair of readings",
    head: [
      "Pair (first less second)",
      "Radiographs",
      "Mean difference",
      "Lower limit",
      "Upper limit",
      "Grows with size",
    ],
    rows: page.measured!.pairs.map(({ raters, limits, proportional }) => {
      const name = `${columnName(page, raters[0])}, ${columnName(page, raters[1])}`;
      if (!("bias" in limits)) return [name, limits.because, "", "", "", ""];
      return [
        name,
        String(limits.n),
        `${decimalText(limits.bias.estimate, 1)} (${rangeText(limits.bias.interval, 1)})`,
        `${decimalText(limits.lower.estimate, 1)} (${rangeText(limits.lower.exact, 1)})`,
        `${decimalText(limits.upper.estimate, 1)} (${rangeText(limits.upper.exact, 1)})`,
        "slope" in proportional ? pText(proportional.p) : "not tested",
      ];
    }),
    notes: ["Limits of agreement with exact intervals (noncentral t), for differences that are about normal."],
  };
}

function correlations(page: AgreementPage): TextTable {
  const { icc, otherIcc, repeats, error, level } = page.measured!;
  const name = (one: (typeof otherIcc)[number]): string => `${one.model}, ${one.type}, ${one.unit} reading`;
  const rows = [icc.agreement, icc.consistency, ...otherIcc].map((one) => [
    `Intraclass correlation: ${name(one)}`,
    coefficientText(one, level),
  ]);
  const spread = (label: string, one: typeof error.agreement) => [
    label,
    one.estimate === null
      ? `not estimable (${one.because})`
      : `${decimalText(one.estimate, 1)} (${rangeText(one.interval, 1)})`,
  ];
  return {
    caption: "Error of measurement and intraclass correlations",
    head: ["Measure", `Value (${levelText(level)} CI)`],
    rows: [
      spread("Standard error of measurement, differences of observers included", error.agreement),
      spread("Standard error of measurement, without them", error.consistency),
      ...(repeats === null
        ? []
        : [
            [
              "Within-subject standard deviation, same observer",
              repeats.estimate === null
                ? `not estimable (${repeats.because})`
                : `${decimalText(repeats.estimate, 1)} (${rangeText(repeats.interval, 1)})`,
            ],
          ]),
      ...rows,
    ],
    notes: ["First readings of each observer, radiographs that all of them measured; repeats apart."],
  };
}
