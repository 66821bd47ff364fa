// Coverage, the next cases, consecutive successes, one-sided limits, the exact test.
import { describe, expect, it, test } from "vitest";
import { binomialTest } from "../../../src/stats/one-proportion/binomial-test.js";
import { casesForWidth } from "../../../src/stats/one-proportion/cases-for-width.js";
import { consecutiveSuccesses } from "../../../src/stats/one-proportion/consecutive-successes.js";
import { exactOneSided } from "../../../src/stats/one-proportion/exact-one-sided.js";
import { intervalCoverage } from "../../../src/stats/one-proportion/interval-coverage.js";
import { nextCases, type Prior } from "../../../src/stats/one-proportion/next-cases.js";
import { proportionMethods, type ProportionMethod } from "../../../src/stats/one-proportion/proportion-intervals.js";
import { r } from "../../r.js";
import reference from "../../reference/proportions.json" with { type: "json" };

describe("exact coverage", () => {
  it("equals 40-digit sums", () => {
    for (const { trials, level, proportion, method, coverage, width } of reference.coverage) {
      const result = intervalCoverage(trials, {
        level,
        proportions: [proportion],
        methods: [method as ProportionMethod],
      }).methods[0]!;
      expect(result.coverage[0]).toBeCloseTo(coverage, 13);
      expect(result.width[0]).toBeCloseTo(width, 13);
    }
  });

  it("never falls below the level for the exact methods, and does for Wald's", () => {
    for (const trials of [1, 7, 25, 80])
      for (const level of [0.8, 0.95]) {
        const { methods } = intervalCoverage(trials, { level });
        const least = (name: ProportionMethod): number =>
          Math.min(...methods.find(({ method }) => method === name)!.coverage);
        expect(least("clopperPearson")).toBeGreaterThanOrEqual(level - 1e-12);
        expect(least("blaker")).toBeGreaterThanOrEqual(level - 1e-12);
        expect(least("wald")).toBeLessThan(level - 0.1);
      }
  });

  it("averages to the integral over the true proportion", () => {
    // The midpoint rule over 20,000 proportions misses only the jumps.
    const proportions = Array.from({ length: 20_000 }, (_, i) => (i + 0.5) / 20_000);
    for (const { coverage, width, meanCoverage, meanWidth } of intervalCoverage(12, { proportions }).methods) {
      const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
      expect(mean(coverage)).toBeCloseTo(meanCoverage, 3);
      expect(mean(width)).toBeCloseTo(meanWidth, 6);
    }
  });

  it("covers a certain event always where the interval reaches 1", () => {
    const { methods } = intervalCoverage(9, { proportions: [0, 1] });
    expect(methods).toHaveLength(proportionMethods.length);
    for (const { method, coverage } of methods) expect(coverage, method).toEqual([1, 1]);
  });

  it("refuses what it cannot sum", () => {
    expect(() => intervalCoverage(0)).toThrow(
      new RangeError("intervalCoverage: trials must be an integer from 1 to 10000, got 0"),
    );
    expect(() => intervalCoverage(5, { proportions: [1.2] })).toThrow(
      new RangeError("intervalCoverage: proportions must lie in [0, 1], got 1.2"),
    );
  });
});

describe("the next cases", () => {
  test.each(reference.nextCases)(
    "$successes of $trials, next $next, $prior belief: equals 40-digit arithmetic",
    ({ successes, trials, next, prior, probabilities }) => {
      const result = nextCases(successes, trials, { next, prior: prior as Prior });
      expect(result.probabilities).toHaveLength(next + 1);
      result.probabilities.forEach((p, k) =>
        expect(Math.abs(p - probabilities[k]!)).toBeLessThan(1e-13 * probabilities[k]!),
      );
      const mean = probabilities.reduce((sum, p, k) => sum + k * p, 0);
      expect(result.estimate).toBeCloseTo(mean, 12);
      const { low, high } = result.interval;
      const inside = probabilities.slice(low, high + 1).reduce((a, b) => a + b, 0);
      expect(result.coverage).toBeCloseTo(inside, 12);
      const below = probabilities.slice(0, low).reduce((a, b) => a + b, 0);
      const above = probabilities.slice(high + 1).reduce((a, b) => a + b, 0);
      expect(below).toBeLessThanOrEqual(0.025);
      expect(above).toBeLessThanOrEqual(0.025);
      expect(below + probabilities[low]!).toBeGreaterThan(0.025);
      expect(above + probabilities[high]!).toBeGreaterThan(0.025);
    },
  );

  it("refuses a wrong number of cases or an unknown belief", () => {
    expect(() => nextCases(1, 2, { next: 0 })).toThrow(
      new RangeError("nextCases: next must be an integer from 1 to 100000, got 0"),
    );
    expect(() => nextCases(1, 2, { next: 3, prior: "flat" as Prior })).toThrow(
      new TypeError('nextCases: no prior is named "flat" (known: jeffreys, uniform)'),
    );
  });
});

