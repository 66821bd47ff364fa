import fc from "fast-check";
import { expect, it, test } from "vitest";
import {
  exactCommonOddsRatio,
  type ExactCommonOddsRatioResult,
} from "../../../src/stats/strata/exact-common-odds-ratio.js";
import { r } from "../../r.js";
import { cpuMilliseconds } from "../../cpu-milliseconds.js";
import { numbers } from "../../numbers.js";
import { choose, fraction, ratio } from "../../exact/rational.js";
import { worked } from "../../worked.js";
import { cellsForR, strataOf } from "./strata-of.js";

/** Exact weights of the first group's successes summed over strata, at odds ratio 1, and the observed sum. */
function exactWeights(rows: readonly (readonly number[])[]): { weights: bigint[]; observed: number } {
  let weights = [1n];
  let observed = 0;
  for (const [a, b, c, d] of rows as [number, number, number, number][]) {
    const low = Math.max(0, a - d);
    const high = Math.min(a + b, a + c);
    const own = Array.from(
      { length: high - low + 1 },
      (_, i) => choose(a + b, low + i) * choose(c + d, a + c - low - i),
    );
    const next = Array.from({ length: weights.length + own.length - 1 }, () => 0n);
    weights.forEach((x, i) => own.forEach((y, j) => (next[i + j]! += x * y)));
    weights = next;
    observed += a - low;
  }
  return { weights, observed };
}

/** Sum of the chosen terms over the sum of all, at an odds ratio given as a double. */
function share(weights: readonly bigint[], oddsRatio: number, term: (weight: bigint, i: number) => bigint): number {
  const { above, below } = fraction(oddsRatio);
  const top = weights.length - 1;
  const tilted = weights.map((weight, i) => weight * above ** BigInt(i) * below ** BigInt(top - i));
  const all = tilted.reduce((sum, weight) => sum + weight);
  return ratio(
    tilted.reduce((sum, weight, i) => sum + term(weight, i), 0n),
    all,
  );
}

/** The result for strata that have one. */
function answered(rows: readonly (readonly number[])[]): ExactCommonOddsRatioResult {
  const result = exactCommonOddsRatio(strataOf(rows));
  if (result.oddsRatio === null) throw new Error(result.because);
  return result;
}

it("solves its defining equations to 1e-10, and its p in whole numbers to 1e-12, on 200 sets of strata", () => {
  const random = numbers(5);
  for (let set = 0; set < 200; set++) {
    const size = 1 + random(0, 3);
    const rows = Array.from({ length: size }, () => Array.from({ length: 4 }, () => random(0, set % 4 === 0 ? 25 : 8)));
    const result = exactCommonOddsRatio(strataOf(rows));
    const { weights, observed } = exactWeights(rows);
    if (result.oddsRatio === null) {
      expect(weights).toHaveLength(1);
      continue;
    }
    const { low, high } = result.interval;
    if (observed === 0) expect([result.oddsRatio, low]).toEqual([0, 0]);
    else expect(Math.abs(share(weights, low, (w, i) => (i >= observed ? w : 0n)) / 0.025 - 1)).toBeLessThan(1e-10);
    if (observed === weights.length - 1) expect([result.oddsRatio, high]).toEqual([Infinity, Infinity]);
    else expect(Math.abs(share(weights, high, (w, i) => (i <= observed ? w : 0n)) / 0.025 - 1)).toBeLessThan(1e-10);
    if (observed > 0 && observed < weights.length - 1)
      expect(Math.abs(share(weights, result.oddsRatio, (w, i) => w * BigInt(i)) / observed - 1)).toBeLessThan(1e-10);
    const own = weights[observed]!;
    const p = share(weights, 1, (w) => (w * 10_000_000n <= own * 10_000_001n ? w : 0n));
    expect(Math.abs(result.p / p - 1), JSON.stringify(rows)).toBeLessThan(1e-12);
    const greater = share(weights, 1, (w, i) => (i >= observed ? w : 0n));
    expect(Math.abs(result.greater / greater - 1)).toBeLessThan(1e-12);
  }
});

it("agrees with R's exact mantelhaen.test on 300 sets of strata", async () => {
  const random = numbers(17);
  const sets = Array.from({ length: 300 }, () =>
    Array.from({ length: 3 }, () => Array.from({ length: 4 }, () => 1 + random(0, 12))),
  );
  const values = await r(`
    apply(matrix(c(${sets.flatMap(cellsForR).join()}), nrow = 12), 2, function(v) {
      t <- mantelhaen.test(array(v, c(2, 2, 3)), exact = TRUE); c(t$estimate, t$conf.int, t$p.value) })`);
  sets.forEach((rows, i) => {
    const { oddsRatio, interval, p } = answered(rows);
    const [estimate, low, high, pOfR] = values.slice(4 * i, 4 * i + 4);
    // R finds roots in t or 1/t by uniroot with its default tolerance, 1.2e-4.
    expect(Math.abs(Math.log(oddsRatio / estimate!))).toBeLessThan(2e-3);
    expect(Math.abs(Math.log(interval.low / low!))).toBeLessThan(1e-2);
    expect(Math.abs(Math.log(interval.high / high!))).toBeLessThan(1e-2);
    expect(Math.abs(p / pOfR! - 1)).toBeLessThan(1e-10);
  });
});

