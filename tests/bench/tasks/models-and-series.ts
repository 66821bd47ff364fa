import { rankSum } from "../../../src/stats/measurements/rank-sum.js";
import { signedRank } from "../../../src/stats/measurements/signed-rank.js";
import { firthLogistic } from "../../../src/stats/models/firth-logistic.js";
import { logistic } from "../../../src/stats/models/logistic.js";
import { bootstrap } from "../../../src/stats/resampling/bootstrap.js";
import { cusumLimit } from "../../../src/stats/sequence/cusum-limit.js";
import { poolLogisticNormal } from "../../../src/stats/series/pool-logistic-normal.js";
import { numbers } from "../../numbers.js";
import type { BenchTask } from "../task.js";

const next = numbers(2002);
const draw = (size: number, low: number, high: number): number[] => Array.from({ length: size }, () => next(low, high));
const vector = (values: readonly number[]): string => `c(${values.join()})`;

/** Cases with six covariates, two of which matter. */
function cases(size: number) {
  const columns = Array.from({ length: 6 }, () => draw(size, -1000, 1000).map((value) => value / 1000));
  const successes = Array.from({ length: size }, (_, row) => {
    const logOdds = columns[0]![row]! + columns[1]![row]! - 0.5;
    return next(0, 1e6) / 1e6 < 1 / (1 + Math.exp(-logOdds)) ? 1 : 0;
  });
  return { successes, covariates: columns.map((values, at) => ({ name: `x${at}`, values })) };
}

/** Series of 20 to 99 cases whose log odds vary by about 0.6. */
function series(count: number) {
  return Array.from({ length: count }, () => {
    const trials = next(20, 99);
    const logOdds = 1.2 + (next(-1000, 1000) + next(-1000, 1000)) / 1300;
    const share = 1 / (1 + Math.exp(-logOdds));
    return { successes: draw(trials, 0, 1e6).filter((value) => value < 1e6 * share).length, trials };
  });
}

const sizes = [100, 1000, 5000].map((size) => ({ size, data: cases(size) }));
const goals: Readonly<Record<number, number>> = { 100: 5000, 1000: 20_000, 5000: 80_000 };
const pools = [15, 40].map((count) => ({ count, data: series(count) }));
const [first, second] = [draw(40, 0, 60), draw(40, 5, 65)];
const differences = draw(100, -40, 60).filter((value) => value !== 0);
const ages = draw(200, 100, 200);
const risks = Array.from({ length: 150 }, (_, at) => [0.02, 0.08, 0.2, 0.4][(at * 7) % 4]!);
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function coefficient(fit: ReturnType<typeof logistic> | ReturnType<typeof firthLogistic>): number {
  if (!("coefficients" in fit)) throw new Error(fit.because);
  return fit.coefficients[1]!.estimate;
}

export const tasks: readonly BenchTask[] = [
  ...sizes.map(({ size, data }) => ({
    name: `Firth with profile limits and tests of 7 coefficients, ${size} cases`,
    ours: () => coefficient(firthLogistic(data)),
    goal: goals[size]!,
  })),
  ...sizes.slice(0, 2).map(({ size, data }) => ({
    name: `logistic with profile limits and tests of 7 coefficients, ${size} cases (R: limits, no tests)`,
    ours: () => coefficient(logistic(data)),
    rSetup: `y <- ${vector(data.successes)}; x <- cbind(${data.covariates.map(({ values }) => vector(values)).join()})`,
    r: "{ g <- glm(y ~ x, family = binomial, control = glm.control(epsilon = 1e-12)); suppressMessages(confint(g)); coef(g)[2] }",
    tolerance: 1e-6,
  })),
  ...pools.map(({ count, data }) => ({
    name: `logistic-normal pooling with profile limits, ${count} series`,
    ours: () => {
      const pooled = poolLogisticNormal(data);
      if (pooled.estimate === null) throw new Error(pooled.because);
      return pooled.estimate;
    },
    goal: count === 15 ? 3000 : 5000,
  })),
  {
    name: "exact rank-sum test with ties, 40 against 40",
    ours: () => {
      const test = rankSum({ first, second });
      return "p" in test ? test.p.less : Number.NaN;
    },
    rSetup: `a <- ${vector(first)}; b <- ${vector(second)}`,
    r: 'suppressWarnings(wilcox.test(a, b, alternative = "less", exact = TRUE)$p.value)',
    // Older natural R turns to the normal approximation when there are ties; webr's does not.
    tolerance: 0.1,
  },
  {
    name: "exact signed-rank test with ties, 100 differences",
    ours: () => {
      const test = signedRank(differences);
      return "p" in test ? test.p.greater : Number.NaN;
    },
    rSetup: `d <- ${vector(differences)}`,
    r: 'suppressWarnings(wilcox.test(d, alternative = "greater", exact = TRUE)$p.value)',
    tolerance: 0.1,
  },
  {
    name: "BCa limits of a mean, 200 values, 2,000 resamples",
    ours: () => {
      const result = bootstrap(ages, mean, { draws: 2000 });
      return "interval" in result ? result.interval.low : Number.NaN;
    },
  },
  {
    name: "exact limit of a risk-adjusted cumulative sum, 150 cases",
    ours: () => {
      const result = cusumLimit(risks, { oddsRatio: 2 });
      return "limit" in result ? result.limit : Number.NaN;
    },
  },
];
