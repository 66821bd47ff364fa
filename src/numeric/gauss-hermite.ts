/** Nodes and weights of a rule for the integral of f(x) e^(-x^2) over all x. */
export interface QuadratureRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const rules = new Map<number, QuadratureRule>();

/**
 * Gauss-Hermite rule, exact for polynomials to degree 2n - 1: Newton on the orthonormal Hermite recurrence.
 *
 * @param n number of nodes, 1 to 128
 * @throws RangeError when n is out of range
 * @see Davis and Rabinowitz 1984, Methods of Numerical Integration, section 2.7; recurrence DLMF 18.9.1, normalised
 * @example gaussHermite(1).weights[0] // => 1.772453850905516
 */
export function gaussHermite(n: number): QuadratureRule {
  if (!(Number.isInteger(n) && n >= 1 && n <= 128))
    throw new RangeError(`gaussHermite: n must be an integer from 1 to 128, got ${n}`);
  let rule = rules.get(n);
  if (rule === undefined) rules.set(n, (rule = computed(n)));
  return rule;
}

function computed(n: number): QuadratureRule {
  const nodes = new Float64Array(n);
  const weights = new Float64Array(n);
  let x = 0;
  for (let i = 0; i < (n + 1) >> 1; i++) {
    x = firstGuess(n, i, x, nodes);
    for (let iteration = 0; iteration < 100; iteration++) {
      const step = atOrder(n, x);
      x -= step.value / step.slope;
      if (Math.abs(step.value / step.slope) < 1e-15 * Math.max(1, Math.abs(x))) break;
    }
    // The middle node of an odd rule is 0.
    if (2 * i + 1 === n) x = 0;
    const { slope } = atOrder(n, x);
    nodes[n - 1 - i] = -x;
    nodes[i] = x;
    weights[i] = weights[n - 1 - i] = 2 / slope ** 2;
  }
  return { nodes, weights };
}

/** Known asymptotic guesses for the largest roots, then steps that the roots before them suggest. */
function firstGuess(n: number, i: number, last: number, nodes: Float64Array): number {
  if (i === 0) return Math.sqrt(2 * n + 1) - 1.85575 * (2 * n + 1) ** (-1 / 6);
  if (i === 1) return last - (1.14 * n ** 0.426) / last;
  if (i === 2) return 1.86 * last - 0.86 * nodes[0]!;
  if (i === 3) return 1.91 * last - 0.91 * nodes[1]!;
  return 2 * last - nodes[i - 2]!;
}

/** Orthonormal Hermite function of order n without its Gaussian, and its slope. */
function atOrder(n: number, x: number): { readonly value: number; readonly slope: number } {
  let [value, before] = [Math.PI ** -0.25, 0];
  for (let j = 1; j <= n; j++)
    [value, before] = [x * Math.sqrt(2 / j) * value - Math.sqrt((j - 1) / j) * before, value];
  return { value, slope: Math.sqrt(2 * n) * before };
}
