// Limits for one proportion against 40-digit arithmetic, print, and the equations that define them.
import { describe, expect, it, test } from "vitest";
import { normalUpperQuantile } from "../../../src/numeric/normal.js";
import { clopperPearson } from "../../../src/stats/clopper-pearson.js";
import { exactOneSided } from "../../../src/stats/one-proportion/exact-one-sided.js";
import { wald } from "../../../src/stats/one-proportion/wald.js";
import {
  proportionInterval,
  proportionIntervals,
  proportionMethods,
  type ProportionMethod,
} from "../../../src/stats/one-proportion/proportion-intervals.js";
import { wilson } from "../../../src/stats/wilson.js";
import reference from "../../reference/proportions.json" with { type: "json" };
import { worked } from "../../worked.js";

type Limits = { readonly [Method in ProportionMethod]?: readonly number[] };

for (const method of proportionMethods)
  it(`${method} equals 40-digit arithmetic`, () => {
    let compared = 0;
    for (const { successes, trials, level, ...limits } of reference.intervals) {
      const expected = (limits as Limits)[method];
      if (expected === undefined) continue;
      compared++;
      const { low, high } = proportionInterval({ successes, trials }, { method, level }).interval;
      const at = `${successes}/${trials} at ${level}`;
      // Absolute 1e-12 for both; relative as well where the arithmetic of the method does not cancel (Wald's does).
      expect(Math.abs(low - expected[0]!), `${at} low`).toBeLessThan(1e-12);
      expect(Math.abs(high - expected[1]!), `${at} high`).toBeLessThan(1e-12);
      if (/wald|agresti/i.test(method)) continue;
      expect(Math.abs(low - expected[0]!), `${at} low`).toBeLessThanOrEqual(1e-11 * expected[0]!);
      expect(Math.abs(high - expected[1]!), `${at} high`).toBeLessThanOrEqual(1e-11 * expected[1]!);
    }
    expect(compared).toBeGreaterThan(60);
  });

describe("published examples", () => {
  const keys: readonly (readonly [string, ProportionMethod])[] = [
    ["wald", "wald"],
    ["wald_cc", "waldContinuity"],
    ["wilson", "wilson"],
    ["wilson_cc", "wilsonContinuity"],
    ["exact", "clopperPearson"],
    ["midp", "midP"],
    ["lr", "likelihoodRatio"],
  ];
  test.each([
    ["A-newcombe1998-81-263", 81, 263, keys.map(([key]) => key)],
    ["A-newcombe1998-0-20", 0, 20, keys.map(([key]) => key)],
    ["A-agresti-0-25", 0, 25, ["wald", "wilson", "lr", "exact", "midp"]],
    ["A-agresti-9-10", 9, 10, ["wald", "wilson"]],
    ["A-berry-armitage-5-20", 5, 20, ["midp"]],
  ] as const)("%s", (id, successes, trials, wanted: readonly string[]) => {
    const intervals = proportionIntervals(successes, trials);
    for (const [key, method] of keys.filter(([name]) => wanted.includes(name))) {
      // Newcombe prints "<0" for the corrected Wald limit at 0/20; Agresti gives the upper limits of 0/25 only.
      const lowerLeftOut = successes === 0 && (key === "wald_cc" || (trials === 25 && key !== "wald"));
      if (!lowerLeftOut) worked(id, `${key}_lo`).check(intervals[method].low);
      worked(id, `${key}_hi`).check(intervals[method].high);
    }
  });

  it("A-agresti-9-10: adding two successes and two failures is Wald's interval of 11 of 14", () => {
    const { low, high } = wald(11, 14).interval;
    worked("A-agresti-9-10", "plus4_lo").check(low);
    worked("A-agresti-9-10", "plus4_hi").check(high);
  });

  it("A-nist-4-20: the lower limit as printed; the upper one is printed a unit of the sixth digit too high", () => {
    const { low, high } = clopperPearson(4, 20, { level: 0.9 }).interval;
    worked("A-nist-4-20", "exact90_lo").check(low);
    // Printed 0.401029; in 40 digits it is 0.401028117, so the print is wrong, not the kit.
    expect(high).toBeCloseTo(0.401028117331975, 12);
  });

  it("A-statsmodels-51-235: exact limits in full precision", () => {
    const { low, high } = clopperPearson(51, 235).interval;
    expect(low).toBeCloseTo(0.1660633298083073, 14);
    expect(high).toBeCloseTo(0.2752683640289254, 14);
  });

  it("A-bcd2001-jeffreys-n10: inner counts; the published end at 0 is a further modification, the exact limit", () => {
    for (const x of [3, 4, 5]) {
      const { low, high } = proportionInterval({ successes: x, trials: 10 }, { method: "jeffreys" }).interval;
      worked("A-bcd2001-jeffreys-n10", `x${x}_lo`).check(low);
      worked("A-bcd2001-jeffreys-n10", `x${x}_hi`).check(high);
    }
    worked("A-bcd2001-jeffreys-n10", "x0_hi").check(clopperPearson(0, 10).interval.high);
  });

  it("A-hanley-rule-of-three: exact one-sided limits after no event, which 3/n never understates", () => {
    for (const n of [10, 20, 30, 50, 100]) {
      const upper = 100 * exactOneSided(0, n).upper;
      worked("A-hanley-rule-of-three", `exact_${n}`).check(upper);
      expect(upper).toBeLessThan(Number(worked("A-hanley-rule-of-three", `rule_${n}`).published));
    }
  });
});

describe("for all n to 200 and all counts", () => {
  it("Wilson's limits solve the score equation and end exactly at 0 and 1", () => {
    for (const level of [0.8, 0.95, 0.99]) {
      const z2 = normalUpperQuantile((1 - level) / 2) ** 2;
      for (let n = 1; n <= 200; n++)
        for (let x = 0; x <= n; x++) {
          const { low, high } = wilson(x, n, { level }).interval;
          if (x === 0) expect(low).toBe(0);
          if (x === n) expect(high).toBe(1);
          // (n + z2) L^2 - (2x + z2) L + x^2/n = 0, over its slope: the error of the limit itself.
          for (const limit of [low, high]) {
            const gap = ((n + z2) * limit - (2 * x + z2)) * limit + (x * x) / n;
            const slope = 2 * (n + z2) * limit - (2 * x + z2);
            if (Math.abs(gap / slope) > 1e-13) expect.fail(`${x}/${n} at ${level}: ${limit}`);
          }
        }
    }
  });

  it("the exact limits leave half of the rest in each tail, summed from binomial coefficients", () => {
    let row = [1n];
    for (let n = 1; n <= 200; n++) {
      row = Array.from({ length: n + 1 }, (_, k) => (row[k - 1] ?? 0n) + (row[k] ?? 0n));
      const choose = row.map(Number);
      const sum = (from: number, to: number, p: number): number => {
        const logs = [Math.log(p), Math.log1p(-p)] as const;
        let total = 0;
        for (let k = from; k <= to; k++) total += choose[k]! * Math.exp(k * logs[0] + (n - k) * logs[1]);
        return total;
      };
      for (let x = 0; x <= n; x++) {
        const { low, high } = clopperPearson(x, n).interval;
        if (x === 0) expect(low).toBe(0);
        else if (Math.abs(sum(x, n, low) / 0.025 - 1) > 2e-12) expect.fail(`${x}/${n} low ${low}`);
        if (x === n) expect(high).toBe(1);
        else if (Math.abs(sum(0, x, high) / 0.025 - 1) > 2e-12) expect.fail(`${x}/${n} high ${high}`);
      }
    }
  });
});
