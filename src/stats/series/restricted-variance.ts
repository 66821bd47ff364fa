import { bracketedRoot } from "../../numeric/bracketed-root.js";
import { weighted, type Effect } from "./effects.js";

/**
 * Variance between series with the highest restricted likelihood: the best of its stationary points and of 0, found by
 * going over a fine grid of variances for every change of sign of the slope.
 *
 * @param effects two or more, checked
 * @see Viechtbauer 2005, J Educ Behav Stat 30:261-293, equation 14
 * @example restrictedVariance([{ estimate: 0, variance: 1 }, { estimate: 4, variance: 1 }]) // => 7
 */
export function restrictedVariance(effects: readonly Effect[]): number {
  const range = spreadOf(effects);
  // Beyond the square of the range the slope is negative: a normal variance cannot pass it.
  const grid = [0, ...Array.from({ length: 200 }, (_, at) => range ** 2 * 10 ** ((at - 199) / 22))];
  let best = { tau2: 0, value: likelihood(effects, 0) };
  for (let at = 1; at < grid.length; at++) {
    const [low, high] = [grid[at - 1]!, grid[at]!];
    const [a, b] = [slope(effects, low), slope(effects, high)];
    if (!(a > 0 && b <= 0)) continue;
    const tau2 = b === 0 ? high : bracketedRoot((value) => slope(effects, value), { low, high });
    const value = likelihood(effects, tau2);
    if (value > best.value) best = { tau2, value };
  }
  return best.tau2;
}

function spreadOf(effects: readonly Effect[]): number {
  const estimates = effects.map(({ estimate }) => estimate);
  return Math.max(...estimates) - Math.min(...estimates) || 1;
}

function likelihood(effects: readonly Effect[], tau2: number): number {
  const { sum, q } = weighted(effects, ({ variance }) => 1 / (variance + tau2));
  const logs = effects.reduce((total, { variance }) => total + Math.log(variance + tau2), 0);
  return -0.5 * (logs + Math.log(sum) + q);
}

function slope(effects: readonly Effect[], tau2: number): number {
  const weight = ({ variance }: Effect): number => 1 / (variance + tau2);
  const { mean, sum } = weighted(effects, weight);
  let [first, second, third] = [0, 0, 0];
  for (const effect of effects) {
    first += weight(effect);
    second += weight(effect) ** 2;
    third += weight(effect) ** 2 * (effect.estimate - mean) ** 2;
  }
  return 0.5 * (third - first + second / sum);
}
