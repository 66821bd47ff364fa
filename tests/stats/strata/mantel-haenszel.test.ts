import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { mantelHaenszel } from "../../../src/stats/strata/mantel-haenszel.js";
import { r } from "../../r.js";
import { numbers } from "../../numbers.js";
import { worked, workedInput } from "../../worked.js";
import admissions from "../../reference/data/ucbadmissions.csv?raw";
import { cellsForR, strataOf } from "./strata-of.js";

describe("published examples", () => {
  test("Berkeley admissions: odds ratio and limits of R's documentation", () => {
    const input = workedInput<Record<string, number[][]>>("E-ucb");
    const result = mantelHaenszel(strataOf(input.strata_admitM_rejectM_admitF_rejectF!));
    worked("E-ucb", "or_mh").check(result.oddsRatio!);
    worked("E-ucb", "ci_lo").check(result.interval.low!);
    worked("E-ucb", "ci_hi").check(result.interval.high!);
    worked("E-ucb", "cmh_cc").check(result.corrected.chiSquare!);
    worked("E-ucb", "cmh_cc_p").check(result.corrected.p!);
    worked("E-ucb", "or_A").check(
      mantelHaenszel(strataOf(input.strata_admitM_rejectM_admitF_rejectF!.slice(0, 1))).oddsRatio!,
    );
  });

  test("smoking in eight Chinese cities: the standard error printed as 0.046 is 0.0468", () => {
    const { strata_rowwise } = workedInput<Record<string, number[][]>>("E-china-smoking");
    const result = mantelHaenszel(strataOf(strata_rowwise!));
    worked("E-china-smoking", "or_mh").check(result.oddsRatio!);
    worked("E-china-smoking", "log_or").check(Math.log(result.oddsRatio!));
    worked("E-china-smoking", "ci_lo").check(result.interval.low!);
    worked("E-china-smoking", "ci_hi").check(result.interval.high!);
    worked("E-china-smoking", "se_log").check(
      Math.log(result.interval.high! / result.interval.low!) / (2 * 1.959963984540054),
    );
    worked("E-china-smoking", "cmh").check(result.chiSquare!);
  });

  test("oesophageal cancer and alcohol: Breslow and Day's odds ratio", () => {
    const input = workedInput<Record<string, number[][]>>("E-ille-et-vilaine");
    const rows = input.strata_caseExp_ctrlExp_caseUn_ctrlUn!;
    const { oddsRatio, corrected } = mantelHaenszel(strataOf(rows));
    worked("E-ille-et-vilaine", "or_mh").check(oddsRatio!);
    // Printed 83.22, unrounded 83.2145.
    worked("E-ille-et-vilaine", "cmh_cc").check(corrected.chiSquare!);
    const whole = rows.reduce((sum, row) => sum.map((count, i) => count + row[i]!));
    worked("E-ille-et-vilaine", "crude").check(mantelHaenszel(strataOf([whole])).oddsRatio!);
  });
});

test("Simpson's paradox: men ahead when departments are added up, not within them", () => {
  const rows = new Map<string, number[]>();
  for (const line of admissions.trim().split("\n").slice(1)) {
    const [outcome, sex, department, count] = line.split(",");
    const cells = rows.get(department!) ?? [0, 0, 0, 0];
    cells[(sex === "Male" ? 0 : 2) + (outcome === "Admitted" ? 0 : 1)] = Number(count);
    rows.set(department!, cells);
  }
  const departments = [...rows.values()];
  const whole = departments.reduce((sum, cells) => sum.map((count, i) => count + cells[i]!));
  expect(mantelHaenszel(strataOf([whole])).difference).toBeCloseTo(0.1416454, 7); // 1198/2691 - 557/1835
  expect(mantelHaenszel(strataOf(departments)).difference).toBeLessThan(0);
});

