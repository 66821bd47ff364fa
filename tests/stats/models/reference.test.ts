import { describe, expect, it, test } from "vitest";
import { firthLogistic } from "../../../src/stats/models/firth-logistic.js";
import { logistic } from "../../../src/stats/models/logistic.js";
import type { LogisticData } from "../../../src/stats/models/logistic-data.js";
import reference from "../../reference/logistic.json" with { type: "json" };
import { expectRelative } from "../../relative.js";
import { worked } from "../../worked.js";
import { column, endometrial, fitted, kyphosis, sheet } from "./sheets.js";

function dataOf({ file, rows = [] }: { file?: string | undefined; rows?: number[][] | undefined }): LogisticData {
  if (file !== undefined) return file === "kyphosis.csv" ? kyphosis : endometrial;
  return {
    successes: rows.map((row) => row[0]!),
    trials: rows.map((row) => row[1]!),
    covariates: rows[0]!.slice(2).map((_, j) => ({ name: `x${j}`, values: rows.map((row) => row[j + 2]!) })),
  };
}

describe("mpmath, direct maximisation in 40 digits", () => {
  for (const c of reference.cases)
    test(`${c.name}, ${c.method}`, () => {
      const fit = fitted((c.method === "firth" ? firthLogistic : logistic)(dataOf(c.data), { eventsPerCovariate: 1 }));
      expectRelative(fit.logLikelihood, Number(c.logLikelihood), 1e-11, "log likelihood");
      fit.coefficients.forEach(({ name, estimate, standardError, interval, likelihoodRatio }, j) => {
        expectRelative(estimate, Number(c.estimates[j]), 1e-10, `${name} estimate`);
        expectRelative(standardError, Number(c.standardErrors[j]), 1e-10, `${name} standard error`);
        expectRelative(interval.low, Number(c.limits[j]![0]), 1e-10, `${name} lower limit`);
        expectRelative(interval.high, Number(c.limits[j]![1]), 1e-10, `${name} upper limit`);
        expectRelative(likelihoodRatio.statistic, Number(c.likelihoodRatio[j]), 1e-9, `${name} likelihood ratio`);
      });
    });
});

it("kyphosis after spinal surgery: Chambers and Hastie 1992, chapter 6", () => {
  const fit = fitted(logistic(kyphosis));
  const of = (key: string) => worked("F-kyphosis", key);
  ["0", "_age", "_number", "_start"].forEach((key, j) => {
    of(`b${key}`).check(fit.coefficients[j]!.estimate);
    of(`se${key}`).check(fit.coefficients[j]!.standardError);
  });
  of("dev").check(-2 * fit.logLikelihood);
  of("null_dev").check(-2 * fit.logLikelihood + fit.likelihoodRatio.statistic);
  expect(fit).toMatchObject({ cases: 81, successes: 17, likelihoodRatio: { df: 3 } });
});

it("low birth weight by weight and race: Hosmer and Lemeshow 1989, Table 2.3", () => {
  const births = sheet("birthwt.csv");
  const race = (level: string) => ({
    name: `race ${level}`,
    values: births.race!.map((value) => (value === level ? 1 : 0)),
  });
  const data = { successes: births.low!.map(Number), covariates: [column(births, "lwt"), race("2"), race("3")] };
  const fit = fitted(logistic(data));
  ["0", "_lwt", "_race2", "_race3"].forEach((key, j) => {
    worked("F-birthwt-reduced", `b${key}`).check(fit.coefficients[j]!.estimate);
    worked("F-birthwt-reduced", `se${key}`).check(fit.coefficients[j]!.standardError);
  });
  worked("F-birthwt-reduced", "loglik").check(fit.logLikelihood);
});

it("low birth weight by smoking: Hosmer and Lemeshow 1989", () => {
  const data = { successes: [30, 29], trials: [74, 115], covariates: [{ name: "smoke", values: [1, 0] }] };
  const [constant, smoke] = fitted(logistic(data)).coefficients;
  const of = (key: string) => worked("F-birthwt-smoke", key);
  of("b0").check(constant!.estimate);
  of("se0").check(constant!.standardError);
  of("b_smoke").check(smoke!.estimate);
  of("se_smoke").check(smoke!.standardError);
  of("or").check(smoke!.oddsRatio.estimate);
  of("or_lo").check(Math.exp(smoke!.wald.interval.low));
  of("or_hi").check(Math.exp(smoke!.wald.interval.high));
});

it("age at menarche, grouped: Venables and Ripley", () => {
  const ages = sheet("menarche.csv");
  const data = {
    successes: ages.Menarche!.map(Number),
    trials: ages.Total!.map(Number),
    covariates: [column(ages, "Age")],
  };
  const [constant, age] = fitted(logistic(data)).coefficients;
  worked("F-menarche", "b0").check(constant!.estimate);
  worked("F-menarche", "b_age").check(age!.estimate);
});

it("endometrial cancer under quasi-separation: Heinze and Schemper 2002", () => {
  const fit = fitted(firthLogistic(endometrial));
  const of = (key: string) => worked("F-endometrial-firth", key);
  ["b0", "nv", "pi", "eh"].forEach((key, j) => {
    const { estimate, standardError, interval } = fit.coefficients[j]!;
    of(key).check(estimate);
    of(`se_${key}`).check(standardError);
    of(`${key}_lo`).check(interval.low);
    of(`${key}_hi`).check(interval.high);
  });
  expect(fit.separation).toEqual({ kind: "quasi-complete", columns: ["NV"] });
});
