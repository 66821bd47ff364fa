import { beforeAll, describe, expect, it, test } from "vitest";
import { blandAltman } from "../../../src/stats/measurement-agreement/bland-altman.js";
import { blandAltmanRepeated } from "../../../src/stats/measurement-agreement/bland-altman-repeated.js";
import {
  intraclassCorrelation,
  type IccOptions,
} from "../../../src/stats/measurement-agreement/intraclass-correlation.js";
import { meanSquares } from "../../../src/stats/measurement-agreement/mean-squares.js";
import { measurementError } from "../../../src/stats/measurement-agreement/measurement-error.js";
import { proportionalBias } from "../../../src/stats/measurement-agreement/proportional-bias.js";
import { withinSubjectSd } from "../../../src/stats/measurement-agreement/within-subject-sd.js";
import { normalCdf } from "../../../src/numeric/normal.js";
import { random } from "../../../src/numeric/random.js";
import { normalQuantile } from "../../../src/numeric/normal.js";
import { r } from "../../r.js";
import { example } from "../agreement/examples.js";

const judges = example("D-shrout-fleiss1979");
const ratings = judges.input.ratings as number[][];
const flow = example("D-bland-altman1986");
const large = flow.input.large as number[][];
const mini = flow.input.mini as number[][];
const firsts = (rows: number[][]): number[] => rows.map((row) => row[0]!);

/** Invented angles: 30 radiographs, three raters, by a formula so that R can make them too. */
const angles = Array.from({ length: 30 }, (_, i) =>
  [0, 1, 2].map((j) => 20 + ((i * 37) % 50) + 3 * j + 4 * Math.sin(i * (j + 2))),
);

