import { conditionalOddsRatio } from "../../../src/stats/two-groups/conditional-odds-ratio.js";
import { fisherExact } from "../../../src/stats/two-groups/fisher-exact.js";
import type { BenchTask } from "../task.js";

// Successes and trials of two groups, by total.
const sizes = [
  { total: "20", counts: [8, 10, 4, 10], fisher: 0.06, odds: 2 },
  { total: "200", counts: [62, 100, 51, 100], fisher: 0.25, odds: 5 },
  { total: "20,000", counts: [5100, 10_000, 4980, 10_000], fisher: 2.5, odds: 30 },
  { total: "1,000,000", counts: [250_400, 500_000, 249_900, 500_000], fisher: 20, odds: 200 },
] as const;

export const tasks: readonly BenchTask[] = sizes.flatMap(({ total, counts, fisher, odds }) => {
  const [a, m, c, n] = counts;
  const groups = { first: { successes: a, trials: m }, second: { successes: c, trials: n } };
  const table = `fisher.test(matrix(c(${a}, ${c}, ${m - a}, ${n - c}), 2)`;
  return [
    {
      name: `Fisher 2x2, total ${total}`,
      ours: () => fisherExact(groups).pointProbability,
      r: `${table}, conf.int = FALSE)$p.value`,
      goal: fisher,
    },
    {
      name: `conditional odds ratio with exact limits, total ${total}`,
      ours: () => conditionalOddsRatio(groups).interval.low,
      r: `${table})$conf.int[1]`,
      // R's limits are soft: uniroot at its default tolerance.
      tolerance: 0.02,
      goal: odds,
    },
  ];
});
