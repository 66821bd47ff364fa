import { wilson } from "../../stats/wilson.js";
import type { Count } from "../../stats/types.js";
import { fixed, pText } from "./number-text.js";
import type { Convention } from "./p-conventions.js";

/**
 * How a rate's interval moves when limbs cluster within children: the effective number at a correlation of 0, 0.5 and 1.
 * @param cohort children and limbs of the same series
 * @see Kish 1965, Survey Sampling: effective n = n / (1 + (m - 1) rho), m the mean cluster size (from memory)
 */
export function clusteredIntervals(
  { successes, trials }: Count,
  cohort: { readonly people: number; readonly limbs: number },
): string[] {
  if (cohort.people >= cohort.limbs) return [];
  const size = cohort.limbs / cohort.people;
  return [0, 0.5, 1].map((rho) => {
    const effective = Math.max(1, Math.round(trials / (1 + (size - 1) * rho)));
    const { interval } = wilson(Math.min(effective, Math.round((successes * effective) / trials)), effective);
    return `correlation ${rho} within children: ${effective} effective cases, interval ${fixed(100 * interval.low, 0)}% to ${fixed(100 * interval.high, 0)}%`;
  });
}

/** The p value under each convention, on one line. */
export const conventionLine = (all: readonly Convention[]): string =>
  all.map(({ name, p }) => `${name} ${pText(p)}`).join("; ");

/**
 * How many cases of the first group would have to change outcome before the verdict at 0.05 turns.
 * @param p the test whose verdict turns
 */
export function casesToFlip(
  [first, second]: readonly [Count, Count],
  p: (first: Count, second: Count) => number,
): string | null {
  const significant = p(first, second) < 0.05;
  const better = first.successes / first.trials >= second.successes / second.trials;
  const step = significant === better ? -1 : 1;
  for (let moved = 1; moved <= Math.min(first.trials, 60); moved++) {
    const successes = first.successes + step * moved;
    if (successes < 0 || successes > first.trials) return null;
    if (p({ successes, trials: first.trials }, second) < 0.05 !== significant)
      return `${moved} ${step < 0 ? "failure" : "success"}${moved === 1 ? "" : step < 0 ? "s" : "es"} more in the first group would turn the verdict at 0.05; compare with the number lost`;
  }
  return null;
}
