import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { random } from "../../../src/numeric/random.js";
import type { Child } from "../../../src/stats/clustered/children.js";
import { clusteredWilson } from "../../../src/stats/clustered/clustered-wilson.js";
import { correlationWithinChild } from "../../../src/stats/clustered/correlation-within-child.js";
import { firstLimb } from "../../../src/stats/clustered/first-limb.js";
import { perChild, type ChildRule } from "../../../src/stats/clustered/per-child.js";
import { raoScott } from "../../../src/stats/clustered/rao-scott.js";
import { wilson } from "../../../src/stats/wilson.js";
import { r } from "../../r.js";

/** 42 of 51 invented limbs in 48 children, three of them with both sides treated. */
const cohort: Child[] = [
  ...Array.from({ length: 37 }, () => [true]),
  ...Array.from({ length: 8 }, () => [false]),
  [true, true],
  [true, true],
  [true, false],
];

const children = fc.array(fc.array(fc.boolean(), { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 40 });

describe("counting one unit a child", () => {
  it("takes the first limb, every limb, or any", () => {
    const some = [[true], [false, true], [true, false], [true, true], [false]];
    expect(firstLimb(some)).toMatchObject({ successes: 3, trials: 5, children: 5, estimate: 0.6 });
    expect(perChild(some)).toMatchObject({ rule: "every", successes: 2, trials: 5 });
    expect(perChild(some, { rule: "any" })).toMatchObject({ rule: "any", successes: 4, trials: 5 });
    expect(firstLimb(some, { level: 0.9 }).interval).toEqual(wilson(3, 5, { level: 0.9 }).interval);
    expect(perChild(some).interval).toEqual(wilson(2, 5).interval);
  });
});

describe("the correlation within a child", () => {
  it("comes from R's mean squares, on 200 random cohorts", async () => {
    const stream = random(3);
    const cohorts = Array.from({ length: 200 }, () =>
      Array.from({ length: 3 + stream.below(15) }, () =>
        Array.from({ length: 1 + stream.below(3) }, () => stream.below(3) > 0),
      ),
    ).filter((c) => correlationWithinChild(c).estimate !== null);
    expect(cohorts.length).toBeGreaterThan(150);
    const theirs = await r(`unlist(lapply(list(${cohorts
      .map((c) => `list(c(${c.flat().map(Number).join(",")}), c(${c.map((limbs) => limbs.length).join(",")}))`)
      .join(",")}), function(d) {
        k <- length(d[[2]]); g <- factor(rep(seq_len(k), d[[2]])); n <- length(g)
        ms <- suppressWarnings(anova(lm(d[[1]] ~ g)))[["Mean Sq"]]
        m <- (n - sum(d[[2]]^2) / n) / (k - 1)
        (ms[1] - ms[2]) / (ms[1] + (m - 1) * ms[2]) }))`);
    cohorts.forEach((c, i) => expect(correlationWithinChild(c).estimate).toBeCloseTo(theirs[i]!, 10));
  });

  it("is exactly 1 when both limbs of each child fare alike", () => {
    expect(
      correlationWithinChild([
        [true, true],
        [false, false],
        [true, true],
      ]).estimate,
    ).toBe(1);
  });

  test.each([
    [[[true], [false]], "no child has more than one limb"],
    [[[true, false]], "there is only one child"],
    [[[true, true], [true]], "every limb succeeded"],
    [[[false, false], [false]], "every limb failed"],
  ])("says why there is none: %j", (some, because) => {
    expect(correlationWithinChild(some)).toMatchObject({ estimate: null, because });
  });
});

describe("Wilson's interval at the effective count", () => {
  it("reaches the worked value under full dependence", () => {
    const full = clusteredWilson(cohort, { correlation: 1 });
    // By hand: (45 x 1 + 3 x 4) / 51 = 57/51, and 51 / (57/51) = 45.63 limbs.
    expect(full.designEffect).toBeCloseTo(57 / 51, 14);
    expect(full.effectiveTrials).toBeCloseTo(2601 / 57, 12);
    // 69 to 91 per cent, computed in R 4.2.2
    expect(full.interval!.low).toBeCloseTo(0.69, 2);
    expect(full.interval!.high).toBeCloseTo(0.91, 2);
  });

  it("is the plain interval at correlation 0, and that of as many children when limbs fare alike", () => {
    expect(clusteredWilson(cohort, { correlation: 0 }).interval).toEqual(wilson(42, 51).interval);
    const alike = [...Array.from({ length: 7 }, () => [true, true]), [false, false], [false, false]];
    const { interval, correlation } = clusteredWilson(alike);
    expect(correlation).toEqual({ value: 1, origin: "estimated" });
    expect(interval!.low).toBeCloseTo(wilson(7, 9).interval.low, 14);
    expect(interval!.high).toBeCloseTo(wilson(7, 9).interval.high, 14);
  });

  it("widens with the correlation and keeps exact ends", () => {
    fc.assert(
      fc.property(children, fc.double({ min: 0, max: 1, noNaN: true }), (some, correlation) => {
        const { interval, successes, trials } = clusteredWilson(some, { correlation });
        const plain = wilson(successes, trials).interval;
        expect(interval!.low).toBeLessThanOrEqual(plain.low + 1e-14);
        expect(interval!.high).toBeGreaterThanOrEqual(plain.high - 1e-14);
        if (successes === 0) expect(interval!.low).toBe(0);
        if (successes === trials) expect(interval!.high).toBe(1);
      }),
    );
  });

  it("raises an estimate below 0 and says so", () => {
    const opposite = [
      [true, false],
      [false, true],
      [true, false],
    ];
    expect(correlationWithinChild(opposite).estimate).toBe(-1);
    expect(clusteredWilson(opposite)).toMatchObject({
      correlation: { value: 0, origin: "estimated below 0, raised to 0" },
      designEffect: 1,
      interval: wilson(3, 6).interval,
    });
  });

  it("has no interval when nothing can be estimated, unless a correlation is stated", () => {
    const whole = [[true, true], [true]];
    expect(clusteredWilson(whole)).toMatchObject({
      estimate: 1,
      interval: null,
      because: "the correlation within a child cannot be estimated: every limb succeeded; state one",
    });
    expect(clusteredWilson(whole, { correlation: 0.5 }).interval!.high).toBe(1);
    expect(() => clusteredWilson(whole, { correlation: 2 })).toThrow(
      new RangeError("clusteredWilson: correlation must lie in [0, 1], got 2"),
    );
  });
});

describe("Rao and Scott's correction", () => {
  it("has the variance of the ratio that R finds by summing residuals, on 100 random cohorts", async () => {
    const stream = random(5);
    const cohorts = Array.from({ length: 100 }, () =>
      Array.from({ length: 4 + stream.below(30) }, () =>
        Array.from({ length: 1 + stream.below(2) }, () => stream.below(4) > 0),
      ),
    ).filter((c) => raoScott(c).designEffect !== null);
    expect(cohorts.length).toBeGreaterThan(90);
    const theirs = await r(`unlist(lapply(list(${cohorts
      .map(
        (c) =>
          `list(c(${c.map((limbs) => limbs.filter(Boolean).length).join(",")}), c(${c.map((l) => l.length).join(",")}))`,
      )
      .join(",")}), function(d) {
        # a weighted regression on the constant, its residuals gathered within children
        f <- lm(d[[1]] / d[[2]] ~ 1, weights = d[[2]]); p <- coef(f); n <- sum(d[[2]]); k <- length(d[[2]])
        var(residuals(f) * d[[2]]) * k / n^2 / (p * (1 - p) / n) }))`);
    cohorts.forEach((c, i) => expect(raoScott(c).designEffect).toBeCloseTo(theirs[i]!, 10));
  });

  it("uses Wilson's limits at the effective count", () => {
    const { designEffect, effectiveTrials, interval } = raoScott(cohort);
    const n = effectiveTrials!;
    expect(n).toBeCloseTo(51 / designEffect!, 12);
    for (const limit of [interval!.low, interval!.high])
      expect(Math.abs(42 / 51 - limit)).toBeCloseTo(1.959963984540054 * Math.sqrt((limit * (1 - limit)) / n), 12);
  });

  test.each([
    [[[true, false]], "there is only one child"],
    [[[false], [false]], "every limb failed"],
    [[[true], [true, true]], "every limb succeeded"],
    [
      [
        [true, false],
        [false, true],
      ],
      "the share of successes is the same in every child, so it does not vary between children",
    ],
  ])("says why there is none: %j", (some, because) => {
    expect(raoScott(some)).toMatchObject({ designEffect: null, effectiveTrials: null, interval: null, because });
  });
});

test.each([
  [() => firstLimb([]), "firstLimb: children must hold at least one child, got 0", RangeError],
  [() => perChild([[true], []]), "perChild: children[1] must have at least one limb, got 0", RangeError],
  [
    () => raoScott([[true, 1 as unknown as boolean]]),
    "raoScott: children[0] must hold true or false for each limb, got 1",
    TypeError,
  ],
  [
    () => perChild([[true]], { rule: "most" as ChildRule }),
    'perChild: no rule is named "most" (known: every, any)',
    TypeError,
  ],
])("%s is refused: %s", (call, message, kind) => {
  expect(call).toThrow(new kind(message));
});