describe("intraclass correlation", () => {
  const cases: [string, IccOptions, string][] = [
    ["ICC(1,1)", { model: "one-way random", type: "absolute agreement", unit: "single" }, "11"],
    ["ICC(2,1)", { model: "two-way random", type: "absolute agreement", unit: "single" }, "21"],
    ["ICC(3,1)", { model: "two-way mixed", type: "consistency", unit: "single" }, "31"],
    ["ICC(1,4)", { model: "one-way random", type: "absolute agreement", unit: "average" }, "1k"],
    ["ICC(2,4)", { model: "two-way random", type: "absolute agreement", unit: "average" }, "2k"],
    ["ICC(3,4)", { model: "two-way mixed", type: "consistency", unit: "average" }, "3k"],
  ];

  test.each(cases)("%s of Shrout and Fleiss 1979", (_, options, key) => {
    const result = intraclassCorrelation(ratings, options);
    expect(result.estimate).toBeCloseTo(judges.at(`icc${key}`), 13);
    if (key.endsWith("k")) return;
    expect(result).toMatchObject({
      interval: {
        low: expect.closeTo(judges.at(`ci${key}_lo`), 11),
        high: expect.closeTo(judges.at(`ci${key}_hi`), 11),
      },
    });
  });

  it("steps from single to average limits as from single to average estimates", () => {
    const single = intraclassCorrelation(ratings, { model: "two-way random", type: "consistency", unit: "single" });
    const average = intraclassCorrelation(ratings, { model: "two-way random", type: "consistency", unit: "average" });
    if (single.estimate === null || average.estimate === null || !("low" in single.interval))
      throw new Error("estimable");
    const step = (value: number): number => (4 * value) / (1 + 3 * value);
    expect(average).toMatchObject({
      estimate: expect.closeTo(step(single.estimate), 13),
      interval: {
        low: expect.closeTo(step(single.interval.low), 13),
        high: expect.closeTo(step(single.interval.high), 13),
      },
    });
  });

  test("mean squares are those of R's aov on other readings", async () => {
    const given = meanSquares("test", angles)!;
    const [images, raters, residual, one] = await r(`{
      y <- c(${angles.flat().join(",")}); i <- gl(30, 3); j <- gl(3, 1, 90)
      a <- summary(aov(y ~ i + j))[[1]][["Mean Sq"]]; b <- summary(aov(y ~ i))[[1]][["Mean Sq"]]
      c(a, b[2]) }`);
    expect(given.betweenImages / images!).toBeCloseTo(1, 11);
    expect(given.betweenRaters / raters!).toBeCloseTo(1, 11);
    expect(given.residual / residual!).toBeCloseTo(1, 11);
    expect(given.withinImages / one!).toBeCloseTo(1, 11);
  });

  it("covers absolute agreement about as stated", () => {
    // 50 radiographs, 3 raters: variances 4 between, 0.5 raters, 1 residual, so the truth is 4/5.5.
    const stream = random(11);
    const normal = (sd: number): number => sd * normalQuantile((stream.uniform() * 2 ** 53 + 0.5) / 2 ** 53);
    let covered = 0;
    const studies = 600;
    for (let study = 0; study < studies; study++) {
      const raters = [0, 1, 2].map(() => normal(Math.SQRT1_2));
      const rows = Array.from({ length: 50 }, () => {
        const image = normal(2);
        return raters.map((rater) => image + rater + normal(1));
      });
      const { interval } = intraclassCorrelation(rows, cases[1]![1]) as { interval: { low: number; high: number } };
      if (interval.low <= 4 / 5.5 && 4 / 5.5 <= interval.high) covered++;
    }
    // Satterthwaite with three raters is a little short of 0.95.
    expect(covered / studies).toBeGreaterThan(0.9);
    expect(covered / studies).toBeLessThan(0.985);
  });

  it("says why there is no estimate or no limits", () => {
    const options = cases[1]![1];
    expect(
      intraclassCorrelation(
        [
          [1, 2],
          [3, null],
        ],
        options,
      ),
    ).toMatchObject({
      estimate: null,
      because: "fewer than two radiographs were measured by every rater",
    });
    expect(
      intraclassCorrelation(
        [
          [4, 4],
          [4, 4],
        ],
        options,
      ),
    ).toMatchObject({
      estimate: null,
      because: "all readings are the same, so radiographs and raters cannot be told apart",
    });
    for (const [, each] of cases)
      expect(
        intraclassCorrelation(
          [
            [4, 4],
            [5, 5],
          ],
          each,
        ),
      ).toMatchObject({
        estimate: 1,
        interval: { estimate: null, because: "the raters never differed, so there is no error to build limits from" },
      });
    expect(
      intraclassCorrelation(
        [
          [1, 1],
          [2, 2],
          [4, null],
        ],
        options,
      ),
    ).toMatchObject({ images: 2, incomplete: 1 });
  });

  it("refuses an unnamed model and one-way consistency", () => {
    expect(() => intraclassCorrelation(ratings, { type: "consistency", unit: "single" } as never)).toThrow(
      new TypeError(
        'intraclassCorrelation: model must be one of one-way random, two-way random, two-way mixed, got "undefined"',
      ),
    );
    expect(() =>
      intraclassCorrelation(ratings, { model: "one-way random", type: "consistency", unit: "single" }),
    ).toThrow(new TypeError("intraclassCorrelation: one-way random knows only absolute agreement, got consistency"));
  });
});

describe("measurement error", () => {
  it("is the root of the residual, or of rater and residual variance together", () => {
    // Shrout and Fleiss 1979: residual 1.01944, raters (32.48611 - 1.01944)/6.
    const residual = judges.at("EMS");
    const withRaters = (judges.at("JMS") - residual) / 6 + residual;
    expect(measurementError(ratings, { type: "consistency" })).toMatchObject({
      estimate: expect.closeTo(Math.sqrt(residual), 12),
      df: 15,
      smallestDetectableChange: expect.closeTo(1.959963984540054 * Math.sqrt(2 * residual), 11),
    });
    expect(measurementError(ratings, { type: "agreement" })).toMatchObject({
      estimate: expect.closeTo(Math.sqrt(withRaters), 12),
    });
  });

  test("its limits are R's chi-square limits", async () => {
    const result = measurementError(ratings, { type: "consistency" });
    const [low, high] = await r(`sqrt(15 * ${judges.at("EMS")} / qchisq(c(0.975, 0.025), 15))`);
    expect(result).toMatchObject({ interval: { low: expect.closeTo(low!, 10), high: expect.closeTo(high!, 10) } });
  });

  it("counts rater differences as none when they are below chance", () => {
    const rows = [
      [1, 2],
      [2, 1],
      [5, 6],
      [6, 5],
    ];
    const [one, two] = (["agreement", "consistency"] as const).map((type) => measurementError(rows, { type }));
    expect(one).toMatchObject({ estimate: two!.estimate });
  });

  it("says when radiographs are too few, and refuses an unknown type", () => {
    expect(measurementError([[1, 2]], { type: "agreement" })).toEqual({
      estimate: null,
      because: "fewer than two radiographs were measured by every rater",
    });
    expect(() => measurementError(ratings, { type: "both" as never })).toThrow(
      new TypeError('measurementError: type must be one of agreement, consistency, got "both"'),
    );
  });
});

