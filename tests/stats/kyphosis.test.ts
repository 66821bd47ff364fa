// Deformity after corrective spinal surgery in 81 children (Chambers and Hastie 1992): a real series, from the file to
// every statistic of measurements and models that fits it.
import { expect, it } from "vitest";
import { hodgesLehmannShift } from "../../src/stats/measurements/hodges-lehmann-shift.js";
import { meanDifference } from "../../src/stats/measurements/mean-difference.js";
import { medianInterval } from "../../src/stats/measurements/median-interval.js";
import { permutationTest } from "../../src/stats/measurements/permutation-test.js";
import { rankSum } from "../../src/stats/measurements/rank-sum.js";
import { firthLogistic } from "../../src/stats/models/firth-logistic.js";
import { gradeCovariates } from "../../src/stats/models/grade-covariates.js";
import { logistic } from "../../src/stats/models/logistic.js";
import { bootstrap } from "../../src/stats/resampling/bootstrap.js";
import { r } from "../r.js";
import { expectRelative } from "../relative.js";
import { fitted, kyphosis, sheet } from "./models/sheets.js";

const children = sheet("kyphosis.csv");
const deformed = kyphosis.successes.map((value) => value === 1);
const ages = children.Age!.map(Number);
const levels = children.Number!.map(Number);
const groups = { first: ages.filter((_, row) => deformed[row]), second: ages.filter((_, row) => !deformed[row]) };
const vector = (values: readonly number[]): string => `c(${values.join()})`;
const [present, absent] = [vector(groups.first), vector(groups.second)];

it("ages by outcome: ranks, medians, means, all against R", async () => {
  expect([groups.first.length, groups.second.length]).toEqual([17, 64]);
  const test = rankSum(groups);
  const shift = hodgesLehmannShift(groups);
  const means = meanDifference(groups);
  if (!("p" in test) || shift.estimate === null || !("welch" in means) || !("t" in means.welch))
    throw new Error("must be estimable");
  const [w, exact, low, high, p] = await r(`x <- ${present}; y <- ${absent}
    w <- wilcox.test(x, y, exact = TRUE); t <- t.test(x, y)
    c(w$statistic, w$p.value, t$conf.int, t$p.value)`);
  expect(test.statistic).toBe(w);
  expect([test.p.doubled, test.p.distance].some((value) => Math.abs(value / exact! - 1) < 1e-10)).toBe(true);
  expectRelative(means.welch.interval.low, low!, 1e-10, "low");
  expectRelative(means.welch.interval.high, high!, 1e-10, "high");
  expectRelative(means.welch.p, p!, 1e-10, "p");
  const differences = groups.first.flatMap((a) => groups.second.map((b) => a - b)).sort((a, b) => a - b);
  expect(shift.estimate).toBe((differences[543]! + differences[544]!) / 2);
  const [rank] = await r(`qwilcox(0.025, 17, 64)`);
  expect(shift.interval).toEqual({ low: differences[rank! - 1], high: differences[17 * 64 - rank!] });
  const median = medianInterval(groups.first);
  const [middle, tail] = await r(`x <- ${present}; c(median(x), qbinom(0.025, 17, 0.5))`);
  expect(median.estimate).toBe(middle);
  expect(median.ranks).toEqual({ low: tail, high: 18 - tail! });
});

it("exact permutation of the means agrees with its normal approximation to the second digit", () => {
  const test = permutationTest(groups);
  const means = meanDifference(groups);
  if (!("p" in test) || !("pooled" in means) || !("t" in means.pooled)) throw new Error("must be estimable");
  expect(test.distribution).toBe("exact");
  expect(Math.abs(test.p.doubled - means.pooled.p)).toBeLessThan(0.02);
});

it("levels operated on as a score and as bands, plain and penalised, against R's glm", async () => {
  const bands = levels.map((count) => (count <= 3 ? "2-3" : count <= 5 ? "4-5" : "6 or more"));
  const order = ["2-3", "4-5", "6 or more"];
  const data = (as: "score" | "levels") => ({
    successes: kyphosis.successes,
    covariates: gradeCovariates(bands, { order, as, name: "levels" }),
  });
  const score = fitted(logistic(data("score")));
  const split = fitted(logistic(data("levels")));
  const answers =
    await r(`y <- ${vector(kyphosis.successes)}; s <- ${vector(bands.map((band) => order.indexOf(band) + 1))}
    o <- glm.control(epsilon = 1e-14); a <- glm(y ~ s, binomial, control = o); b <- glm(y ~ factor(s), binomial, control = o)
    c(coef(a), coef(b), deviance(a), deviance(b), vcov(b))`);
  const found = [
    ...score.coefficients.map(({ estimate }) => estimate),
    ...split.coefficients.map(({ estimate }) => estimate),
    -2 * score.logLikelihood,
    -2 * split.logLikelihood,
    ...split.covariance.flat(),
  ];
  found.forEach((value, at) => expectRelative(value, answers[at]!, 1e-8, `${at}`));
  const penalised = fitted(firthLogistic(data("levels")));
  expect(penalised.separation.kind).toBe("none");
  penalised.coefficients.slice(1).forEach(({ name, estimate }, at) => {
    // The penalty draws towards no effect.
    const plain = split.coefficients[at + 1]!;
    expect(name).toBe(plain.name);
    expect(Math.abs(estimate)).toBeLessThan(Math.abs(plain.estimate));
  });
});

it("the difference of median ages by the bootstrap, outcome by outcome, lies about the shift", () => {
  const rows = ages.map((age, row) => ({ age, deformed: deformed[row]! }));
  const middle = (values: number[]): number | null => (values.length === 0 ? null : medianInterval(values).estimate);
  const difference = (cases: readonly { readonly age: number; readonly deformed: boolean }[]): number | null => {
    const [one, other] = [true, false].map((outcome) =>
      middle(cases.filter((row) => row.deformed === outcome).map(({ age }) => age)),
    );
    return one === null || other === null ? null : one! - other!;
  };
  const result = bootstrap(rows, difference, { draws: 500, stratum: (row) => String(row.deformed) });
  if (!("interval" in result)) throw new Error(result.because);
  expect(result).toMatchObject({ strata: 2, units: 81, undefinedDraws: 0 });
  expect(result.interval.low).toBeLessThan(result.estimate);
  expect(result.interval.high).toBeGreaterThan(result.estimate);
});
