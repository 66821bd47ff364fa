/**
 * Values as whole numbers of a common decimal step, counted from the smallest, or null when there is no such step of
 * at most six decimals. Lets exact methods for ranks work on readings in degrees, millimetres or tenths.
 *
 * @param values finite numbers, at least one
 * @example wholeSteps([1.5, 2, 3.5]) // => { step: 0.5, from: 1.5, counts: [0, 1, 4] }
 */
export function wholeSteps(
  values: readonly number[],
): { readonly step: number; readonly from: number; readonly counts: readonly number[] } | null {
  const from = values.reduce((least, value) => Math.min(least, value), Infinity);
  for (let decimals = 0; decimals <= 6; decimals++) {
    const scale = 10 ** decimals;
    const scaled = values.map((value) => (value - from) * scale);
    if (!scaled.every((value) => Math.abs(value - Math.round(value)) < 1e-9 * scale && value < 2 ** 31)) continue;
    const whole = scaled.map(Math.round);
    const divisor = whole.reduce(greatestCommonDivisor, 0) || 1;
    return { step: divisor / scale, from, counts: whole.map((value) => value / divisor) };
  }
  return null;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
