/** What Fisher's exact test reads off the hypergeometric distribution of one 2 x 2 table with its margins fixed. */
export interface FisherTails {
  /** Probability of the observed table. */
  readonly observed: number;
  /** Sum over the tables that are no likelier than the observed one, within a relative 1e-7. */
  readonly pointProbability: number;
  /** Natural logarithm of `pointProbability`, finite also where that underflows. */
  readonly logPointProbability: number;
  /** Probability of a first cell as small as the observed one, or smaller. */
  readonly less: number;
  /** Probability of a first cell as large as the observed one, or larger. */
  readonly greater: number;
}

/** Equal probabilities differ in their last digits when computed: this much counts as a tie (common practice, no source). */
const tie = 1 + 1e-7;
/** Below this share of the likeliest table's probability the observed one is weighed by its logarithm. */
const smallestWeight = 1e-280;

/**
 * Tails of the table (a, b; c, d), unchecked: the inner loop of Fisher's test, of its power and of searches over tables.
 * One walk of ratios from the likeliest table, so that every sum has positive terms only and keeps its digits.
 */
export function fisherTails(a: number, b: number, c: number, d: number): FisherTails {
  const mode = Math.floor(((a + b + 1) * (a + c + 1)) / (a + b + c + d + 2));
  // Counting the other column turns an observed table below the likeliest one into one at or above it.
  return a >= mode
    ? tailsAtOrAbove(a, a + b, c + d, a + c, mode, false)
    : tailsAtOrAbove(b, a + b, c + d, b + d, Math.min(b, a + b - mode), true);
}

/** The first row has `x` of its `m`, the second `k - x` of its `n`, and `x` is not below the likeliest value. */
function tailsAtOrAbove(x: number, m: number, n: number, k: number, mode: number, mirrored: boolean): FisherTails {
  const gap = n - k;
  let observed = 1;
  let between = 0;
  for (let y = mode; y < x; y++) {
    between += observed;
    observed *= ((m - y) * (k - y)) / ((y + 1) * (gap + y + 1));
  }
  if (observed < smallestWeight) return farTails(x, m, n, k, mode, mirrored);

  const upper = observed * above(x, m, n, k);
  const likely = observed * tie;
  let unlikely = upper;
  for (let y = x, weight = observed; y > mode; y--) {
    weight *= (y * (gap + y)) / ((m - y + 1) * (k - y + 1));
    if (weight > likely) break;
    unlikely += weight;
  }
  let below = 0;
  const low = Math.max(0, -gap);
  for (let y = mode, weight = 1; y > low && weight > 1e-18 * upper; y--) {
    weight *= (y * (gap + y)) / ((m - y + 1) * (k - y + 1));
    below += weight;
    if (weight <= likely) unlikely += weight;
  }
  const total = between + below + upper;
  const p = likely >= 1 ? 1 : Math.min(1, unlikely / total);
  const less = (between + below + observed) / total;
  return mirrored
    ? tails(observed / total, p, Math.log(p), upper / total, less)
    : tails(observed / total, p, Math.log(p), less, upper / total);
}

/** The observed table is so far out that its probability relative to the likeliest may underflow: weighed in logarithms. */
function farTails(x: number, m: number, n: number, k: number, mode: number, mirrored: boolean): FisherTails {
  const logTotal = Math.log(above(mode, m, n, k) + above(m - mode, m, n, m + n - k) - 1);
  const { logWeight } = logWalk(mode, m, n, k, (y) => y === x)!;
  const relative = above(x, m, n, k);
  // The other tail begins where the tables become as unlikely as the observed one, counted by the other column.
  const other = logWalk(m - mode, m, n, m + n - k, (_, reached) => reached <= logWeight + Math.log(tie));
  const opposite = other ? above(other.y, m, n, m + n - k) * Math.exp(other.logWeight - logWeight) : 0;
  const logObserved = logWeight - logTotal;
  const observed = Math.exp(logObserved);
  const logP = logObserved + Math.log(relative + opposite);
  return mirrored
    ? tails(observed, Math.exp(logP), logP, observed * relative, 1)
    : tails(observed, Math.exp(logP), logP, 1, observed * relative);
}

/** Walks up from the likeliest cell until `done`; nothing when the cells end first. */
function logWalk(from: number, m: number, n: number, k: number, done: (y: number, logWeight: number) => boolean) {
  let weight = 1;
  let logBefore = 0;
  for (let y = from; ; y++) {
    const logWeight = logBefore + Math.log(weight);
    if (done(y, logWeight)) return { y, logWeight };
    if (y >= Math.min(m, k)) return undefined;
    weight *= ((m - y) * (k - y)) / ((y + 1) * (n - k + y + 1));
    if (weight < 1e-200) {
      logBefore += Math.log(weight);
      weight = 1;
    }
  }
}

/** Sum of the probabilities of x, x + 1, ... relative to that of x, where they fall. */
function above(x: number, m: number, n: number, k: number): number {
  const gap = n - k;
  const high = Math.min(m, k);
  let sum = 1;
  for (let y = x, weight = 1; y < high && weight > 1e-18 * sum; y++) {
    weight *= ((m - y) * (k - y)) / ((y + 1) * (gap + y + 1));
    sum += weight;
  }
  return sum;
}

function tails(
  observed: number,
  pointProbability: number,
  logPointProbability: number,
  less: number,
  greater: number,
): FisherTails {
  return { observed, pointProbability, logPointProbability, less, greater };
}
