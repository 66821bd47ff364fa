import { expect, it } from "vitest";
import { hodgesLehmannPaired } from "../../../src/stats/measurements/hodges-lehmann-paired.js";
import { hodgesLehmannShift } from "../../../src/stats/measurements/hodges-lehmann-shift.js";
import { meanDifference } from "../../../src/stats/measurements/mean-difference.js";
import { medianInterval } from "../../../src/stats/measurements/median-interval.js";
import { pairedDifferences } from "../../../src/stats/measurements/paired-differences.js";
import { pairedLoss } from "../../../src/stats/measurements/paired-loss.js";
import { pairedMeanDifference } from "../../../src/stats/measurements/paired-mean-difference.js";
import { pairedPermutationTest } from "../../../src/stats/measurements/paired-permutation-test.js";
import { permutationTest } from "../../../src/stats/measurements/permutation-test.js";
import { rankSum } from "../../../src/stats/measurements/rank-sum.js";
import { severalGroups } from "../../../src/stats/measurements/several-groups.js";
import { signedRank } from "../../../src/stats/measurements/signed-rank.js";
import { numbers } from "../../numbers.js";

it("an empty group leaves every comparison undefined, with the reason", () => {
  const reason = { estimate: null, because: "the second group is empty" };
  const groups = { first: [1, 2], second: [] };
  expect(rankSum(groups)).toEqual(reason);
  expect(hodgesLehmannShift(groups)).toEqual(reason);
  expect(meanDifference(groups)).toEqual(reason);
  expect(permutationTest(groups)).toEqual(reason);
});

it("equal values leave tests undefined but keep the estimate", () => {
  const same = { first: [5, 5, 5], second: [5, 5] };
  expect(rankSum(same)).toEqual({ estimate: null, because: "all values are equal" });
  expect(permutationTest(same)).toEqual({ estimate: null, because: "all values are equal" });
  expect(hodgesLehmannShift(same).estimate).toBe(0);
  expect(meanDifference(same)).toMatchObject({
    estimate: 0,
    welch: { estimate: null, because: "the values do not vary" },
    pooled: { estimate: null, because: "the values do not vary" },
  });
  const zeros = { estimate: null, because: "every difference is zero" };
  expect(signedRank([0, 0])).toEqual(zeros);
  expect(pairedPermutationTest([0, 0])).toEqual(zeros);
  expect(hodgesLehmannPaired([0, 0]).estimate).toBe(0);
  expect(pairedMeanDifference([0.1, 0.1, 0.1])).toMatchObject({ estimate: 0.1, standardDeviation: 0 });
});

it("one value a group gives estimates without limits", () => {
  const one = { first: [3], second: [1] };
  expect(hodgesLehmannShift(one)).toMatchObject({
    estimate: 2,
    interval: { low: -Infinity, high: Infinity },
    achieved: 1,
    because: "no interval covers as much as the level with groups of 1 and 1",
  });
  expect(meanDifference(one)).toMatchObject({
    estimate: 2,
    welch: { estimate: null, because: "a group of one value has no variance" },
    pooled: { estimate: null, because: "two groups of one value each have no variance" },
  });
  expect(pairedMeanDifference([2]).student).toEqual({ estimate: null, because: "one difference has no variance" });
  expect(hodgesLehmannPaired([2])).toMatchObject({ estimate: 2, achieved: 1 });
  expect(signedRank([2])).toMatchObject({ statistic: 1, p: { less: 1, greater: 0.5, doubled: 1, distance: 1 } });
});

it("equal decimals tie although their binary differences do not", () => {
  const differences = pairedDifferences({ first: [150.3, 0.3, 1.1, 2.1], second: [150.1, 0.1, 1, 2] });
  expect(differences).toEqual([0.2, 0.2, 0.1, 0.1]);
  expect(pairedDifferences({ first: [0.1 + 0.2], second: [0.3] })).toEqual([0]);
  expect(signedRank(differences)).toMatchObject({ ties: [2, 2] });
});

it("ranked zeros enlarge the ranks of the other differences but not the sums", () => {
  // 0 0 1 -2 3: ranks of the three are 3, 4, 5.
  expect(signedRank([0, 0, 1, -2, 3], { zeros: "ranked" })).toMatchObject({
    statistic: 8,
    zeros: { count: 2, treatment: "ranked" },
    // Sums 0 3 4 5 7 8 9 12, each 1/8.
    p: { less: 6 / 8, greater: 3 / 8, doubled: 6 / 8 },
  });
  expect(signedRank([0, 0, 1, -2, 3])).toMatchObject({ statistic: 4, zeros: { count: 2, treatment: "dropped" } });
});

/** By going through all choices in the plainest way. */
function enumerated(first: readonly number[], second: readonly number[]) {
  const all = [...first, ...second];
  const sums: number[] = [];
  for (let pattern = 0; pattern < 2 ** all.length; pattern++) {
    const chosen = all.filter((_, at) => (pattern >> at) & 1);
    if (chosen.length === first.length) sums.push(chosen.reduce((sum, value) => sum + value, 0));
  }
  const observed = first.reduce((sum, value) => sum + value, 0);
  const mean = (first.length * all.reduce((sum, value) => sum + value, 0)) / all.length;
  const share = (holds: (sum: number) => boolean): number => sums.filter(holds).length / sums.length;
  return {
    less: share((sum) => sum <= observed + 1e-9),
    greater: share((sum) => sum >= observed - 1e-9),
    distance: share((sum) => Math.abs(sum - mean) >= Math.abs(observed - mean) - 1e-9),
  };
}

