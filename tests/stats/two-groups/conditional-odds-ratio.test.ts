import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { conditionalOddsRatio } from "../../../src/stats/two-groups/conditional-odds-ratio.js";
import reference from "../../reference/conditional-odds-ratio.json";
import { numbers } from "../../numbers.js";
import { r } from "../../r.js";
import { expectRelative } from "../../relative.js";
import { worked } from "../../worked.js";
import { groups, twoGroups } from "./groups.js";

test(`estimates and both kinds of limits equal ${reference.source} to 1e-10`, () => {
  expect(reference.cases.length).toBeGreaterThan(100);
  for (const { first, second, level, estimate, exact, midP } of reference.cases)
    for (const [limits, interval] of [["exact", exact] as const, ["midP", midP] as const]) {
      const ours = conditionalOddsRatio({ first, second }, { level, limits });
      const of = `${first.successes}/${first.trials} ${second.successes}/${second.trials} at ${level} ${limits}`;
      expectRelative(ours.estimate!, Number(estimate), 1e-10, `${of} estimate`);
      expectRelative(ours.interval.low, Number(interval.low), 1e-10, `${of} low`);
      expectRelative(ours.interval.high, Number(interval.high), 1e-10, `${of} high`);
    }
});

test("agrees with R's fisher.test as far as its root finder goes: 1%, or 2e-4 of the odds ratio or its reciprocal", async () => {
  const random = numbers(42);
  const tables = Array.from({ length: 150 }, () => {
    const m = random(5, 60);
    const n = random(5, 60);
    return [random(1, m - 1), m, random(1, n - 1), n] as const;
  });
  const cells = tables.map(([a, m, c, n]) => [a, c, m - a, n - c]).flat();
  const expected = await r(`
    apply(matrix(c(${cells.join(",")}), nrow = 4), 2, function(v) {
      f <- fisher.test(matrix(v, 2)); c(f$estimate, f$conf.int) })`);
  tables.forEach(([a, m, c, n], i) => {
    const { estimate, interval } = conditionalOddsRatio(groups(a, m, c, n));
    const of = `${a}/${m} ${c}/${n}`;
    [estimate!, interval.low, interval.high].forEach((ours, j) => {
      const theirs = expected[3 * i + j]!;
      // uniroot stops within 1.2e-4 of a ratio below 1, and of the reciprocal of one above.
      const apart = Math.min(Math.abs(ours - theirs), Math.abs(1 / ours - 1 / theirs));
      if (apart > 2e-4) expectRelative(ours, theirs, 0.01, `${of} ${j}`);
    });
  });
});

describe("published examples", () => {
  test("epinephrine (Fagerland, Lydersen, Laake 2015)", () => {
    const exact = conditionalOddsRatio(groups(7, 34, 1, 34)).interval;
    worked("B-fagerland2015-perondi", "cexact_lo").check(exact.low);
    worked("B-fagerland2015-perondi", "cexact_hi").check(exact.high);
    const midP = conditionalOddsRatio(groups(7, 34, 1, 34), { limits: "midP" }).interval;
    worked("B-fagerland2015-perondi", "cmidp_lo").check(midP.low);
    worked("B-fagerland2015-perondi", "cmidp_hi").check(midP.high);
  });
  test("cancer of the larynx (Agresti 2002)", () => {
    const { interval } = conditionalOddsRatio(groups(21, 23, 15, 18));
    worked("B-agresti-larynx", "cexact_lo").check(interval.low);
    worked("B-agresti-larynx", "cexact_hi").check(interval.high);
  });
  test("the lady tasting tea: R documents 6.408309, its root finder's error; the equation gives 6.40832", () => {
    worked("C-tea", "cmle").check(conditionalOddsRatio(groups(3, 4, 1, 4)).estimate!);
  });
});

