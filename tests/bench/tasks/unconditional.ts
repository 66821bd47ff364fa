import { barnard } from "../../../src/stats/two-groups/barnard.js";
import { boschloo } from "../../../src/stats/two-groups/boschloo.js";
import { exactDifference } from "../../../src/stats/two-groups/exact-difference.js";
import type { BenchTask } from "../task.js";

// Base R has no unconditional test, so these are timed alone. Trials of each group, and goals in microseconds.
const arms = [
  { trials: 25, maximum: 500, limits: undefined },
  { trials: 100, maximum: 4000, limits: 100_000 },
  { trials: 300, maximum: 10_000, limits: 300_000 },
] as const;

export const tasks: readonly BenchTask[] = arms.flatMap(({ trials, maximum, limits }) => {
  const first = { successes: Math.round(0.55 * trials), trials };
  const second = { successes: Math.round(0.4 * trials), trials };
  const groups = { first, second };
  const exact = {
    name: `exact limits of a difference, ${trials} an arm`,
    ours: () => exactDifference(groups).interval.low,
  };
  return [
    { name: `Boschloo, ${trials} an arm`, ours: () => boschloo(groups).p, goal: maximum },
    { name: `Barnard, ${trials} an arm`, ours: () => barnard(groups).p, goal: maximum },
    ...(limits === undefined ? [] : [{ ...exact, goal: limits }]),
  ];
});
