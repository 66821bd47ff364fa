import type { Likelihood } from "./likelihood.js";
import { maximise, type Maximum } from "./maximise.js";

/**
 * One limit of a parameter: where the likelihood, highest over all other parameters, has fallen by `drop` from its top.
 * The joint iteration of Venzon and Moolgavkar first; its end is checked, and where it does not hold the limit is found
 * from constrained fits, each of which must converge. Null when no limit was reached.
 *
 * @param top the highest point
 * @param of.parameter index
 * @param of.side -1 for the lower limit, 1 for the upper
 * @param of.drop half a chi-square quantile
 * @see Venzon and Moolgavkar 1988, Appl Stat 37:87-94
 */
export function profileLimit(
  likelihood: Likelihood,
  top: Maximum,
  of: { readonly parameter: number; readonly side: -1 | 1; readonly drop: number },
): number | null {
  return jointly(likelihood, top, of) ?? byConstrainedFits(likelihood, top, of);
}

interface Limit {
  readonly parameter: number;
  readonly side: -1 | 1;
  readonly drop: number;
}

function jointly(likelihood: Likelihood, top: Maximum, { parameter, side, drop }: Limit): number | null {
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
      most = Math.max(most, Math.abs(step[j]!) * Math.sqrt(at.curvature[j * size + j]!));
    }
    if (most < 1e-11) {
      const onSide = side * (beta[parameter]! - top.beta[parameter]!) > 0;
      return onSide && Math.abs(at.value - target) < 1e-9 * (1 + drop) ? beta[parameter]! : null;
    }
    const fraction = Math.min(1, 2 / most);
    for (let j = 0; j < size; j++) beta[j] = beta[j]! + fraction * step[j]!;
  }
  return null;
}

/** Newton on the signed root of the fall, which is nearly straight, inside a bracket. */
function byConstrainedFits(likelihood: Likelihood, top: Maximum, { parameter, side, drop }: Limit): number | null {
  const { size } = likelihood;
  const from = top.beta[parameter]!;
  const goal = Math.sqrt(2 * drop);
  let start = top.beta;
  let [inside, outside] = [0, Infinity];
  let distance = goal * Math.sqrt(top.at.inverse[parameter * size + parameter]!);
  for (let iteration = 0; iteration < 200; iteration++) {
    const held = start.slice();
    held[parameter] = from + side * distance;
    const fit = maximise(likelihood, { start: held, held: [parameter] });
    if (fit === null) return null;
    start = fit.beta;
    const root = Math.sqrt(Math.max(0, 2 * (top.at.value - fit.at.value)));
    if (root < goal) inside = distance;
    else outside = distance;
    const slope = root > 0 ? (-side * fit.at.score[parameter]!) / root : 0;
    let next = slope > 0 ? distance + (goal - root) / slope : NaN;
    if (!(next > inside && next < outside)) next = outside < Infinity ? (inside + outside) / 2 : 2 * distance;
    if (Math.abs(next - distance) <= 1e-12 * Math.max(distance, Math.abs(from))) return from + side * next;
    distance = next;
  }
  return null;
}