describe("properties", () => {
  it("inverts when the groups change places or failure is counted for success", () => {
    fc.assert(
      fc.property(twoGroups(60), ({ first, second }) => {
        const one = conditionalOddsRatio({ first, second });
        const fail = ({ successes, trials }: typeof first) => ({ successes: trials - successes, trials });
        for (const other of [
          conditionalOddsRatio({ first: second, second: first }),
          conditionalOddsRatio({ first: fail(first), second: fail(second) }),
        ]) {
          if (one.estimate !== null) expectRelative(other.estimate!, 1 / one.estimate, 1e-10, "estimate");
          expectRelative(other.interval.low, 1 / one.interval.high, 1e-10, "low");
          expectRelative(other.interval.high, 1 / one.interval.low, 1e-10, "high");
        }
      }),
    );
  });

  it("nests: mid-P within exact, a lower level within a higher one, the estimate within all", () => {
    fc.assert(
      fc.property(twoGroups(60), fc.double({ min: 0.5, max: 0.99, noNaN: true }), (data, level) => {
        const exact = conditionalOddsRatio(data, { level });
        const wider = conditionalOddsRatio(data, { level: (1 + level) / 2 });
        const midP = conditionalOddsRatio(data, { level, limits: "midP" });
        expect(wider.interval.low).toBeLessThanOrEqual(exact.interval.low);
        expect(exact.interval.low).toBeLessThanOrEqual(midP.interval.low);
        expect(wider.interval.high).toBeGreaterThanOrEqual(exact.interval.high);
        expect(exact.interval.high).toBeGreaterThanOrEqual(midP.interval.high);
        if (exact.estimate === null) return;
        expect(exact.interval.low).toBeLessThanOrEqual(exact.estimate);
        expect(exact.interval.high).toBeGreaterThanOrEqual(exact.estimate);
      }),
    );
  });
});

describe("edges", () => {
  it("is infinite, with a finite lower limit, when only the first group succeeded", () => {
    const { estimate, interval } = conditionalOddsRatio(groups(10, 10, 0, 10));
    expect(estimate).toBe(Infinity);
    expect(interval.high).toBe(Infinity);
    // One table of C(20, 10) has the extreme cell: the limit solves a polynomial of degree 10 (see the reference cases).
    expect(interval.low).toBeGreaterThan(1);
  });
  it("is undefined, with limits from 0 to infinity, when every case had the same outcome", () => {
    expect(conditionalOddsRatio(groups(0, 5, 0, 3))).toEqual({
      method: "conditional",
      ...groups(0, 5, 0, 3),
      limits: "exact",
      level: 0.95,
      estimate: null,
      because: "every case was a failure, so the table says nothing about the odds ratio",
      interval: { low: 0, high: Infinity },
    });
    expect(conditionalOddsRatio(groups(5, 5, 3, 3))).toMatchObject({
      estimate: null,
      because: "every case was a success, so the table says nothing about the odds ratio",
    });
  });
  it("answers for any table of 1,000 cases within 50 ms and a million within a second", () => {
    for (const table of [
      groups(500, 500, 0, 500),
      groups(499, 500, 1, 500),
      groups(1, 999, 1, 1),
      groups(0, 1, 998, 999),
    ]) {
      const start = performance.now();
      for (const level of [1e-6, 0.95, 1 - 1e-12]) conditionalOddsRatio(table, { level });
      expect(performance.now() - start).toBeLessThan(150);
    }
    const start = performance.now();
    conditionalOddsRatio(groups(499_000, 500_000, 20, 500_000));
    expect(performance.now() - start).toBeLessThan(1000);
  });
  it("refuses impossible counts, levels and options by name", () => {
    expect(() => conditionalOddsRatio(groups(1, 2, 3, 2))).toThrow(RangeError);
    expect(() => conditionalOddsRatio(groups(1, 2, 1, 2), { level: 95 })).toThrow(
      new RangeError("conditionalOddsRatio: level must lie between 0 and 1, got 95"),
    );
    expect(() => conditionalOddsRatio(groups(1, 2, 1, 2), { limits: "mid" as "midP" })).toThrow(
      new RangeError('conditionalOddsRatio: limits must be "exact" or "midP", got mid'),
    );
    expect(() => conditionalOddsRatio(groups(1, 2, 1, 2), { confidence: 0.9 } as object)).toThrow(
      new TypeError('conditionalOddsRatio: no option is named "confidence" (known: level, limits)'),
    );
  });
});
