import { cohenKappa } from "../../stats/agreement/cohen-kappa.js";
import type { IntervalFact, KappaFact } from "../reading/facts.js";
import type { Finding } from "./finding.js";
import { asPrinted, fixed } from "./number-text.js";
import { named, roundingOf } from "./rounding.js";

type Weights = "unweighted" | "linear" | "quadratic";

/**
 * Judges a kappa by its cross-table when one is printed, otherwise by what no table can undo: the range, and that
 * an unweighted kappa never exceeds the observed agreement.
 * @param agreement observed agreement as a fraction with its printed precision, when the sentence gives it
 */
export function judgeKappa(
  kappa: KappaFact, interval: IntervalFact | null, agreement: { readonly value: number; readonly slack: number } | null,
  table: readonly (readonly number[])[] | null, recomputed: Record<string, number | null>,
): Finding[] {
  const hard = impossible(kappa, interval, agreement);
  if (hard) return [{ light: "fails", because: hard, reproducedBy: [] }];
  if (table && !kappa.several) return [byTable(kappa, interval, table, recomputed)];
  const ask = kappa.weights === null ? "the cross-table and whether the kappa is weighted" : "the cross-table";
  return [{ light: "cannot be checked", because: `A kappa cannot be recomputed from the agreement alone: please give ${ask}.`, reproducedBy: [] }];
} // prettier-ignore

function impossible(
  kappa: KappaFact,
  interval: IntervalFact | null,
  agreement: { readonly value: number; readonly slack: number } | null,
): string | null {
  const { value, decimals } = kappa.number;
  if (value > 1 || value < -1)
    return `A kappa of ${asPrinted(kappa.number)} lies outside −1 to 1. Which value is right?`;
  if (interval && interval.low.value > interval.high.value)
    return "The interval of the kappa runs backwards. Which limits are right?";
  if (interval && (value < interval.low.value || value > interval.high.value))
    return `A kappa of ${asPrinted(kappa.number)} lies outside its own interval ${asPrinted(interval.low)} to ${asPrinted(interval.high)}. Which number is right?`;
  const slack = 10 ** -decimals / 2;
  if (
    agreement &&
    kappa.weights === "unweighted" &&
    !kappa.several &&
    value - slack > agreement.value + agreement.slack
  )
    return `An unweighted kappa can never exceed the observed agreement: ${asPrinted(kappa.number)} is above ${fixed(agreement.value, 2)}. Is it a weighted kappa, or is one of the two numbers a slip?`;
  return null;
}

function byTable(
  kappa: KappaFact,
  interval: IntervalFact | null,
  table: readonly (readonly number[])[],
  recomputed: Record<string, number | null>,
): Finding {
  const weightsTried: Weights[] =
    kappa.weights === null || kappa.weights === "weighted"
      ? kappa.weights === null
        ? ["unweighted", "linear", "quadratic"]
        : ["linear", "quadratic"]
      : [kappa.weights];
  const fits: string[] = [];
  const shown: string[] = [];
  for (const weights of ["unweighted", "linear", "quadratic"] as const) {
    const result = cohenKappa(table, { weights, level: interval?.level ?? 0.95 });
    recomputed[weights] = result.estimate;
    if (result.estimate === null) continue;
    shown.push(
      `${weights} ${fixed(result.estimate, 3)} (${fixed(result.interval.low, 2)} to ${fixed(result.interval.high, 2)})`,
    );
    const rounding = roundingOf([[result.estimate, kappa.number]]);
    if (!rounding || !weightsTried.includes(weights)) continue;
    if (interval && !intervalFits(result.interval, interval) && !intervalFits(simple(result), interval)) continue;
    fits.push(named(`${weights} kappa of the cross-table`, rounding));
  }
  const range = interval ? ` (${asPrinted(interval.low)} to ${asPrinted(interval.high)})` : "";
  if (fits.length > 0)
    return {
      light: "holds",
      because: `κ = ${asPrinted(kappa.number)}${range} is reproduced by: ${fits.join("; ")}.`,
      reproducedBy: fits,
    };
  return {
    light: "fails",
    because: `The cross-table gives κ ${shown.join(", ")}, not ${asPrinted(kappa.number)}${range}. Which weights and interval were used?`,
    reproducedBy: [],
  };
}

interface Limits {
  readonly low: number;
  readonly high: number;
}

const intervalFits = ({ low, high }: Limits, printed: IntervalFact): boolean =>
  roundingOf([[low, printed.low], [high, printed.high]]) !== null || roundingOf([[low, printed.low], [Math.min(1, high), printed.high]]) !== null; // prettier-ignore

/** Cohen's simpler standard error of 1960, still printed by some programs. */
function simple(result: {
  readonly estimate: number;
  readonly observed: number;
  readonly chance: number;
  readonly n: number;
  readonly interval: Limits;
  readonly standardError: number;
}): Limits {
  const se = Math.sqrt((result.observed * (1 - result.observed)) / (result.n * (1 - result.chance) ** 2));
  const z = (result.interval.high - result.estimate) / result.standardError;
  return Number.isFinite(z) ? { low: result.estimate - z * se, high: result.estimate + z * se } : result.interval;
}
