import { expect, it } from "vitest";
import { firthLogistic } from "../../../src/stats/models/firth-logistic.js";
import { caseOrderEffect } from "../../../src/stats/sequence/case-order-effect.js";
import { cusumLimit } from "../../../src/stats/sequence/cusum-limit.js";
import { cusumRunLength } from "../../../src/stats/sequence/cusum-run-length.js";
import { cusumSignalChance } from "../../../src/stats/sequence/cusum-signal-chance.js";
import { observedMinusExpected } from "../../../src/stats/sequence/observed-minus-expected.js";
import { riskAdjustedCusum } from "../../../src/stats/sequence/risk-adjusted-cusum.js";
import { sequentialPlan } from "../../../src/stats/sequence/sequential-plan.js";
import { sequentialVerdict } from "../../../src/stats/sequence/sequential-verdict.js";

const order = ["I", "II", "III"];
const cases = Array.from({ length: 40 }, (_, at) => ({
  succeeded: at % 3 !== 0 || at > 30,
  grade: order[(at * 2) % 3]!,
}));

it("case order enters as it is, with grade as a score", () => {
  const effect = caseOrderEffect(cases, { gradeOrder: order });
  const fit = firthLogistic({
    successes: cases.map(({ succeeded }) => Number(succeeded)),
    covariates: [
      { name: "case order", values: cases.map((_, at) => (at + 1) / 10) },
      { name: "grade", values: cases.map(({ grade }) => order.indexOf(grade) + 1) },
    ],
  });
  if (!("order" in effect) || !("coefficients" in fit)) throw new Error("must be estimable");
  expect(effect.order).toEqual(fit.coefficients[1]);
  expect(effect.grade).toEqual(fit.coefficients[2]);
  expect(effect).toMatchObject({ cases: 40, failures: 11, perCases: 10 });
});

it("case order is not estimated where the failures or the grades do not allow it", () => {
  expect(caseOrderEffect([], {})).toEqual({ estimate: null, because: "there is no case" });
  expect(caseOrderEffect(cases.slice(0, 20), { gradeOrder: order })).toEqual({
    estimate: null,
    because: "2 covariates need at least 10 of the rarer outcome (5 for each), there are 7",
  });
  const oneGrade = cases.map(({ succeeded }) => ({ succeeded, grade: "I" }));
  expect(caseOrderEffect(oneGrade, { gradeOrder: order })).toEqual({
    estimate: null,
    because: '"grade" has the same value in every row',
  });
  expect(() => caseOrderEffect(cases)).toThrow(
    new TypeError("caseOrderEffect: gradeOrder must be given with cases that have a grade, got none"),
  );
  expect(() => caseOrderEffect([{ succeeded: true }], { gradeOrder: order })).toThrow(
    new RangeError("gradeCovariates: every grade must be one of I, II, III, got undefined"),
  );
});

it("a plan ends at the first line reached and stays open between them", () => {
  const plan = sequentialPlan({ acceptable: 0.1, unacceptable: 0.3 });
  const verdict = (failed: readonly boolean[]) => {
    const { verdict: said, atCase } = sequentialVerdict(failed, plan);
    return [said, atCase];
  };
  expect(verdict([])).toEqual(["open", null]);
  expect(verdict(new Array<boolean>(30).fill(false))).toEqual(["acceptable", 9]);
  expect(verdict([true, true, true, true, ...new Array<boolean>(30).fill(false)])).toEqual(["unacceptable", 2]);
  expect(verdict([false, true, false, false])).toEqual(["open", null]);
});

it("a caller's mistake throws with a complete message", () => {
  expect(() => observedMinusExpected([{ failed: true, risk: 1 }])).toThrow(
    new RangeError("observedMinusExpected: risk of case 1 must lie between 0 and 1, got 1"),
  );
  expect(() => riskAdjustedCusum([], { oddsRatio: 1 })).toThrow(
    new RangeError("riskAdjustedCusum: oddsRatio must be positive, finite and not 1, got 1"),
  );
  expect(() => cusumSignalChance([0.1], { oddsRatio: 2, limit: 0 })).toThrow(
    new RangeError("cusumSignalChance: limit must be positive, got 0"),
  );
  expect(() => cusumLimit([0.1], { oddsRatio: 2, falseAlarm: 1 })).toThrow(
    new RangeError("cusumLimit: falseAlarm must lie between 0 and 1, got 1"),
  );
  expect(cusumLimit([], { oddsRatio: 2 })).toEqual({ estimate: null, because: "there is no case" });
  expect(() => cusumRunLength([], { oddsRatio: 2, limit: 1 })).toThrow(
    new RangeError("cusumRunLength: mix must hold at least 1 risk, got 0"),
  );
  expect(() => sequentialPlan({ acceptable: 0.2, unacceptable: 0.1 })).toThrow(
    new RangeError("sequentialPlan: unacceptable must be above acceptable (0.2), got 0.1"),
  );
  expect(() => sequentialPlan({ acceptable: 0.1, unacceptable: 0.2 }, { alpha: 0.6, beta: 0.5 })).toThrow(
    new RangeError("sequentialPlan: alpha and beta must be positive and add to less than 1, got 0.6 and 0.5"),
  );
});