describe("within-subject standard deviation", () => {
  test("Bland and Altman 1986: repeatability of the two meters, which they take as 2 SD of the differences", () => {
    // Their coefficient uses the squared differences without the mean: 2 sqrt(sum d^2 / n) = 2 sqrt(2) s_w.
    const repeat = (rows: number[][]): number => 2 * Math.SQRT2 * withinSubjectSd(rows).estimate!;
    expect(repeat(mini)).toBeCloseTo(flow.at("cr_mini"), 12);
    expect(repeat(large)).toBeCloseTo(flow.at("cr_large"), 12);
  });

  it("takes any number of repeats and leaves single readings out", () => {
    expect(withinSubjectSd([[1, 3], [5], [2, 2, null, 5], [null, 7]])).toMatchObject({ images: 2, readings: 5, df: 3 });
    expect(withinSubjectSd([[1], [null, 2]])).toEqual({ estimate: null, because: "no radiograph has two readings" });
    expect(
      withinSubjectSd([
        [2, 2],
        [3, 3],
      ]),
    ).toMatchObject({ estimate: 0, interval: { low: 0, high: 0 } });
  });
});

describe("limits of agreement", () => {
  test("Bland and Altman 1986: peak flow, with their 2 SD", () => {
    const share = 2 * normalCdf(2) - 1;
    const result = blandAltman(firsts(large), firsts(mini), { share });
    expect(result).toMatchObject({
      n: 17,
      bias: {
        estimate: expect.closeTo(flow.at("mean"), 12),
        interval: { low: expect.closeTo(flow.at("bias_lo"), 10), high: expect.closeTo(flow.at("bias_hi"), 10) },
      },
      standardDeviation: expect.closeTo(flow.at("sd"), 12),
      lower: {
        estimate: expect.closeTo(flow.at("loa_lo"), 10),
        approximate: { low: expect.closeTo(flow.at("lo_lo"), 9), high: expect.closeTo(flow.at("lo_hi"), 9) },
      },
      upper: {
        estimate: expect.closeTo(flow.at("loa_hi"), 10),
        approximate: { low: expect.closeTo(flow.at("hi_lo"), 9), high: expect.closeTo(flow.at("hi_hi"), 9) },
      },
    });
  });

  test("exact limits are R's noncentral t", async () => {
    const result = blandAltman(firsts(large), firsts(mini));
    if (!("upper" in result)) throw new Error("estimable");
    const expected = await r(`{
      m <- ${flow.at("mean")}; s <- ${flow.at("sd")}; n <- 17; z <- qnorm(0.975)
      u <- m + qt(c(0.025, 0.975), n - 1, z * sqrt(n)) * s / sqrt(n)
      c(2 * m - rev(u), u) }`);
    const found = [result.lower.exact.low, result.lower.exact.high, result.upper.exact.low, result.upper.exact.high];
    // R's own noncentral t quantile stops at about 1e-8 relative.
    found.forEach((value, k) => expect(value / expected[k]!).toBeCloseTo(1, 7));
  });

  it("says why there are none", () => {
    expect(blandAltman([1, null], [2, 3])).toEqual({
      estimate: null,
      because: "fewer than two radiographs were measured twice",
    });
    expect(blandAltman([1, 2, 3], [0, 1, 2])).toEqual({
      estimate: null,
      because: "all differences are the same (1), so there is no spread to set limits by",
    });
    expect(() => blandAltman([1], [1, 2])).toThrow(
      new RangeError("blandAltman: both measurements must have the same radiographs, got 1 and 2"),
    );
    expect(() => blandAltman([1, 2], [1, 2], { share: 1 })).toThrow(
      new RangeError("blandAltman: share must lie between 0 and 1, got 1"),
    );
  });
});

