import { betaDensity } from "../../numeric/beta.js";
import type { BetaBelief } from "./beta-by-moments.js";

export interface CurvePoint {
  readonly x: number;
  readonly density: number;
}

/**
 * Density of a beta distribution at the middles of equal steps from 0 to 1, where it is finite whatever the shape.
 *
 * @param steps integer from 2 to 10,000
 * @throws RangeError when a shape or the number of steps is out of range
 * @see DLMF 8.17
 * @example betaCurve({ a: 2, b: 3 }, 2) // => [{ x: 0.25, density: 1.6875 }, { x: 0.75, density: 0.5625 }]
 */
export function betaCurve(belief: BetaBelief, steps: number): CurvePoint[] {
  if (!(Number.isInteger(steps) && steps >= 2 && steps <= 10_000))
    throw new RangeError(`betaCurve: steps must be an integer from 2 to 10000, got ${steps}`);
  return Array.from({ length: steps }, (_, i) => {
    const x = (i + 0.5) / steps;
    return { x, density: betaDensity(x, belief) };
  });
}
