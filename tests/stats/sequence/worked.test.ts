import { expect, it } from "vitest";
import { logLikelihoodScore } from "../../../src/stats/sequence/log-likelihood-score.js";
import { sequentialPlan } from "../../../src/stats/sequence/sequential-plan.js";
import { tabularCusum } from "../../../src/stats/sequence/tabular-cusum.js";
import { worked } from "../../worked.js";

it("item-by-item plan of the e-Handbook of Statistical Methods, section 6.2.6 (public domain)", () => {
  const plan = sequentialPlan({ acceptable: 0.01, unacceptable: 0.1 }, { alpha: 0.05, beta: 0.1 });
  const of = (key: string) => worked("J-nist-sequential", key);
  of("k").check(plan.logOddsRatio / Math.LN10);
  of("h1").check(plan.acceptIntercept);
  of("h2").check(plan.rejectIntercept);
  of("s").check(plan.slope);
});

it("boundaries for procedures of trainees: Bolsin and Colson 2000, de Oliveira Filho 2002, Kestin 1995", () => {
  const of = (key: string) => worked("J-cusum-anaesthesia", key);
  const plan = sequentialPlan({ acceptable: 0.05, unacceptable: 0.1 });
  of("P").check((1 - plan.slope) * plan.logOddsRatio);
  of("Q").check(plan.slope * plan.logOddsRatio);
  of("a").check(plan.rejectIntercept * plan.logOddsRatio);
  of("s").check(plan.slope);
  of("h").check(plan.rejectIntercept);
  of("h").check(plan.acceptIntercept);
  const second = sequentialPlan({ acceptable: 0.1, unacceptable: 0.2 });
  of("s2").check(second.slope);
  of("h2").check(second.rejectIntercept);
  const third = sequentialPlan({ acceptable: 0.2, unacceptable: 0.4 });
  of("s3").check(third.slope);
  of("h3").check(third.acceptIntercept);
});

it("scores of a surgical series: Steiner et al. 2000, pp. 445-446", () => {
  const risk = (score: number) => 1 / (1 + Math.exp(3.68 - 0.077 * score));
  for (const score of [0, 50, 71]) worked("J-steiner2000", `risk_${score}`).check(risk(score));
  for (const score of [0, 50]) {
    const { failure, success } = logLikelihoodScore(risk(score), { oddsRatio: 2 });
    worked("J-steiner2000", `surv_${score}`).check(success);
    worked("J-steiner2000", `death_${score}`).check(failure);
  }
});

it("tabular cumulative sum of 30 values: Montgomery, Introduction to Statistical Quality Control", () => {
  const values = [
    9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.2, 10.34, 9.03, 11.47, 10.51, 9.4, 10.08, 9.37, 10.62, 10.31,
    8.52, 10.84, 10.9, 9.33, 12.29, 11.5, 10.6, 11.08, 10.38, 11.62, 11.31, 10.52,
  ];
  const { steps, signals } = tabularCusum(values, { target: 10, allowance: 0.5, limit: 5 });
  const of = (key: string) => worked("J-montgomery-cusum", key);
  for (const at of [5, 28, 29, 30]) of(`Cp_${at}`).check(steps[at - 1]!.above);
  of("Cm_3").check(steps[2]!.below);
  expect(signals).toEqual([29, 30]);
});
