// Every function of the distribution core against 77-digit arithmetic, in both tails and at hard points.
import { expect, test } from "vitest";
import * as beta from "../../src/numeric/beta.js";
import * as binomial from "../../src/numeric/binomial.js";
import * as chiSquare from "../../src/numeric/chi-square.js";
import * as f from "../../src/numeric/f.js";
import * as hypergeometric from "../../src/numeric/hypergeometric.js";
import { logGamma } from "../../src/numeric/log-gamma.js";
import * as noncentralHypergeometric from "../../src/numeric/noncentral-hypergeometric.js";
import * as noncentralT from "../../src/numeric/noncentral-t.js";
import * as normal from "../../src/numeric/normal.js";
import * as poisson from "../../src/numeric/poisson.js";
import * as studentT from "../../src/numeric/student-t.js";
import reference from "../reference/distributions.json";

type Plain = (...args: number[]) => number;
const withBeta =
  (fn: (x: number, shape: beta.BetaShape) => number): Plain =>
  (x, a, b) =>
    fn(x!, { a: a!, b: b! });
const withBinomial =
  (fn: (k: number, d: binomial.Binomial) => number): Plain =>
  (k, trials, probability) =>
    fn(k!, { trials: trials!, probability: probability! });
const withF =
  (fn: (x: number, d: f.FDegrees) => number): Plain =>
  (x, df1, df2) =>
    fn(x!, { df1: df1!, df2: df2! });
const withHypergeometric =
  (fn: (k: number, d: hypergeometric.Hypergeometric) => number): Plain =>
  (k, population, successes, drawn) =>
    fn(k!, { population: population!, successes: successes!, drawn: drawn! });
const withOdds =
  (fn: (k: number, d: noncentralHypergeometric.NoncentralHypergeometric) => number): Plain =>
  (k, population, successes, drawn, oddsRatio) =>
    fn(k!, { population: population!, successes: successes!, drawn: drawn!, oddsRatio: oddsRatio! });
const withNoncentrality =
  (fn: (t: number, d: noncentralT.NoncentralT) => number): Plain =>
  (t, df, noncentrality) =>
    fn(t!, { df: df!, noncentrality: noncentrality! });

const ours: Record<keyof typeof reference.functions, Plain> = {
  lgamma: logGamma as Plain,
  beta_cdf: withBeta(beta.betaCdf),
  beta_sf: withBeta(beta.betaUpper),
  beta_q: withBeta(beta.betaQuantile),
  binom_pmf: withBinomial(binomial.binomialPmf),
  binom_cdf: withBinomial(binomial.binomialCdf),
  binom_sf: withBinomial(binomial.binomialUpper),
  hyper_pmf: withHypergeometric(hypergeometric.hypergeometricPmf),
  hyper_cdf: withHypergeometric(hypergeometric.hypergeometricCdf),
  hyper_sf: withHypergeometric(hypergeometric.hypergeometricUpper),
  nch_pmf: withOdds(noncentralHypergeometric.noncentralHypergeometricPmf),
  nch_cdf: withOdds(noncentralHypergeometric.noncentralHypergeometricCdf),
  nch_sf: withOdds(noncentralHypergeometric.noncentralHypergeometricUpper),
  norm_cdf: normal.normalCdf as Plain,
  norm_sf: normal.normalUpper as Plain,
  norm_q: normal.normalQuantile as Plain,
  t_cdf: studentT.studentTCdf as Plain,
  t_q: studentT.studentTQuantile as Plain,
  chisq_cdf: chiSquare.chiSquareCdf as Plain,
  chisq_sf: chiSquare.chiSquareUpper as Plain,
  chisq_q: chiSquare.chiSquareQuantile as Plain,
  f_cdf: withF(f.fCdf),
  f_sf: withF(f.fUpper),
  f_q: withF(f.fQuantile),
  pois_pmf: poisson.poissonPmf as Plain,
  pois_cdf: poisson.poissonCdf as Plain,
  pois_sf: poisson.poissonUpper as Plain,
  nct_cdf: withNoncentrality(noncentralT.noncentralTCdf),
  nct_sf: withNoncentrality(noncentralT.noncentralTUpper),
  nct_q: withNoncentrality(noncentralT.noncentralTQuantile),
};

const relative = (actual: number, expected: number): number =>
  actual === expected ? 0 : Math.abs(actual - expected) / Math.abs(expected);

for (const [name, { arguments: parameters, cases }] of Object.entries(reference.functions)) {
  const fn = ours[name as keyof typeof reference.functions];
  const noncentral = name.startsWith("nct_");

  test(`${name}(${parameters.join(", ")}) keeps its digits at ${cases.length} points`, () => {
    for (const { args, value, everyday } of cases) {
      const tolerance = noncentral ? 1e-9 : everyday ? 1e-12 : 1e-10;
      expect(relative(fn(...args), Number(value)), `${args.join(", ")}: ${value}`).toBeLessThan(tolerance);
    }
  });

  test(`${name} answers within 5 ms everywhere`, () => {
    for (const { args } of cases) {
      // The first call may compile, and the machine may be busy: the best of a few counts.
      let best = Infinity;
      for (let attempt = 0; attempt < 20 && !(best < 5); attempt++) {
        const start = performance.now();
        fn(...args);
        best = Math.min(best, performance.now() - start);
      }
      expect(best, args.join(", ")).toBeLessThan(5);
    }
  });
}
