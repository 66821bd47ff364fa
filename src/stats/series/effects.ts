/** One series' estimate with its sampling variance, on a scale on which such estimates are roughly normal. */
export interface Effect {
  readonly estimate: number;
  readonly variance: number;
}

/** Sizes whose squares and products neither overflow nor vanish. */
const mostSize = 1e70;

/** Throws unless there is at least one effect, every estimate is finite and every variance positive, of a size to square. */
export function requireEffects(caller: string, effects: readonly Effect[]): void {
  if (effects.length === 0) throw new RangeError(`${caller}: effects must hold at least 1, got 0`);
  effects.forEach(({ estimate, variance }, at) => {
    if (!Number.isFinite(estimate))
      throw new RangeError(`${caller}: effects[${at}].estimate must be a finite number, got ${estimate}`);
    if (!(variance > 0 && variance < Infinity))
      throw new RangeError(`${caller}: effects[${at}].variance must be positive and finite, got ${variance}`);
    if (Math.abs(estimate) > mostSize)
      throw new RangeError(`${caller}: effects[${at}].estimate must be at most ${mostSize} in size, got ${estimate}`);
    if (!(variance >= 1 / mostSize && variance <= mostSize))
      throw new RangeError(
        `${caller}: effects[${at}].variance must lie between ${1 / mostSize} and ${mostSize}, got ${variance}`,
      );
  });
}

/** Weighted mean, the sum of the weights, and Cochran's weighted sum of squares about the mean. */
export function weighted(
  effects: readonly Effect[],
  weight: (effect: Effect) => number,
): { readonly mean: number; readonly sum: number; readonly q: number } {
  let [sum, total] = [0, 0];
  for (const effect of effects) {
    sum += weight(effect);
    total += weight(effect) * effect.estimate;
  }
  const mean = total / sum;
  const q = effects.reduce((squares, effect) => squares + weight(effect) * (effect.estimate - mean) ** 2, 0);
  return { mean, sum, q };
}
