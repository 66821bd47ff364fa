/** A 2 x 2 table with its margins fixed: `x` of `m` in the first row, `k - x` of `n` in the second. */
export interface FixedMargins {
  readonly x: number;
  readonly m: number;
  readonly n: number;
  readonly k: number;
}

/** One tail of the first cell's distribution, the observed cell included: its probability, and the mean within it. */
export interface NoncentralTail {
  readonly probability: number;
  readonly mean: number;
}

/** Fisher's noncentral hypergeometric distribution of the first cell, seen from the observed one. */
export interface NoncentralTails {
  readonly mean: number;
  readonly variance: number;
  readonly atLeast: NoncentralTail;
  readonly atMost: NoncentralTail;
}

/** The same table with its columns exchanged: what was large becomes small. */
export function mirrored({ x, m, n, k }: FixedMargins): FixedMargins {
  return { x: m - x, m, n, k: m + n - k };
}

/**
 * Moments and both tails at an odds ratio, unchecked, by one walk of ratios from the mode.
 * @param share how much of the observed cell's own probability counts in the tails: 1 for exact, 0.5 for mid-P
 * @see Liao, Rosen 2001, Am Stat 55:366-369
 */
export function noncentralTails(table: FixedMargins, oddsRatio: number, share: number): NoncentralTails {
  const mode = likeliest(table, oddsRatio);
  if (table.x >= mode) return tailsFromMode(table, oddsRatio, share, mode);
  const { m } = table;
  const { mean, variance, atLeast, atMost } = tailsFromMode(mirrored(table), 1 / oddsRatio, share, m - mode);
  return { mean: m - mean, variance, atLeast: mirroredTail(atMost, m), atMost: mirroredTail(atLeast, m) };
}

function mirroredTail({ probability, mean }: NoncentralTail, m: number): NoncentralTail {
  return { probability, mean: m - mean };
}

/** The observed cell is at or above the mode. Moments are taken about the mode, where they lose no digits. */
function tailsFromMode(table: FixedMargins, oddsRatio: number, share: number, mode: number): NoncentralTails {
  const { x, m, n, k } = table;
  const near = walkUp(table, oddsRatio, mode, x, mode, 1);
  const far = walkUp(table, oddsRatio, x, Math.min(m, k), mode, near.weight);
  const below = walkUp(mirrored(table), 1 / oddsRatio, m - mode, Math.min(m, m + n - k), m - mode, 1);
  const own = share * near.weight;
  const rest = near.weight - own;

  const sum = 1 + near.sum + far.sum + below.sum;
  const mean = (near.first + far.first - below.first) / sum;
  const atLeast = far.sum + own;
  const atMost = 1 + near.sum + below.sum - rest;
  return {
    mean: mode + mean,
    variance: (near.second + far.second + below.second) / sum - mean ** 2,
    atLeast: {
      probability: atLeast / sum,
      mean: atLeast > 0 ? mode + (far.first + own * (x - mode)) / atLeast : x,
    },
    atMost: { probability: atMost / sum, mean: mode + (near.first - below.first - rest * (x - mode)) / atMost },
  };
}

/** Sums over the cells above `from`, to `last` or until nothing more is added, with distances from `origin`. */
function walkUp(
  { m, n, k }: FixedMargins,
  oddsRatio: number,
  from: number,
  last: number,
  origin: number,
  start: number,
) {
  const gap = n - k;
  let weight = start;
  let sum = 0;
  let first = 0;
  let second = 0;
  for (let y = from; y < last;) {
    weight *= (oddsRatio * ((m - y) * (k - y))) / ((y + 1) * (gap + y + 1));
    y++;
    const moment = weight * (y - origin);
    sum += weight;
    first += moment;
    second += moment * (y - origin);
    if (weight < 1e-20 * sum) break;
  }
  return { weight, sum, first, second };
}

/**
 * The likeliest first cell: largest x with (m - x + 1)(k - x + 1) oddsRatio >= x (n - k + x), the smaller root of a
 * quadratic written so that it does not cancel.
 */
function likeliest({ m, n, k }: FixedMargins, oddsRatio: number): number {
  const b = (m + k + 2) * oddsRatio + n - k;
  const c = oddsRatio * (m + 1) * (k + 1);
  const root = (2 * c) / (b + Math.sqrt(Math.max(0, b ** 2 - 4 * (oddsRatio - 1) * c)));
  return Math.min(Math.max(Math.floor(root), 0, k - n), m, k);
}