describe("one-sided limits", () => {
  it("are 1 - (1 - level)^(1/n) after no event", () => {
    for (let n = 1; n <= 300; n++) {
      const { lower, upper } = exactOneSided(0, n, { level: 0.95 });
      expect(lower).toBe(0);
      expect(upper).toBeCloseTo(1 - 0.05 ** (1 / n), 13);
      expect(exactOneSided(n, n).upper).toBe(1);
      expect(exactOneSided(n, n).lower).toBeCloseTo(0.05 ** (1 / n), 13);
    }
  });

  it("need the least run of successes whose limit excludes the failure rate", () => {
    // log(0.05)/log(1 - rate), rounded up: a sum anybody can check.
    const table = [
      [0.2, 14],
      [0.1, 29],
      [0.05, 59],
      [0.02, 149],
      [0.01, 299],
    ] as const;
    for (const [rate, n] of table) {
      expect(consecutiveSuccesses(rate).successes).toBe(n);
      expect(exactOneSided(0, n).upper).toBeLessThanOrEqual(rate);
      expect(exactOneSided(0, n - 1).upper).toBeGreaterThan(rate);
    }
    // 0.5^3 = 1 - 0.875 exactly: three suffice.
    expect(consecutiveSuccesses(0.5, { level: 0.875 }).successes).toBe(3);
    expect(() => consecutiveSuccesses(0)).toThrow(
      new RangeError("consecutiveSuccesses: failureRate must lie between 0 and 1, got 0"),
    );
  });
});

describe("the exact test", () => {
  it("A-statsmodels-51-235: p by all three alternatives", () => {
    const result = binomialTest(51, 235, { proportion: 1 / 6 });
    // Printed in full precision.
    expect(result.greater).toBeCloseTo(0.02654424571169085, 15);
    expect(result.less).toBeCloseTo(0.982022657605858, 14);
    expect(result.pointProbability).toBeCloseTo(0.0437479701823997, 14);
  });

  it("sums masses no likelier than the observed one, for all counts to 25", () => {
    for (let trials = 1; trials <= 25; trials++)
      for (const eighths of [1, 3, 4, 6]) {
        // Masses in units of 8^-n are whole numbers, below 2^53 times a power: BigInt keeps them exact.
        let choose = 1n;
        const masses = Array.from({ length: trials + 1 }, (_, k) => {
          const mass = choose * BigInt(eighths) ** BigInt(k) * BigInt(8 - eighths) ** BigInt(trials - k);
          choose = (choose * BigInt(trials - k)) / BigInt(k + 1);
          return mass;
        });
        const share = (sum: bigint): number => Number(sum) / 8 ** trials;
        masses.forEach((observed, successes) => {
          const exact = share(masses.filter((mass) => mass <= observed).reduce((a, b) => a + b, 0n));
          const less = share(masses.slice(0, successes + 1).reduce((a, b) => a + b, 0n));
          const result = binomialTest(successes, trials, { proportion: eighths / 8 });
          expect(Math.abs(result.pointProbability - exact)).toBeLessThan(1e-13 * exact);
          expect(Math.abs(result.less - less)).toBeLessThan(1e-13 * less);
          expect(result.midP).toBeCloseTo(exact - share(observed) / 2, 13);
          expect(result.doubled).toBe(Math.min(1, 2 * Math.min(result.less, result.greater)));
        });
      }
  });

  it("is certain of a certain proportion", () => {
    expect(binomialTest(5, 5, { proportion: 1 }).pointProbability).toBe(1);
    expect(binomialTest(4, 5, { proportion: 1 }).pointProbability).toBe(0);
    expect(binomialTest(0, 5, { proportion: 0 }).pointProbability).toBe(1);
    expect(() => binomialTest(0, 5, { proportion: 1.5 })).toThrow(
      new RangeError("binomialTest: proportion must lie in [0, 1], got 1.5"),
    );
  });
});

describe("cases for a wanted width", () => {
  test("are the least whose expected Wilson width, summed by R, is no more", async () => {
    const plans = [0, 0.05, 0.3, 0.5, 0.85, 0.97, 1].flatMap((rate) =>
      [0.05, 0.1, 0.2, 0.4].flatMap((width) => [0.8, 0.95].map((level) => [rate, width, level] as const)),
    );
    const found = plans.map(([rate, width, level]) => {
      const plan = casesForWidth(rate, { width, level });
      if (!("cases" in plan)) throw new Error(plan.because);
      return plan;
    });
    const widths = await r(`{
      f <- function(n, p, level) { z <- qnorm((1 + level) / 2); x <- 0:n
        sum(dbinom(x, n, p) * 2 * z * sqrt(z^2 + 4 * x * (1 - x / n)) / (2 * (n + z^2))) }
      unlist(list(${plans.map(([p, , level], k) => `f(${found[k]!.cases}, ${p}, ${level}), f(${found[k]!.cases - 1}, ${p}, ${level})`).join(",")})) }`);
    plans.forEach(([, width], k) => {
      expect(found[k]!.expectedWidth).toBeCloseTo(widths[2 * k]!, 11);
      expect(widths[2 * k]!).toBeLessThanOrEqual(width);
      expect(widths[2 * k + 1]!).toBeGreaterThan(width);
    });
  });

  it("says when more are needed than are tried, and refuses what is no rate or width", () => {
    expect(casesForWidth(0.5, { width: 0.001 })).toMatchObject({ because: "more than 10000 cases are not tried" });
    expect(() => casesForWidth(1.1, { width: 0.1 })).toThrow(
      new RangeError("casesForWidth: the expected rate must lie in [0, 1], got 1.1"),
    );
    expect(() => casesForWidth(0.5, { width: 1 })).toThrow(
      new RangeError("casesForWidth: width must lie between 0 and 1, got 1"),
    );
  });
});