test("closed against open treatment within grade of the invented cohort: 1.3, 6 points (-30 to 43)", () => {
  // 9/9 v none, 14/15 v 1/1, 10/11 v 2/4, 2/5 v 4/6, computed in R 4.2.2.
  const result = mantelHaenszel(
    strataOf([
      [9, 0, 0, 0],
      [14, 1, 1, 0],
      [10, 1, 2, 2],
      [2, 3, 4, 2],
    ]),
  );
  expect(result.oddsRatio!.toFixed(1)).toBe("1.3");
  expect((100 * result.difference!).toFixed(0)).toBe("6");
  expect((100 * result.differenceInterval.low!).toFixed(0)).toBe("-30");
  expect((100 * result.differenceInterval.high!).toFixed(0)).toBe("43");
  expect(result).not.toHaveProperty("because");
});

function randomStrata(count: number): number[][][] {
  const random = numbers(31);
  return Array.from({ length: count }, (_, i) =>
    Array.from({ length: 4 }, () => Array.from({ length: 4 }, () => random(0, i % 2 === 0 ? 40 : 9))),
  );
}

it("agrees with R's mantelhaen.test on 1,000 sets of four strata", async () => {
  const sets = randomStrata(1000);
  const values = await r(`
    apply(matrix(c(${sets.flatMap(cellsForR).join()}), nrow = 16), 2, function(v) {
      x <- array(v, c(2, 2, 4)); x <- x[, , apply(x, 3, sum) > 1, drop = FALSE]
      t <- mantelhaen.test(x, correct = FALSE); c(t$estimate, t$conf.int, t$p.value, t$statistic,
        mantelhaen.test(x)$statistic) })`);
  sets.forEach((rows, i) => {
    const { oddsRatio, interval, p, chiSquare, corrected } = mantelHaenszel(strataOf(rows));
    const [estimate, low, high, pOfR, statistic, yates] = values.slice(6 * i, 6 * i + 6);
    if (oddsRatio === 0 || oddsRatio === Infinity) expect(estimate).toBe(oddsRatio);
    else {
      expect(Math.abs(oddsRatio! / estimate! - 1), JSON.stringify(rows)).toBeLessThan(1e-10);
      expect(Math.abs(interval.low! / low! - 1)).toBeLessThan(1e-10);
      expect(Math.abs(interval.high! / high! - 1)).toBeLessThan(1e-10);
    }
    expect(Math.abs(chiSquare! - statistic!)).toBeLessThan(1e-10 * (1 + statistic!));
    expect(Math.abs(p! - pOfR!)).toBeLessThan(1e-10);
    // Where the excess is below one half, R drops the correction and we stop at 0.
    if (corrected.chiSquare! > 0) expect(Math.abs(corrected.chiSquare! - yates!)).toBeLessThan(1e-10 * (1 + yates!));
    else expect(yates).toBeCloseTo(chiSquare!, 10);
  });
});

it("gives the difference and the ratio that their printed formulas give in R", async () => {
  const sets = randomStrata(200);
  // Sato 1989 and Greenland and Robins 1985, written out in R from the papers' formulas.
  const values = await r(`
    apply(matrix(c(${sets.flat(2).join()}), nrow = 16), 2, function(v) {
      x <- matrix(v, nrow = 4); x <- x[, colSums(x) > 0, drop = FALSE]
      a <- x[1, ]; n1 <- a + x[2, ]; c <- x[3, ]; n2 <- c + x[4, ]; n <- n1 + n2; z <- qnorm(0.975)
      w <- sum(n1 * n2 / n); d <- sum((a * n2 - c * n1) / n) / w
      P <- sum((n1^2 * c - n2^2 * a + n1 * n2 * (n2 - n1) / 2) / n^2)
      Q <- sum((a * (n2 - c) + c * (n1 - a)) / (2 * n)); s <- sqrt(d * P + Q) / w
      R <- sum(a * n2 / n); S <- sum(c * n1 / n)
      v <- sum(((a + c) * n1 * n2 - a * c * n) / n^2) / (R * S)
      c(d, d - z * s, d + z * s, R / S, R / S * exp(-z * sqrt(v)), R / S * exp(z * sqrt(v))) })`);
  sets.forEach((rows, i) => {
    const result = mantelHaenszel(strataOf(rows));
    const ours = [
      result.difference,
      result.differenceInterval.low,
      result.differenceInterval.high,
      result.riskRatio,
      result.riskRatioInterval.low,
      result.riskRatioInterval.high,
    ];
    ours.forEach((value, k) =>
      expect(Math.abs(value! - values[6 * i + k]!)).toBeLessThan(1e-10 * (1 + Math.abs(value!))),
    );
  });
});

