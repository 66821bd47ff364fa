import { expect, it, test } from "vitest";
import { betaCdf, betaQuantile, betaUpperQuantile } from "../../src/numeric/beta.js";
import { binomialCdf, binomialPmf, binomialUpper } from "../../src/numeric/binomial.js";
import { chiSquareQuantile, chiSquareUpper, chiSquareUpperQuantile } from "../../src/numeric/chi-square.js";
import { fCdf, fQuantile, fUpper, fUpperQuantile } from "../../src/numeric/f.js";
import { gammaCdf, gammaQuantile, gammaUpper, gammaUpperQuantile } from "../../src/numeric/gamma.js";
import { hypergeometricCdf, hypergeometricPmf } from "../../src/numeric/hypergeometric.js";
import { logGamma } from "../../src/numeric/log-gamma.js";
import { noncentralHypergeometricPmf } from "../../src/numeric/noncentral-hypergeometric.js";
import { noncentralTCdf } from "../../src/numeric/noncentral-t.js";
import { normalCdf, normalQuantile, normalUpper, normalUpperQuantile } from "../../src/numeric/normal.js";
import { poissonCdf, poissonPmf } from "../../src/numeric/poisson.js";
import { studentTCdf, studentTQuantile, studentTUpper, studentTUpperQuantile } from "../../src/numeric/student-t.js";

it("reaches its ends exactly", () => {
  expect([normalCdf(-Infinity), normalCdf(Infinity), normalUpper(Infinity)]).toEqual([0, 1, 0]);
  expect([normalQuantile(0), normalQuantile(0.5), normalQuantile(1)]).toEqual([-Infinity, 0, Infinity]);
  expect([studentTCdf(-Infinity, 3), studentTCdf(0, 3), studentTUpper(Infinity, 3)]).toEqual([0, 0.5, 0]);
  expect([studentTQuantile(0, 3), studentTQuantile(0.5, 3), studentTQuantile(1, 3)]).toEqual([-Infinity, 0, Infinity]);
  expect([betaCdf(-1, { a: 2, b: 3 }), betaCdf(2, { a: 2, b: 3 })]).toEqual([0, 1]);
  expect([betaQuantile(0, { a: 2, b: 3 }), betaQuantile(1, { a: 2, b: 3 })]).toEqual([0, 1]);
  expect([chiSquareUpper(-1, 2), chiSquareUpper(Infinity, 2), chiSquareQuantile(1, 2)]).toEqual([1, 0, Infinity]);
  expect([fCdf(-1, { df1: 2, df2: 3 }), fUpper(Infinity, { df1: 2, df2: 3 })]).toEqual([0, 0]);
  expect([fQuantile(0, { df1: 2, df2: 3 }), fQuantile(1, { df1: 2, df2: 3 })]).toEqual([0, Infinity]);
  expect([binomialPmf(0, { trials: 0, probability: 0.3 }), binomialPmf(-1, { trials: 4, probability: 0.3 })]).toEqual([
    1, 0,
  ]);
  expect([binomialCdf(4, { trials: 4, probability: 1 }), binomialUpper(3, { trials: 4, probability: 1 })]).toEqual([
    1, 1,
  ]);
  expect([poissonPmf(0, 0), poissonCdf(0, 0), poissonCdf(-1, 2)]).toEqual([1, 1, 0]);
  expect([logGamma(1), logGamma(2)]).toEqual([0, 0]);
});

it("finds upper quantiles that the lower ones cannot reach", () => {
  for (const q of [1e-300, 1e-100, 1e-20, 0.01, 0.4, 0.7]) {
    const back = [
      normalUpper(normalUpperQuantile(q)),
      studentTUpper(studentTUpperQuantile(q, 7), 7),
      chiSquareUpper(chiSquareUpperQuantile(q, 3), 3),
      fUpper(fUpperQuantile(q, { df1: 3, df2: 9 }), { df1: 3, df2: 9 }),
      gammaUpper(gammaUpperQuantile(q, { shape: 2.5, rate: 4 }), { shape: 2.5, rate: 4 }),
    ];
    for (const tail of back) expect(Math.abs(tail / q - 1)).toBeLessThan(1e-11);
  }
  // P(X > x) = (1 - x)^3 for a = 1, b = 3
  expect(betaUpperQuantile(1e-9, { a: 1, b: 3 })).toBeCloseTo(1 - 1e-3, 14);
});

it("gives a gamma the rate as one over its scale", () => {
  expect(gammaCdf(3, { shape: 1, rate: 0.5 })).toBeCloseTo(1 - Math.exp(-1.5), 14);
  expect(gammaQuantile(0.3, { shape: 1, rate: 0.5 })).toBeCloseTo(-Math.log(0.7) * 2, 14);
});

it("sums every hypergeometric to 1 and is central at an odds ratio of 1", () => {
  for (let population = 0; population <= 12; population++)
    for (let successes = 0; successes <= population; successes++)
      for (let drawn = 0; drawn <= population; drawn++) {
        let sum = 0;
        for (let k = 0; k <= drawn; k++) {
          const mass = hypergeometricPmf(k, { population, successes, drawn });
          const central = noncentralHypergeometricPmf(k, { population, successes, drawn, oddsRatio: 1 });
          expect(Math.abs(mass - central)).toBeLessThan(1e-14);
          sum += mass;
          expect(Math.abs(hypergeometricCdf(k, { population, successes, drawn }) - sum)).toBeLessThan(1e-14);
        }
        expect(sum).toBeCloseTo(1, 13);
      }
});

it("moves all mass to an end under an extreme odds ratio", () => {
  const margins = { population: 1000, successes: 400, drawn: 300 };
  expect(noncentralHypergeometricPmf(300, { ...margins, oddsRatio: 1e300 })).toBe(1);
  expect(noncentralHypergeometricPmf(0, { ...margins, oddsRatio: 1e-300 })).toBe(1);
  const crossed = { population: 10, successes: 8, drawn: 7, oddsRatio: 1e-300 };
  expect(noncentralHypergeometricPmf(5, crossed)).toBe(1);
});

test.each([
  [() => normalCdf(NaN), "normalCdf: z must be a number, got NaN"],
  [() => normalQuantile(1.5), "normalQuantile: p must lie in [0, 1], got 1.5"],
  [() => logGamma(0), "logGamma: x must be positive and finite, got 0"],
  [() => studentTCdf(1, 0), "studentTCdf: df must be positive and finite, got 0"],
  [() => betaCdf(0.5, { a: -1, b: 2 }), "betaCdf: a must be positive and finite, got -1"],
  [() => binomialPmf(1.5, { trials: 3, probability: 0.5 }), "binomialPmf: k must be an integer, got 1.5"],
  [
    () => binomialPmf(1, { trials: -3, probability: 0.5 }),
    "binomialPmf: trials must be an integer of at least 0, got -3",
  ],
  [
    () => hypergeometricPmf(1, { population: 5, successes: 6, drawn: 2 }),
    "hypergeometricPmf: successes must be an integer from 0 to 5, got 6",
  ],
  [() => poissonPmf(1, -1), "poissonPmf: mean must be zero or more and finite, got -1"],
  [() => noncentralTCdf(Infinity, { df: 3, noncentrality: 1 }), "noncentralTCdf: t must be finite, got Infinity"],
])("%s is refused: %s", (call, message) => {
  expect(call).toThrow(new RangeError(message));
});