test("closed against open treatment within grade of the invented cohort: 1.4 (0.16 to 9.7), p 1.0", () => {
  // Grades II to IV, computed in R 4.2.2; grade I has no open case and changes nothing.
  const rows = [
    [14, 1, 1, 0],
    [10, 1, 2, 2],
    [2, 3, 4, 2],
  ];
  const result = answered(rows);
  expect(result.oddsRatio.toFixed(1)).toBe("1.4");
  expect(result.interval.low.toFixed(2)).toBe("0.16");
  expect(result.interval.high.toFixed(1)).toBe("9.7");
  expect(result.p.toFixed(1)).toBe("1.0");
  const withGradeI = exactCommonOddsRatio(strataOf([[9, 0, 0, 0], ...rows]));
  expect(withGradeI).toMatchObject({ oddsRatio: result.oddsRatio, interval: result.interval, p: result.p });
});

test("one table: the lady tasting tea (Fisher 1935; Agresti 2002, p. 91), whose printed estimate 6.408309 is 6.4083197", () => {
  const result = answered([[3, 1, 1, 3]]);
  worked("C-tea", "p_two").check(result.p);
  worked("C-tea", "p_greater").check(result.greater);
  worked("C-tea", "cmle").check(result.oddsRatio);
});

it("stays finite and quick when large strata differ enormously", () => {
  const rows = [
    [480, 20, 30, 470],
    [490, 10, 5, 495],
  ];
  const start = process.cpuUsage();
  const { oddsRatio, interval } = answered(rows);
  expect(cpuMilliseconds(start)).toBeLessThan(1000);
  const { weights, observed } = exactWeights(rows);
  expect(Math.abs(share(weights, interval.low, (w, i) => (i >= observed ? w : 0n)) / 0.025 - 1)).toBeLessThan(1e-10);
  expect(interval.low).toBeLessThan(oddsRatio);
  expect(interval.high).toBeGreaterThan(oddsRatio);
});

const cells = fc.array(fc.tuple(fc.nat(15), fc.nat(15), fc.nat(15), fc.nat(15)), { minLength: 1, maxLength: 4 });

it("contains its estimate, widens with the level, and inverts when the groups change places", () => {
  fc.assert(
    fc.property(cells, (rows) => {
      const x = exactCommonOddsRatio(strataOf(rows));
      if (x.oddsRatio === null) return;
      const wide = exactCommonOddsRatio(strataOf(rows), { level: 0.99 });
      const y = answered(rows.map(([a, b, c, d]) => [c, d, a, b]));
      expect(x.interval.low).toBeLessThanOrEqual(x.oddsRatio);
      expect(x.interval.high).toBeGreaterThanOrEqual(x.oddsRatio);
      expect(wide.interval.low).toBeLessThanOrEqual(x.interval.low);
      expect(wide.interval.high).toBeGreaterThanOrEqual(x.interval.high);
      if (x.interval.low > 0) expect(x.interval.low * y.interval.high).toBeCloseTo(1, 9);
      expect(y.p).toBeCloseTo(x.p, 12);
    }),
    { numRuns: 60 },
  );
});

it("says why there is no odds ratio, and that every one fits", () => {
  const result = exactCommonOddsRatio(strataOf([[5, 0, 4, 0]]));
  expect(result).toMatchObject({
    oddsRatio: null,
    interval: { low: 0, high: Infinity },
    p: 1,
    because: "no stratum has both groups and both outcomes, so the odds ratio is undefined",
  });
});

it("keeps large strata quick, and says when they are too large", () => {
  const row = [50_000, 40_000, 30_000, 60_000];
  const start = process.cpuUsage();
  const { oddsRatio, interval, p } = answered([row, row]);
  // Half a second on a machine of its own.
  expect(cpuMilliseconds(start)).toBeLessThan(5000);
  // In large samples the conditional estimate is the common cross ratio, 2.5; p is below what a double holds.
  expect(oddsRatio).toBeCloseTo(2.5, 4);
  expect(interval.high / interval.low).toBeLessThan(1.04);
  expect(p).toBe(0);
  const huge = [3e8, 5e6, 3e5, 4e6];
  expect(exactCommonOddsRatio(strataOf([huge, huge]))).toMatchObject({
    oddsRatio: null,
    p: null,
    interval: { low: null, high: null },
    because: "the strata hold too many cases for the exact computation; use the Mantel-Haenszel odds ratio",
  });
});

it("refuses a level out of range", () => {
  expect(() => exactCommonOddsRatio(strataOf([[1, 2, 3, 4]]), { level: 95 })).toThrow(
    new RangeError("exactCommonOddsRatio: level must lie between 0 and 1, got 95"),
  );
});
