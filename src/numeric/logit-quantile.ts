import { betaPower, incompleteBeta } from "./incomplete-beta.js";
import { logBeta } from "./log-beta.js";
import { normalQuantile } from "./normal.js";
import { quantileRoot, type TailsAndSlope } from "./quantile-root.js";

/**
 * The logit u of the point x = 1 / (1 + e^-u) with lower tail p and upper tail q = 1 - p of a beta distribution; exact
 * where x or 1 - x underflows, which the t and F quantiles need. Unguarded kernel for p and q strictly between 0 and 1.
 */
export function logitQuantile(p: number, q: number, a: number, b: number): number {
  const atZero = leadingTerm(p, a, b);
  if (atZero < -40 - Math.log1p(b)) return atZero;
  const atOne = leadingTerm(q, b, a);
  if (atOne < -40 - Math.log1p(a)) return -atOne;
  const evaluate = (u: number): TailsAndSlope => {
    const small = Math.exp(-Math.abs(u));
    const near = small / (1 + small);
    const far = 1 / (1 + small);
    const [x, y] = u < 0 ? [near, far] : [far, near];
    return { ...incompleteBeta(x, y, a, b), slope: betaPower(x, y, a, b) };
  };
  const target = p <= q ? ({ tail: "lower", probability: p } as const) : ({ tail: "upper", probability: q } as const);
  // The logit of a beta is near normal, with this mean and spread, unless a shape is small.
  const z = p <= q ? normalQuantile(p) : -normalQuantile(q);
  const start = Math.log(a / b) + z * Math.sqrt(1 / a + 1 / b);
  return quantileRoot(evaluate, target, { start: Math.max(-1e4, Math.min(1e4, start)), low: -1e5, high: 1e5 });
}

/** ln x where I_x(a, b) = x^a / (a B(a, b)), all but exact for the smallest x. */
function leadingTerm(p: number, a: number, b: number): number {
  return (Math.log(p) + Math.log(a) + logBeta(a, b)) / a;
}
