// The statistics behind printed p values and intervals, against R.
import { expect, test } from "vitest";
import { differenceIntervals } from "../../../src/stats/reported/difference-intervals.js";
import { halfAddedRatios } from "../../../src/stats/reported/half-added-ratios.js";
import { intervalP } from "../../../src/stats/reported/interval-p.js";
import { largeSampleTests } from "../../../src/stats/reported/large-sample-tests.js";
import { statisticP } from "../../../src/stats/reported/statistic-p.js";
import { r } from "../../r.js";
import { worked, workedInput } from "../../worked.js";

const groups = { first: { successes: 34, trials: 38 }, second: { successes: 9, trials: 15 } };
const close = (value: number | null, expected: number): void => expect(value! / expected).toBeCloseTo(1, 9);

test("large-sample p values and limits equal R's", async () => {
  const [difference, odds, risk, likelihood, low, high, correctedLow, correctedHigh] = await r(`
    x <- c(34, 9); n <- c(38, 15); p <- x / n
    logs <- log(x / (n - x)); se <- sqrt(sum(1 / x + 1 / (n - x)))
    expected <- outer(n, c(sum(x), sum(n - x))) / sum(n)
    seen <- cbind(x, n - x)
    c(2 * pnorm(-abs(diff(p)) / sqrt(sum(p * (1 - p) / n))), 2 * pnorm(-abs(diff(logs)) / se),
      2 * pnorm(-abs(diff(log(p))) / sqrt(sum(1 / x - 1 / n))), pchisq(2 * sum(seen * log(seen / expected)), 1, lower = FALSE),
      prop.test(x, n, correct = FALSE)$conf.int, prop.test(x, n)$conf.int)`);
  const tests = largeSampleTests(groups);
  close(tests.difference, difference!);
  close(tests.logOddsRatio, odds!);
  close(tests.logRiskRatio, risk!);
  close(tests.likelihoodRatio, likelihood!);
  const { wald, waldContinuity } = differenceIntervals(groups);
  expect([wald.low, wald.high].map((x) => x.toFixed(9))).toEqual([low!, high!].map((x) => x.toFixed(9)));
  expect(waldContinuity.low).toBeCloseTo(correctedLow!, 9);
  expect(waldContinuity.high).toBeCloseTo(correctedHigh!, 9);
});

test.each([
  ["B-newcombe1998-a", ["wald_lo", "wald_hi", "wald_cc_lo", "wald_cc_hi"]],
  // The corrected upper limit of b and h passes 1 and is not in print.
  ["B-newcombe1998-b", ["wald_lo", "wald_hi", "wald_cc_lo"]],
  ["B-newcombe1998-e", ["wald_lo", "wald_hi"]],
  ["B-newcombe1998-f", ["wald_lo", "wald_hi"]],
  ["B-newcombe1998-h", ["wald_lo", "wald_hi", "wald_cc_lo"]],
  ["B-fagerland2015-perondi", ["wald_lo", "wald_hi"]],
  ["B-agresti-aspirin", ["diff_lo", "diff_hi"]],
] as const)("published large-sample limits of a difference: %s", (id, keys: readonly string[]) => {
  const { x1, n1, x2, n2 } = workedInput<Record<"x1" | "n1" | "x2" | "n2", number>>(id);
  const { wald, waldContinuity } = differenceIntervals({
    first: { successes: x1, trials: n1 },
    second: { successes: x2, trials: n2 },
  });
  const limits: Record<string, number> = {
    wald_lo: wald.low,
    wald_hi: wald.high,
    wald_cc_lo: waldContinuity.low,
    wald_cc_hi: waldContinuity.high,
    diff_lo: wald.low,
    diff_hi: wald.high,
  };
  for (const key of keys) worked(id, key).check(limits[key]!);
});

test("no correction exceeds the difference itself, as in R's prop.test; Newcombe prints -0.0750 to 0.0750 for none of 10 and of 20", () => {
  const { waldContinuity } = differenceIntervals({
    first: { successes: 0, trials: 10 },
    second: { successes: 0, trials: 20 },
  });
  expect(waldContinuity).toEqual({ low: 0, high: 0 });
  expect(worked("B-newcombe1998-e", "wald_cc_hi").published).toBe("0.0750");
});

test("published risk ratio limits with a half added to each cell are not those with one half to the successes alone", () => {
  // Fagerland, Lydersen, Laake 2015 add 1/2 to the successes and to the trials (adjusted log, 0.92 to 27.1); ours adds a
  // half to each cell, so one to the trials.
  const { riskRatio } = halfAddedRatios({ first: { successes: 7, trials: 34 }, second: { successes: 1, trials: 34 } });
  expect(riskRatio.estimate).toBeCloseTo(7.5 / 1.5, 12);
});

test("p values of printed statistics and intervals equal R's", async () => {
  const [chi, t, z, p] = await r(
    "c(pchisq(4.89, 1, lower = FALSE), 2 * pt(-2.1, 34), 2 * pnorm(-2.35), 2 * pnorm(-12 / (10 / qnorm(0.975))))",
  );
  close(statisticP({ name: "chi-square", value: 4.89, df: 1 }), chi!);
  close(statisticP({ name: "t", value: -2.1, df: 34 }), t!);
  close(statisticP({ name: "z", value: 2.35 }), z!);
  close(intervalP(12, { low: 2, high: 22 }).p, p!);
});

test("leaves undefined what an empty cell leaves undefined, and adds one half where that is asked for", () => {
  const empty = { first: { successes: 9, trials: 9 }, second: { successes: 6, trials: 11 } };
  expect(largeSampleTests(empty).logOddsRatio).toBeNull();
  expect(halfAddedRatios(empty).oddsRatio.estimate).toBeCloseTo((9.5 * 5.5) / (0.5 * 6.5), 12);
  expect(halfAddedRatios(empty).riskRatio.estimate).toBeCloseTo(9.5 / 10 / (6.5 / 12), 12);
});

test("refuses what is no interval and no statistic", () => {
  expect(() => intervalP(1, { low: 2, high: 2 })).toThrow(
    new RangeError("intervalP: limits must be finite and in order, got 2 and 2"),
  );
  expect(() => statisticP({ name: "t", value: 1, df: 0 })).toThrow(
    new RangeError("statisticP: df must be above 0, got 0"),
  );
});
