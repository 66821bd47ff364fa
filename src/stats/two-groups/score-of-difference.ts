import type { TwoGroups } from "./groups.js";

/**
 * Score statistic of a difference of two proportions, unchecked: (estimate - difference) over its standard error at the
 * likeliest proportions that differ by as much. Falls as the difference rises; infinite where that error is 0.
 * @see Miettinen, Nurminen 1985, Stat Med 4:213-226; Farrington, Manning 1990, Stat Med 9:1447-1454
 */
export function scoreOfDifference({ first, second }: TwoGroups, difference: number): number {
  const above = first.successes / first.trials - second.successes / second.trials - difference;
  if (above === 0) return 0;
  const p2 = likeliestSecond({ first, second }, difference);
  const p1 = Math.min(1, Math.max(0, p2 + difference));
  const error = Math.sqrt((p1 * (1 - p1)) / first.trials + (p2 * (1 - p2)) / second.trials);
  return above / error;
}

/** Second proportion of the pair that differs by `difference` and makes the data likeliest: the middle root of a cubic. */
function likeliestSecond({ first, second }: TwoGroups, difference: number): number {
  const { successes: a, trials: m } = first;
  const { successes: c, trials: n } = second;
  const d = difference;
  const low = Math.max(0, -d);
  const high = Math.min(1, 1 - d);
  const l3 = m + n;
  const l2 = (m + 2 * n) * d - l3 - a - c;
  const l1 = (n * d - l3 - 2 * c) * d + a + c;
  const l0 = c * d * (1 - d);
  const third = l2 / (3 * l3);
  const q = third ** 3 - (l1 * l2) / (6 * l3 ** 2) + l0 / (2 * l3);
  const p = Math.sign(q || 1) * Math.sqrt(Math.max(0, third ** 2 - l1 / (3 * l3)));
  const cosine = p === 0 ? 0 : Math.max(-1, Math.min(1, q / p ** 3));
  const root = 2 * p * Math.cos((Math.PI + Math.acos(cosine)) / 3) - third;
  let at = Math.min(high, Math.max(low, root));
  // Where roots of the cubic nearly meet, the cosine holds half the digits: two Newton steps on the likelihood mend it.
  for (let step = 0; step < 2; step++) {
    const next = newtonStep(at, at + d, first.successes, m, c, n);
    if (next > low && next < high) at = next;
  }
  return at;
}

/** A Newton step towards the maximum of the likelihood in the second proportion; not finite at an end of the range. */
function newtonStep(p2: number, p1: number, a: number, m: number, c: number, n: number): number {
  const q1 = 1 - p1;
  const q2 = 1 - p2;
  const slope = a / p1 - (m - a) / q1 + c / p2 - (n - c) / q2;
  const bend = a / p1 ** 2 + (m - a) / q1 ** 2 + c / p2 ** 2 + (n - c) / q2 ** 2;
  return p2 + slope / bend;
}
