import { tResult } from "../../stats/measurements/t-result.js";
import { statisticP } from "../../stats/reported/statistic-p.js";
import type { MeanFact, PFact, StatisticFact } from "../reading/facts.js";
import type { NamedTests } from "../reading/tests-named.js";
import type { PrintedNumber } from "../text/token.js";
import type { Finding } from "./finding.js";
import { asPrinted, pText } from "./number-text.js";
import { roundingOf } from "./rounding.js";

/** Judges the p value of two means with their standard deviations and numbers, over all values that print like them. */
export function judgeTwoMeans(
  p: PFact,
  [a, b]: readonly [MeanFact, MeanFact],
  tests: NamedTests,
  recomputed: Record<string, number | null>,
): Finding {
  const unclear: Finding = {
    light: "cannot be checked",
    because: "The p value of two means needs both standard deviations and numbers of cases.",
    reproducedBy: [],
  };
  if (!a.sd || !b.sd || !a.trials || !b.trials || a.trials < 2 || b.trials < 2 || !p.number || tests.other)
    return unclear;
  const ranges = ([ "Welch", "Student" ] as const).map((name) => ({ name, ...pRange(a, b, name) })); // prettier-ignore
  for (const { name, middle } of ranges) recomputed[`${name} p`] = middle;
  const fits = ranges.filter(({ low, high }) => inRange(p, low, high)).map(({ name }) => `${name}'s t test`);
  const text = `p ${p.relation} ${asPrinted(p.number)}`;
  if (fits.length > 0)
    return {
      light: "holds",
      because: `${text} goes with the means, standard deviations and numbers (${fits.join("; ")}).`,
      reproducedBy: fits,
    };
  const because = `The means, standard deviations and numbers give p of about ${pText(ranges[0]!.middle)} (t test), not ${text}. Which test was used?`;
  return { light: tests.means ? "fails" : "cannot be checked", because, reproducedBy: [] };
}

function inRange({ relation, number }: PFact, low: number, high: number): boolean {
  if (relation === "<" || relation === "≤") return low < number!.value;
  if (relation === ">" || relation === "≥") return high > number!.value;
  const unit = 10 ** -number!.decimals;
  return high >= number!.value - unit / 2 && low <= number!.value + unit;
}

function pRange(a: MeanFact, b: MeanFact, name: "Welch" | "Student"): { low: number; middle: number; high: number } {
  const slack = half(a.number) + half(b.number);
  const gap = Math.abs(a.number.value - b.number.value);
  const at = (difference: number, wider: number): number => {
    const [sa, sb] = [
      Math.max(1e-9, a.sd!.value + wider * half(a.sd!)),
      Math.max(1e-9, b.sd!.value + wider * half(b.sd!)),
    ];
    const [m, n] = [a.trials!, b.trials!];
    const [va, vb] = [sa ** 2 / m, sb ** 2 / n];
    const pooled = ((m - 1) * sa ** 2 + (n - 1) * sb ** 2) / (m + n - 2);
    const by =
      name === "Welch"
        ? { standardError: Math.sqrt(va + vb), df: (va + vb) ** 2 / (va ** 2 / (m - 1) + vb ** 2 / (n - 1)) }
        : { standardError: Math.sqrt(pooled * (1 / m + 1 / n)), df: m + n - 2 };
    const result = tResult(difference, { ...by, level: 0.95 });
    return "p" in result ? result.p : 1;
  };
  return { low: at(gap + slack, -1), middle: at(gap, 0), high: at(Math.max(0, gap - slack), 1) };
}

const half = ({ decimals }: PrintedNumber): number => 10 ** -decimals / 2;

/** Judges a p value by the test statistic printed beside it. */
export function judgeStatistic(
  p: PFact,
  { name, number, df }: StatisticFact,
  recomputed: Record<string, number | null>,
): Finding | null {
  if (!p.number || (name === "t" && df === null) || (name === "chi-square" && number.value < 0)) return null;
  const degrees = name === "z" ? 1 : (df ?? 1);
  if (!(degrees > 0)) return null;
  const at = (value: number): number => statisticP({ name, value, df: degrees });
  const value = Math.abs(number.value);
  const [low, middle, high] = [at(value + half(number)), at(value), at(Math.max(0, value - half(number)))];
  recomputed.p = middle;
  const label = `${name === "chi-square" ? "χ²" : name} = ${asPrinted(number)}${name === "z" ? "" : ` with ${degrees} df`}`;
  const text = `p ${p.relation} ${asPrinted(p.number)}`;
  if (inRange(p, low, high) || roundingOf([[middle, p.number]], ["rounded", "truncated"]))
    return { light: "holds", because: `${label} gives ${text}.`, reproducedBy: [`${name} distribution`] };
  return {
    light: "fails",
    because: `${label} gives p = ${pText(middle)}, not ${text}. Which of the two is right?`,
    reproducedBy: [],
  };
}
