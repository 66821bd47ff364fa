import { binomialTest } from "../../../src/stats/one-proportion/binomial-test.js";
import { blaker } from "../../../src/stats/one-proportion/blaker.js";
import { intervalCoverage } from "../../../src/stats/one-proportion/interval-coverage.js";
import { clopperPearson } from "../../../src/stats/clopper-pearson.js";
import { wilson } from "../../../src/stats/wilson.js";
import type { BenchTask } from "../task.js";

const proportions = Array.from({ length: 10_000 }, (_, i) => (i + 0.5) / 10_000);

export const tasks: readonly BenchTask[] = [
  {
    name: "Wilson interval, 21 of 23",
    ours: () => wilson(21, 23).interval.low,
    r: "suppressWarnings(prop.test(21, 23, correct = FALSE)$conf.int[1])",
  },
  {
    name: "exact interval, 21 of 23",
    ours: () => clopperPearson(21, 23).interval.low,
    r: "binom.test(21, 23)$conf.int[1]",
  },
  { name: "Blaker's interval, 21 of 23", ours: () => blaker(21, 23).interval.low },
  {
    name: "exact test, 51 of 235",
    ours: () => binomialTest(51, 235, { proportion: 1 / 6 }).pointProbability,
    r: "binom.test(51, 235, 1 / 6)$p.value",
  },
  {
    name: "coverage of 10 intervals at 10,000 proportions, n = 25",
    ours: () => intervalCoverage(25, { proportions }).methods[0]!.coverage[5000]!,
    goal: 10_000,
  },
  {
    name: "coverage of Wilson's interval at 10,000 proportions, n = 25",
    ours: () => intervalCoverage(25, { proportions, methods: ["wilson"] }).methods[0]!.coverage[3000]!,
    rSetup: "p <- (0:9999 + 0.5) / 10000; z <- qnorm(0.975)",
    r: `x <- 0:25; h <- z * sqrt(z^2 + 4 * x * (1 - x / 25)); low <- (2 * x + z^2 - h) / (2 * (25 + z^2))
      high <- (2 * x + z^2 + h) / (2 * (25 + z^2)); k <- outer(x, p, function(x, p) dbinom(x, 25, p))
      colSums(k * (outer(low, p, "<=") & outer(high, p, ">=")))[3001]`,
  },
];
