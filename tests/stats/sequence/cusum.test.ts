import { expect, it } from "vitest";
import { cusumLimit } from "../../../src/stats/sequence/cusum-limit.js";
import { cusumRunLength } from "../../../src/stats/sequence/cusum-run-length.js";
import { cusumSignalChance } from "../../../src/stats/sequence/cusum-signal-chance.js";
import { observedMinusExpected } from "../../../src/stats/sequence/observed-minus-expected.js";
import { riskAdjustedCusum } from "../../../src/stats/sequence/risk-adjusted-cusum.js";
import { numbers } from "../../numbers.js";

const next = numbers(1972);
const draw = (size: number) => Array.from({ length: size }, () => next(3, 60) / 100);

it("the chain's chance of a signal equals going through all outcomes of the series", () => {
  for (let round = 0; round < 30; round++) {
    const risks = draw(next(1, 11));
    const oddsRatio = [2, 1.5, 3, 0.5][round % 4]!;
    const limit = next(2, 14) / 10;
    const trueOddsRatio = [1, 2][round % 2]!;
    const expected = risks.map(() => 0);
    for (let pattern = 0; pattern < 2 ** risks.length; pattern++) {
      const failed = risks.map((_, at) => ((pattern >> at) & 1) === 1);
      const chance = risks.reduce((product, risk, at) => {
        const failing = (risk * trueOddsRatio) / (1 - risk + risk * trueOddsRatio);
        return product * (failed[at] ? failing : 1 - failing);
      }, 1);
      const cases = risks.map((risk, at) => ({ risk, failed: failed[at]! }));
      const [first] = riskAdjustedCusum(cases, { oddsRatio, limit }).signals;
      if (first !== undefined) for (let at = first - 1; at < risks.length; at++) expected[at]! += chance;
    }
    const { byCase } = cusumSignalChance(risks, { oddsRatio, limit, trueOddsRatio });
    byCase.forEach((chance, at) => expect(chance).toBeCloseTo(expected[at]!, 12));
  }
});

it("the limit is the lowest with so small a chance of a false alarm, in a series of 150 cases of four grades", () => {
  const risks = Array.from({ length: 150 }, (_, at) => [0.02, 0.08, 0.2, 0.4][(at * 7) % 4]!);
  const result = cusumLimit(risks, { oddsRatio: 2, falseAlarm: 0.1 });
  if ("estimate" in result) throw new Error(result.because);
  expect(result.achieved).toBeLessThanOrEqual(0.1);
  expect(cusumSignalChance(risks, { oddsRatio: 2, limit: result.limit - 3e-7 }).chance).toBeGreaterThan(0.1);
  expect(result.detects).toBeGreaterThan(result.achieved);
});

it("mean run lengths agree with their closed forms within five standard errors", () => {
  // At odds ratio 4 and risk 1/2 a failure adds log 4 - log 2.5, a success takes away log 2.5, which is more.
  const first = cusumRunLength([{ risk: 0.5, share: 1 }], { oddsRatio: 4, limit: 0.4, draws: 20_000 });
  expect(Math.abs(first.estimate - 2)).toBeLessThan(5 * first.standardError);
  // Two failures running: 1/p + 1/p^2 cases on average (Feller, Introduction to Probability, XIII.7).
  const both = cusumRunLength([{ risk: 0.5, share: 3 }], { oddsRatio: 4, limit: 0.9, draws: 20_000, seed: 5 });
  expect(Math.abs(both.estimate - 6)).toBeLessThan(5 * both.standardError);
  const options = { oddsRatio: 4, limit: 0.9, draws: 20_000, trueOddsRatio: 3 };
  const worse = cusumRunLength([{ risk: 0.5, share: 1 }], options);
  expect(Math.abs(worse.estimate - (1 / 0.75 + 1 / 0.75 ** 2))).toBeLessThan(5 * worse.standardError);
  expect(cusumRunLength([{ risk: 0.01, share: 1 }], { oddsRatio: 2, limit: 9, draws: 3, mostCases: 10 })).toMatchObject(
    {
      cut: 3,
      estimate: 10,
    },
  );
});

it("a simulated mix repeats itself and takes each risk by its share", () => {
  const mix = [
    { risk: 0.05, share: 2 },
    { risk: 0.4, share: 1 },
  ];
  const options = { oddsRatio: 2, limit: 1.5, draws: 300 };
  expect(cusumRunLength(mix, options)).toEqual(cusumRunLength(mix, options));
  expect(cusumRunLength(mix, { ...options, seed: 2 }).estimate).not.toBe(cusumRunLength(mix, options).estimate);
  const worse = cusumRunLength(mix, { ...options, trueOddsRatio: 4 });
  expect(worse.estimate).toBeLessThan(cusumRunLength(mix, options).estimate);
});

it("observed minus expected ends at 0 when the expectations are the series' own rate", () => {
  const failed = [true, false, false, true, false];
  const { steps } = observedMinusExpected(failed.map((failure) => ({ failed: failure, risk: 0.4 })));
  expect(steps.at(-1)).toMatchObject({ observed: 2, expected: 2, excess: 0 });
  expect(steps.at(-1)!.standardDeviation).toBeCloseTo(Math.sqrt(5 * 0.24), 14);
});

it("the sum never falls below 0 and starts again after a signal", () => {
  const cases = [false, true, true, true, true, false].map((failed) => ({ failed, risk: 0.1 }));
  const { steps, signals } = riskAdjustedCusum(cases, { oddsRatio: 2, limit: 1.1 });
  expect(signals).toEqual([3, 5]);
  expect(steps[0]!.sum).toBe(0);
  expect(steps[3]!.sum).toBeCloseTo(Math.log(2 / 1.1), 14);
  expect(riskAdjustedCusum([], { oddsRatio: 2 })).toMatchObject({ limit: null, steps: [], signals: [] });
});
