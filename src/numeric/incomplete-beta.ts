import { deviance } from "./deviance.js";
import { stirlingRemainder } from "./stirling.js";
import { allAbove, allBelow, type Tails } from "./tails.js";

const TINY = 1e-300;

/**
 * Regularised incomplete beta function, both tails: I_x(a, b) and I_y(b, a), where y = 1 - x is given too so that
 * neither loses digits near its end. Unguarded kernel.
 *
 * @see DLMF 8.17.22 (continued fraction), evaluated by the modified Lentz method; 8.17.4 (symmetry)
 */
export function incompleteBeta(x: number, y: number, a: number, b: number): Tails {
  if (x <= 0) return allAbove;
  if (y <= 0) return allBelow;
  if (x < (a + 1) / (a + b + 2)) {
    const lower = Math.min(1, (betaPower(x, y, a, b) * fraction(x, a, b)) / a);
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, (betaPower(y, x, b, a) * fraction(y, b, a)) / b);
  return { lower: 1 - upper, upper };
}

/** x^a y^b / B(a, b), in saddle-point form (Loader 2000). */
export function betaPower(x: number, y: number, a: number, b: number): number {
  const n = a + b;
  const log =
    stirlingRemainder(n) - stirlingRemainder(a) - stirlingRemainder(b) - deviance(a, n * x) - deviance(b, n * y);
  return Math.exp(log + 0.5 * Math.log((a / n) * (b / (2 * Math.PI))));
}

function fraction(x: number, a: number, b: number): number {
  const sum = a + b;
  let c = 1;
  let d = 1 / nonzero(1 - (sum * x) / (a + 1));
  let value = d;
  for (let m = 1; m <= 200_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonzero(1 + even * d);
    c = nonzero(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (sum + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonzero(1 + odd * d);
    c = nonzero(1 + odd / c);
    const step = d * c;
    value *= step;
    if (Math.abs(step - 1) < 2e-16) return value;
  }
  return value;
}

function nonzero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