const cells = fc.array(fc.tuple(fc.nat(20), fc.nat(20), fc.nat(20), fc.nat(20)), { minLength: 1, maxLength: 5 });

it("turns round when the groups change places", () => {
  fc.assert(
    fc.property(cells, (rows) => {
      const x = mantelHaenszel(strataOf(rows));
      const y = mantelHaenszel(strataOf(rows.map(([a, b, c, d]) => [c, d, a, b])));
      if (x.difference === null) {
        expect(y.difference).toBeNull();
        return;
      }
      expect(y.difference).toBeCloseTo(-x.difference, 12);
      expect(y.differenceInterval.low).toBeCloseTo(-x.differenceInterval.high!, 12);
      if (x.oddsRatio === 0) expect(y.oddsRatio).toBe(Infinity);
      else if (x.oddsRatio !== null) expect(y.oddsRatio).toBeCloseTo(1 / x.oddsRatio, 9);
      if (x.p !== null) expect(y.p).toBeCloseTo(x.p, 12);
    }),
  );
});

it("never gives NaN, and a reason beside every null", () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat(2), fc.nat(2), fc.nat(2), fc.nat(2)), { minLength: 1, maxLength: 3 }),
      (rows) => {
        const result = mantelHaenszel(strataOf(rows));
        const { oddsRatio, difference, riskRatio, p } = result;
        for (const value of [oddsRatio, difference, riskRatio, p]) expect(value).not.toBeNaN();
        if ([oddsRatio, difference, riskRatio, p].includes(null)) expect(result.because).toMatch(/\w/);
        for (const limits of [result.interval, result.differenceInterval, result.riskRatioInterval])
          if (limits.low === null) expect(limits.because).toMatch(/\w/);
          else expect(limits.low).toBeLessThanOrEqual(limits.high);
      },
    ),
    { numRuns: 500 },
  );
});

it("has no limits at an odds ratio of 0 or infinity", () => {
  const all = mantelHaenszel(strataOf([[5, 0, 2, 3]]));
  expect(all.oddsRatio).toBe(Infinity);
  expect(all.interval).toEqual({
    low: null,
    high: null,
    because: "an odds ratio of infinity has no Robins-Breslow-Greenland limits",
  });
  expect(mantelHaenszel(strataOf([[0, 5, 2, 3]])).oddsRatio).toBe(0);
});

it("says that nothing can be compared when one group is empty everywhere", () => {
  const result = mantelHaenszel(strataOf([[5, 2, 0, 0]]));
  expect(result).toMatchObject({ oddsRatio: null, difference: null, riskRatio: null, p: null });
  expect(result.because).toContain("no stratum has cases in both groups");
});

it("refuses wrong counts by name", () => {
  expect(() => mantelHaenszel([])).toThrow(
    new RangeError("mantelHaenszel: there must be at least one stratum, got none"),
  );
  expect(() =>
    mantelHaenszel(
      strataOf([
        [1, 2, 3, 4],
        [1, 2, 3, 0.5],
      ]),
    ),
  ).toThrow(new RangeError("mantelHaenszel: strata[1].second.trials must be an integer of at least 0, got 3.5"));
});
