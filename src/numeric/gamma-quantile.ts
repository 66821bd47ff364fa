import { incompleteGamma } from "./incomplete-gamma.js";
import { logGamma } from "./log-gamma.js";
import { poissonMass } from "./poisson-mass.js";
import { quantileRoot, type TailsAndSlope } from "./quantile-root.js";

/** The point with lower tail p and upper tail q = 1 - p of a gamma distribution of rate 1. Unguarded kernel. */
export function gammaQuantileOf(p: number, q: number, shape: number): number {
  if (p === 0) return 0;
  if (q === 0) return Infinity;
  // P(a, x) = x^a / Gamma(a + 1), all but exact for the smallest x.
  const leading = (Math.log(p) + logGamma(shape + 1)) / shape;
  if (leading < -40) return Math.exp(leading);
  const evaluate = (u: number): TailsAndSlope => {
    const x = Math.exp(u);
    return { ...incompleteGamma(shape, x), slope: shape * poissonMass(shape, x) };
  };
  const target = p <= q ? ({ tail: "lower", probability: p } as const) : ({ tail: "upper", probability: q } as const);
  const high = Math.log(shape + 2000 + 100 * Math.sqrt(shape));
  return Math.exp(quantileRoot(evaluate, target, { start: Math.log(shape), low: -800, high }));
}
