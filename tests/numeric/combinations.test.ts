import { expect, it, test } from "vitest";
import { betaBinomialCdf, betaBinomialPmf, betaBinomialUpper } from "../../src/numeric/beta-binomial.js";
import { logBeta } from "../../src/numeric/log-beta.js";
import { logChoose } from "../../src/numeric/log-choose.js";

const close = (actual: number, expected: number, tolerance: number): void =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(tolerance * Math.abs(expected));

// mpmath 1.3 at 40 digits: log(binomial(n, k)), log(beta(a, b))
test.each([
  [5, 2, 2.302585092994046],
  [60, 30, 39.31170072601126],
  [1000, 3, 18.9285038647141],
  [2000, 1000, 1382.2679935374802],
  [1_000_000, 17, 201.35847003450777],
])("logChoose(%i, %i) keeps its digits", (n, k, expected) => {
  close(logChoose(n, k), expected, 1e-14);
  expect(logChoose(n, n - k)).toBe(logChoose(n, k));
});
test.each([
  [0.5, 0.5, 1.1447298858494002],
  [1e-5, 3, 11.512910465032729],
  [1000, 2000, -1911.8746142144516],
  [0.5, 1e6, -6.335390211057437],
  [1.5, 2.5, -1.627858836390381],
])("logBeta(%d, %d) keeps its digits", (a, b, expected) => close(logBeta(a, b), expected, 1e-14));

it("chooses by Pascal's rule, exactly summed", () => {
  let row = [1n];
  for (let n = 1; n <= 60; n++) {
    row = Array.from({ length: n + 1 }, (_, k) => (row[k - 1] ?? 0n) + (row[k] ?? 0n));
    row.forEach((count, k) => close(Math.exp(logChoose(n, k)), Number(count), 1e-13));
  }
});

it("spreads a uniform belief evenly over the number of successes", () => {
  for (let trials = 0; trials <= 50; trials++)
    for (let k = 0; k <= trials; k++) close(betaBinomialPmf(k, { trials, a: 1, b: 1 }), 1 / (trials + 1), 1e-13);
});

it("has tails that add to 1 and masses that are their differences", () => {
  for (const { trials, a, b } of [
    { trials: 30, a: 0.5, b: 0.5 },
    { trials: 30, a: 21.5, b: 2.5 },
    { trials: 400, a: 3, b: 800 },
  ]) {
    let lower = 0;
    for (let k = 0; k <= trials; k++) {
      lower += betaBinomialPmf(k, { trials, a, b });
      close(betaBinomialCdf(k, { trials, a, b }), lower, 1e-12);
      close(betaBinomialCdf(k, { trials, a, b }) + betaBinomialUpper(k, { trials, a, b }), 1, 1e-14);
    }
    expect(betaBinomialCdf(-1, { trials, a, b })).toBe(0);
    expect(betaBinomialUpper(trials, { trials, a, b })).toBe(0);
  }
});
