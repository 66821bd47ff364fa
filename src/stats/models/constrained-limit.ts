import type { Maximum } from "./maximise.js";

/** Which limit: a parameter by its index, -1 for the lower and 1 for the upper, and how far the likelihood may fall. */
export interface LimitOf {
  readonly parameter: number;
  readonly side: -1 | 1;
  /** Half a chi-square quantile. */
  readonly drop: number;
  /** A limit farther than this from the estimate counts as infinite; default: none does. */
  readonly farthest?: number;
  /** A distance from the estimate at which the likelihood is known to have fallen farther; default: none is. */
  readonly outside?: number;
}

/**
 * A profile-likelihood limit from constrained fits, each of which must converge: Newton on the signed root of the fall,
 * which is nearly straight, inside a bracket. Null when a fit fails or no limit is found.
 *
 * @param top the highest point
 * @param of which limit
 * @param fit highest point with the parameter held where the start has it
 * @see Cox and Hinkley 1974, Theoretical Statistics, section 9.3
 */
export function constrainedLimit(
  top: Maximum,
  of: LimitOf,
  fit: (start: Float64Array) => Maximum | null,
): number | null {
  const { parameter, side, drop, farthest = Infinity } = of;
  const size = top.beta.length;
  const from = top.beta[parameter]!;
  const goal = Math.sqrt(2 * drop);
  let start = top.beta;
  let [inside, outside] = [0, of.outside ?? Infinity];
  let distance = goal * Math.sqrt(top.at.inverse[parameter * size + parameter]!);
  if (!(distance < outside)) distance = outside / 2;
  for (let iteration = 0; iteration < 200; iteration++) {
    const held = start.slice();
    held[parameter] = from + side * distance;
    const constrained = fit(held);
    if (constrained === null) return null;
    start = constrained.beta;
    const root = Math.sqrt(Math.max(0, 2 * (top.at.value - constrained.at.value)));
    if (root < goal) inside = distance;
    else outside = distance;
    if (inside >= farthest) return side * Infinity;
    const slope = root > 0 ? (-side * constrained.at.score[parameter]!) / root : 0;
    let next = slope > 0 ? distance + (goal - root) / slope : NaN;
    if (Math.abs(next - distance) <= 1e-12 * Math.max(distance, Math.abs(from))) return from + side * next;
    if (!(next > inside && next < outside))
      next = outside < Infinity ? (inside + outside) / 2 : Math.min(2 * distance, Math.max(distance, farthest));
    // A bracket this narrow holds the limit to the rounding error of the likelihood.
    if (outside < Infinity && outside - inside <= 1e-13 * outside) return from + side * next;
    distance = next;
  }
  return null;
}
