/** Logarithms of 0! to n!, each as a double and the rest that the double leaves over. */
export interface LogFactorials {
  readonly high: Float64Array;
  readonly low: Float64Array;
}

/** Sums of logarithms with the rounding of every step kept (Knuth's two-sum). */
export function logFactorials(n: number): LogFactorials {
  const high = new Float64Array(n + 1);
  const low = new Float64Array(n + 1);
  for (let i = 2; i <= n; i++) {
    const term = Math.log(i);
    const sum = high[i - 1]! + term;
    const kept = sum - high[i - 1]!;
    high[i] = sum;
    low[i] = low[i - 1]! + (high[i - 1]! - (sum - kept)) + (term - kept);
  }
  return { high, low };
}

/**
 * log x! less a straight line through 0. Where only sums over tables with equal margins are compared, the line cancels
 * and the smaller numbers keep more digits.
 */
export function tiltedLogFactorials({ high, low }: LogFactorials, slope: number): Float64Array {
  return high.map((value, x) => value - slope * x + low[x]!);
}

/** A slope near the logarithm of a typical cell, with few binary digits so that its multiples are exact. */
export function slopeFor(typicalCell: number): number {
  return Math.max(0, Math.round((Math.log(Math.max(1, typicalCell)) - 1) * 64) / 64);
}