it("permutation tests equal plain enumeration, for whole readings, tenths and irrational values", () => {
  const next = numbers(7);
  for (let round = 0; round < 120; round++) {
    const of = [(v: number) => v, (v: number) => v / 10, Math.sqrt][round % 3]!;
    const draw = (size: number) => Array.from({ length: size }, () => of(next(0, 12)));
    const [first, second] = [draw(next(1, 5)), draw(next(1, 6))];
    const test = permutationTest({ first, second });
    if (!("p" in test)) continue;
    const expected = enumerated(first, second);
    expect(test.distribution).toBe("exact");
    for (const tail of ["less", "greater", "distance"] as const)
      expect(test.p[tail], `${first.join()} v ${second.join()}: ${tail}`).toBeCloseTo(expected[tail], 12);
  }
});

it("Monte Carlo stays within five standard errors of the exact answer, and repeats itself", () => {
  const first = Array.from({ length: 20 }, (_, i) => Math.sqrt(i + 8));
  const second = Array.from({ length: 20 }, (_, i) => Math.sqrt(i + 1) * 1.05);
  const test = permutationTest({ first, second }, { draws: 20_000 });
  if (!("p" in test)) throw new Error(test.because);
  // Whole steps of 1e-6 make the same question exact.
  const round = (values: readonly number[]) => values.map((value) => Math.round(value * 200) / 200);
  const exact = permutationTest({ first: round(first), second: round(second) });
  if (!("p" in exact)) throw new Error(exact.because);
  expect([test.distribution, exact.distribution]).toEqual(["Monte Carlo", "exact"]);
  expect(Math.abs(test.p.doubled - exact.p.doubled)).toBeLessThan(5 * test.simulation!.standardError + 0.002);
  expect(permutationTest({ first, second }, { draws: 20_000 })).toEqual(test);
  expect(permutationTest({ first, second }, { draws: 20_000, seed: 2 })).not.toEqual(test);
});

it("paired permutation equals enumeration of signs", () => {
  expect(pairedPermutationTest([1, 2, -4]).estimate).toBeCloseTo(-1 / 3, 15);
  // Sums of signed 1, 2, 4 against -1: four of eight are at most -1.
  expect(pairedPermutationTest([1, 2, -4])).toMatchObject({ p: { less: 4 / 8, greater: 5 / 8, distance: 1 } });
  expect(pairedPermutationTest([Math.SQRT2, Math.E, Math.PI])).toMatchObject({
    distribution: "exact",
    p: { greater: 1 / 8, doubled: 1 / 4 },
  });
  const many = Array.from({ length: 40 }, (_, i) => Math.sqrt(i + 1) * (i % 3 === 0 ? -1 : 1));
  expect(pairedPermutationTest(many, { draws: 5000 })).toMatchObject({ distribution: "Monte Carlo" });
});

it("large groups take the normal approximation and say so", () => {
  const next = numbers(3);
  const draw = (size: number) => Array.from({ length: size }, () => next(0, 1e6));
  const groups = { first: draw(400), second: draw(500) };
  expect(rankSum(groups)).toMatchObject({ distribution: "normal approximation" });
  expect(hodgesLehmannShift(groups)).toMatchObject({ distribution: "normal approximation" });
  expect(signedRank(draw(600))).toMatchObject({ distribution: "normal approximation" });
});

it("loss against the other side holds the whole answer", () => {
  const result = pairedLoss(
    { injured: [160, 150, 170, 165, 140, 172, 168, 155], other: [170, 172, 170, 170, 175, 170, 171, 170] },
    { acceptable: 10 },
  );
  expect(result.losses).toEqual([10, 22, 0, 5, 35, -2, 3, 15]);
  expect(result).toMatchObject({ n: 8, smallest: -2, largest: 35, within: { successes: 5, trials: 8, loss: 10 } });
  expect(result.median).toMatchObject({ estimate: 7.5, interval: { low: -2, high: 35 } });
});

it("a caller's mistake throws with a complete message", () => {
  expect(() => medianInterval([])).toThrow(new RangeError("medianInterval: values must hold at least 1, got 0"));
  expect(() => medianInterval([1, NaN])).toThrow(
    new RangeError("medianInterval: values[1] must be a finite number, got NaN"),
  );
  expect(() => rankSum({ first: [1, Infinity], second: [1] })).toThrow(
    new RangeError("rankSum: first[1] must be a finite number, got Infinity"),
  );
  expect(() => pairedLoss({ injured: [1], other: [1, 2] })).toThrow(
    new RangeError("pairedLoss: injured and other must be equally many, got 1 and 2"),
  );
  expect(() => signedRank([1], { zeros: "kept" as never })).toThrow(
    new TypeError("signedRank: zeros must be one of dropped, ranked, got kept"),
  );
  expect(() => permutationTest({ first: [1], second: [2] }, { seed: 1.5 })).toThrow(
    new RangeError("permutationTest: seed must be an integer from 0 to 4294967295, got 1.5"),
  );
  expect(() => hodgesLehmannShift({ first: [1], second: [2] }, { level: 1 })).toThrow(
    new RangeError("hodgesLehmannShift: level must lie between 0 and 1, got 1"),
  );
});

it("several groups need two with values that differ", () => {
  expect(severalGroups([[1, 2], []])).toEqual({ estimate: null, because: "fewer than two groups have values" });
  expect(severalGroups([[2], [2, 2]])).toEqual({ estimate: null, because: "all values are equal" });
  expect(severalGroups([[1], [], [2]])).toMatchObject({ n: [1, 0, 1], df: 1, statistic: 1 });
  expect(() => severalGroups([[1]])).toThrow(new RangeError("severalGroups: groups must be at least 2, got 1"));
});

it("values whose squares overflow are refused", () => {
  expect(() => meanDifference({ first: [1e308, -1e308], second: [5] })).toThrow(
    new RangeError("meanDifference: first[0] must be at most 1e150 in size, got 1e+308"),
  );
});
