import { constrainedLimit, type LimitOf } from "./constrained-limit.js";
import type { Likelihood } from "./likelihood.js";
import { maximise, type Maximum } from "./maximise.js";

/**
 * One limit of a parameter: where the likelihood, highest over all other parameters, has fallen by `drop` from its top.
 * The joint iteration of Venzon and Moolgavkar first; its end is checked, and where it does not hold the limit is found
 * from constrained fits, each of which must converge. Null when no limit was reached.
 *
 * @param top the highest point
 * @param of which limit
 * @see Venzon and Moolgavkar 1988, Appl Stat 37:87-94
 */
export function profileLimit(likelihood: Likelihood, top: Maximum, of: LimitOf): number | null {
  const fit = (start: Float64Array): Maximum | null => maximise(likelihood, { start, held: [of.parameter] });
  return jointLimit(likelihood, top, of)?.beta[of.parameter] ?? constrainedLimit(top, of, fit);
}

/**
 * A limit by solving at once for the fall and for the score of all other parameters, or null where that does not end in
 * a point that satisfies both.
 *
 * @see Venzon and Moolgavkar 1988, Appl Stat 37:87-94
 */
export function jointLimit(likelihood: Likelihood, top: Maximum, { parameter, side, drop }: LimitOf): Maximum | null {
  const { size } = likelihood;
  const target = top.at.value - drop;
  const variance = top.at.curvatureInverse[parameter * size + parameter]!;
  const along = (j: number): number => top.at.curvatureInverse[j * size + parameter]! / variance;
  const first = side * Math.sqrt(2 * drop * variance);
  const beta = top.beta.map((value, j) => value + first * along(j));
  for (let iteration = 0; iteration < 80; iteration++) {
    const at = likelihood.evaluate(beta);
    if (at === null) return null;
    const step = new Float64Array(size);
    let gain = 0;
    for (let j = 0; j < size; j++) {
      for (let k = 0; k < size; k++) step[j] = step[j]! + at.curvatureInverse[j * size + k]! * at.score[k]!;
      gain += step[j]! * at.score[j]!;
    }
    const square = (2 * (at.value - target) + gain) / at.curvatureInverse[parameter * size + parameter]!;
    const pull = square > 0 ? side * Math.sqrt(square) : 0;
    let most = 0;
    for (let j = 0; j < size; j++) {
      step[j] = step[j]! + pull * at.curvatureInverse[j * size + parameter]!;
      most = Math.max(most, Math.abs(step[j]!) * Math.sqrt(Math.abs(at.curvature[j * size + j]!)));
    }
    if (most < 1e-11) {
      const onSide = side * (beta[parameter]! - top.beta[parameter]!) > 0;
      return onSide && Math.abs(at.value - target) < 1e-9 * (1 + drop) ? { beta, at, iterations: iteration } : null;
    }
    const fraction = Math.min(1, 2 / most);
    for (let j = 0; j < size; j++) beta[j] = beta[j]! + fraction * step[j]!;
  }
  return null;
}