describe("limits of agreement with repeats", () => {
  test("the variance is R's: between radiographs plus within", async () => {
    const rows = Array.from({ length: 20 }, (_, i) =>
      Array.from({ length: 2 + (i % 3) }, (_unused, j) => Math.sin(i * 5 + 1) * 3 + Math.cos(i * j + j)),
    );
    const result = blandAltmanRepeated(rows);
    if (!("bias" in result)) throw new Error("estimable");
    const [bias, within, total] = await r(`{
      y <- c(${rows.flat().join(",")}); g <- rep(1:20, c(${rows.map((row) => row.length).join(",")}))
      m <- tapply(y, g, mean); k <- tapply(y, g, length)
      w <- summary(aov(y ~ factor(g)))[[1]][["Mean Sq"]][2]
      c(mean(m), sqrt(w), sqrt(var(as.numeric(m)) + (1 - mean(1 / k)) * w)) }`);
    expect(result.bias).toBeCloseTo(bias!, 11);
    expect(result.withinStandardDeviation).toBeCloseTo(within!, 11);
    expect(result.standardDeviation).toBeCloseTo(total!, 11);
  });

  it("covers the true limit about as stated", () => {
    // 25 radiographs, 3 pairs each: between 1, within 0.5, so the upper limit is 1.96 sqrt(1.5).
    const stream = random(5);
    const normal = (sd: number): number => sd * normalQuantile((stream.uniform() * 2 ** 53 + 0.5) / 2 ** 53);
    const truth = 1.959963984540054 * Math.sqrt(1.5);
    const studies = 1500;
    let covered = 0;
    for (let study = 0; study < studies; study++) {
      const rows = Array.from({ length: 25 }, () => {
        const image = normal(1);
        return [0, 1, 2].map(() => image + normal(Math.SQRT1_2));
      });
      const result = blandAltmanRepeated(rows);
      if (!("upper" in result)) throw new Error("estimable");
      if (result.upper.interval.low <= truth && truth <= result.upper.interval.high) covered++;
    }
    expect(covered / studies).toBeGreaterThan(0.93);
    expect(covered / studies).toBeLessThan(0.97);
  });

  it("says why there are none, and refuses a radiograph without differences", () => {
    expect(blandAltmanRepeated([[1, 2]])).toMatchObject({ estimate: null });
    expect(blandAltmanRepeated([[1], [2]])).toEqual({ estimate: null, because: "no radiograph has repeated pairs" });
    expect(
      blandAltmanRepeated([
        [1, 1],
        [1, 1],
      ]),
    ).toMatchObject({ estimate: null });
    expect(() => blandAltmanRepeated([[1], []])).toThrow(
      new RangeError("blandAltmanRepeated: radiograph 2 must have at least one difference, got none"),
    );
  });
});

describe("proportional bias", () => {
  let expected: number[] = [];
  beforeAll(async () => {
    expected = await r(`{
      a <- c(${firsts(large).join(",")}); b <- c(${firsts(mini).join(",")})
      f <- lm(I(a - b) ~ I((a + b) / 2)); c(coef(f)[2], confint(f)[2, ], summary(f)$coefficients[2, 4], coef(f)[1]) }`);
  });

  test("is R's regression of the difference on the mean", () => {
    expect(proportionalBias(firsts(large), firsts(mini))).toMatchObject({
      slope: {
        estimate: expect.closeTo(expected[0]!, 12),
        interval: { low: expect.closeTo(expected[1]!, 11), high: expect.closeTo(expected[2]!, 11) },
      },
      p: expect.closeTo(expected[3]!, 11),
      intercept: expect.closeTo(expected[4]!, 9),
    });
  });

  it("says why there is none", () => {
    expect(proportionalBias([1, 2], [1, 3])).toMatchObject({ estimate: null });
    expect(proportionalBias([1, 2, 3], [3, 2, 1])).toEqual({
      estimate: null,
      because: "all means are the same, so there is no slope",
    });
    expect(proportionalBias([2, 4, 6], [1, 3, 5])).toMatchObject({ slope: { estimate: 0 }, p: 1 });
  });
});
