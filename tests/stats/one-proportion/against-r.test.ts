// R through webr. Its exact limits come from qbeta, good to about 1e-14; its p value counts masses up to a relative 1e-7
// above the observed one, as ours does.
import { expect, it } from "vitest";
import { binomialTest } from "../../../src/stats/one-proportion/binomial-test.js";
import { proportionIntervals } from "../../../src/stats/one-proportion/proportion-intervals.js";
import { r } from "../../r.js";
import { random } from "../../../src/numeric/random.js";

const { below } = random(20261125);
const cases = Array.from({ length: 2000 }, (_, i) => {
  const trials = 1 + below(i % 3 === 0 ? 1000 : 60);
  const proportion = [0.5, 1 / 6, 0.9, below(1001) / 1000][i % 4]!;
  return { successes: below(trials + 1), trials, level: [0.8, 0.9, 0.95, 0.99][i % 4]!, proportion };
});
const vector = (values: readonly number[]): string => `c(${values.join(",")})`;
const columns = (some: typeof cases): string => `x <- ${vector(some.map((c) => c.successes))};
  n <- ${vector(some.map((c) => c.trials))}; l <- ${vector(some.map((c) => c.level))};
  p <- ${vector(some.map((c) => c.proportion))};`;
const near = (actual: number, expected: number, at: string): void =>
  expect(Math.abs(actual - expected), at).toBeLessThanOrEqual(1e-11 * Math.abs(expected) + 1e-300);

it("agrees with qbeta and pbinom on 2,000 random counts: exact and Jeffreys limits, one-sided p", async () => {
  const theirs = await r(`{${columns(cases)} a <- (1 - l) / 2
    c(qbeta(a, x, n - x + 1), qbeta(a, x + 1, n - x, lower.tail = FALSE), qbeta(a, x + 0.5, n - x + 0.5),
      pbinom(x, n, p), pbinom(x - 1, n, p, lower.tail = FALSE))}`);
  cases.forEach(({ successes, trials, level, proportion }, i) => {
    const [low, high, jeffreys, less, greater] = [0, 1, 2, 3, 4].map((column) => theirs[column * cases.length + i]!);
    const intervals = proportionIntervals(successes, trials, { level });
    const test = binomialTest(successes, trials, { proportion });
    const at = `${successes}/${trials} at ${level}, ${proportion}`;
    near(intervals.clopperPearson.low, low!, at);
    near(intervals.clopperPearson.high, high!, at);
    if (successes > 0) near(intervals.jeffreys.low, jeffreys!, at);
    near(test.less, less!, at);
    near(test.greater, greater!, at);
  });
});

it("agrees with binom.test on the two-sided p of 1,000 random counts", async () => {
  const some = cases.slice(0, 1000);
  const theirs = await r(`{${columns(some)} mapply(function(x, n, p) binom.test(x, n, p)$p.value, x, n, p)}`);
  some.forEach(({ successes, trials, proportion }, i) => {
    const { pointProbability } = binomialTest(successes, trials, { proportion });
    near(pointProbability, theirs[i]!, `${successes}/${trials}, ${proportion}`);
  });
});

it("agrees with prop.test on 100 of Wilson's intervals, plain and with continuity correction", async () => {
  const some = cases.slice(0, 100);
  const theirs = await r(`{${columns(some)} suppressWarnings(unlist(lapply(seq_along(x), function(i)
    c(prop.test(x[i], n[i], conf.level = l[i], correct = FALSE)$conf.int,
      prop.test(x[i], n[i], conf.level = l[i], correct = TRUE)$conf.int))))}`);
  some.forEach(({ successes, trials, level }, i) => {
    const { wilson, wilsonContinuity } = proportionIntervals(successes, trials, { level });
    const at = `${successes}/${trials} at ${level}`;
    expect(Math.abs(wilson.low - theirs[4 * i]!), at).toBeLessThan(1e-13);
    expect(Math.abs(wilson.high - theirs[4 * i + 1]!), at).toBeLessThan(1e-13);
    // R shortens the correction where the count is less than a half from n/2: there it is not the published form.
    if (Math.abs(successes - trials / 2) < 0.5) return;
    expect(Math.abs(wilsonContinuity.low - theirs[4 * i + 2]!), at).toBeLessThan(1e-12);
    expect(Math.abs(wilsonContinuity.high - theirs[4 * i + 3]!), at).toBeLessThan(1e-12);
  });
});
