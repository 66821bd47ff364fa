// Two kappas of the same radiographs, and an observer's agreement with himself or herself against that with others.
import { describe, expect, it, test } from "vitest";
import { random } from "../../../src/numeric/random.js";
import { cohenKappa } from "../../../src/stats/agreement/cohen-kappa.js";
import { compareKappas } from "../../../src/stats/agreement/compare-kappas.js";
import { crossTable } from "../../../src/stats/agreement/cross-table.js";
import type { GradeReadings } from "../../../src/stats/agreement/grade-readings.js";
import { observerVariation } from "../../../src/stats/agreement/observer-variation.js";
import { r } from "../../r.js";

const grades = 4;
/** Columns that follow one truth, each right with its own chance. */
function drawn(seed: number, images: number, right: readonly number[]): GradeReadings {
  const stream = random(seed);
  const any = (): number => Math.floor(grades * stream.uniform());
  const readings = Array.from({ length: images }, () => {
    const truth = any();
    return right.map((chance) => (stream.uniform() < chance ? truth : any()));
  });
  return { grades, readings };
}
const tableOf = ({ readings }: GradeReadings, a: number, b: number) =>
  crossTable(
    readings.map((row) => row[a]!),
    readings.map((row) => row[b]!),
    { grades },
  ).table;
const numbers = ({ readings }: GradeReadings): string =>
  `matrix(c(${readings.flat().join(",")}), ncol = ${readings[0]!.length}, byrow = TRUE)`;

describe("two kappas of the same radiographs", () => {
  const given = drawn(5, 60, [0.9, 0.8, 0.6]);

  test.each(["unweighted", "linear", "quadratic"] as const)(
    "%s: each is Cohen's, and the error is that of R's numerical derivatives",
    async (weights) => {
      const found = compareKappas(given, { first: [0, 1], second: [0, 2], weights });
      if (found.estimate === null) throw new Error(found.because);
      const [one, two] = [tableOf(given, 0, 1), tableOf(given, 0, 2)].map((table) => cohenKappa(table, { weights }));
      expect(found.first).toBeCloseTo(one!.estimate!, 13);
      expect(found.second).toBeCloseTo(two!.estimate!, 13);
      const power = { unweighted: "(i != j)", linear: "abs(i - j)", quadratic: "(i - j)^2" }[weights];
      const [difference, error, p] = await r(`{
        x <- ${numbers(given)}; n <- nrow(x)
        i <- row(diag(${grades})); j <- col(i); d <- ${power} * 1
        kappa <- function(w, a, b) {
          t <- matrix(0, ${grades}, ${grades}); for (k in 1:n) t[x[k, a] + 1, x[k, b] + 1] <- t[x[k, a] + 1, x[k, b] + 1] + w[k]
          t <- t / sum(t); 1 - sum(d * t) / sum(d * outer(rowSums(t), colSums(t))) }
        both <- function(w) kappa(w, 1, 2) - kappa(w, 1, 3)
        w <- rep(1 / n, n); e <- 1e-5
        u <- sapply(1:n, function(k) { s <- -w; s[k] <- s[k] + 1; (both(w + e * s) - both(w - e * s)) / (2 * e) })
        se <- sqrt(sum(u^2)) / n; z <- both(w) / se
        c(both(w), se, 2 * pnorm(-abs(z))) }`);
      expect(found.estimate).toBeCloseTo(difference!, 12);
      // Central differences hold about nine digits.
      expect(found.standardError / error!).toBeCloseTo(1, 7);
      if ("p" in found.test) expect(found.test.p / p!).toBeCloseTo(1, 5);
    },
  );

  it("has the error of one kappa where the other is 1 for certain", () => {
    const twice: GradeReadings = { grades, readings: given.readings.map(([a, b]) => [a!, b!, a!]) };
    const found = compareKappas(twice, { first: [0, 1], second: [0, 2], weights: "linear" });
    const alone = cohenKappa(tableOf(given, 0, 1), { weights: "linear" });
    if (found.estimate === null || alone.estimate === null) throw new Error("not estimable");
    expect(found.second).toBe(1);
    expect(found.standardError).toBeCloseTo(alone.standardError, 13);
  });

  it("finds a difference between equal observers about as often as the level says", () => {
    let outside = 0;
    const studies = 600;
    for (let seed = 1; seed <= studies; seed++) {
      const found = compareKappas(drawn(seed, 80, [0.85, 0.7, 0.7]), { first: [0, 1], second: [0, 2] });
      if (found.estimate !== null && (found.interval.low > 0 || found.interval.high < 0)) outside++;
    }
    // Expected 30 of 600 at 95%; three binomial standard errors are 16.
    expect(outside).toBeGreaterThan(14);
    expect(outside).toBeLessThan(50);
  });

  it("leaves incomplete radiographs out, and says why there is no difference", () => {
    const gaps: GradeReadings = {
      grades: 2,
      readings: [
        [0, 1, null],
        [0, 0, 0],
        [1, 1, 1],
        [1, 0, 1],
      ],
    };
    expect(compareKappas(gaps, { first: [0, 1], second: [0, 2] })).toMatchObject({ images: 3, incomplete: 1 });
    expect(compareKappas({ grades: 2, readings: [[0, null, 1]] }, { first: [0, 1], second: [0, 2] })).toMatchObject({
      estimate: null,
      because: "no radiograph has all the readings compared",
    });
    const same = {
      grades: 2,
      readings: [
        [1, 1, 1],
        [1, 1, 0],
      ],
    };
    expect(compareKappas(same, { first: [0, 1], second: [0, 2] })).toMatchObject({
      estimate: null,
      because: "one of the kappas is undefined: only one and the same grade was used",
    });
    const none = compareKappas(
      {
        grades: 2,
        readings: [
          [0, 0, 0],
          [1, 1, 1],
        ],
      },
      { first: [0, 1], second: [0, 2] },
    );
    expect(none).toMatchObject({ estimate: 0, test: { because: "the readings leave the difference no spread" } });
  });

  it("refuses a column that is not there", () => {
    expect(() => compareKappas(given, { first: [0, 1], second: [0, 3] })).toThrow(
      new RangeError("compareKappas: a column must be 0 to 2, got 3"),
    );
  });
});

describe("an observer against himself or herself, and against others", () => {
  const given = drawn(8, 50, [0.9, 0.9, 0.7, 0.7]);
  const columns = [
    { rater: "A", occasion: 1 },
    { rater: "A", occasion: 2 },
    { rater: "B", occasion: 1 },
    { rater: "B", occasion: 2 },
  ];
  const options = { columns, resamples: 200 } as const;

  it("pairs the columns of one observer, and those of two on the same occasion", () => {
    const { intra, inter } = observerVariation(given, options);
    expect(intra.pairs).toEqual([
      [0, 1],
      [2, 3],
    ]);
    expect(inter.pairs).toEqual([
      [0, 2],
      [1, 3],
    ]);
  });

  it("is Cohen's kappa of the pair where there is one of a kind, and their difference", () => {
    const three: GradeReadings = { grades, readings: given.readings.map((row) => row.slice(0, 3)) };
    const found = observerVariation(three, { ...options, columns: columns.slice(0, 3), weights: "linear" });
    const kappa = (a: number, b: number): number => cohenKappa(tableOf(three, a, b), { weights: "linear" }).estimate!;
    expect(found.intra.kappa.estimate).toBeCloseTo(kappa(0, 1), 13);
    expect(found.inter.kappa.estimate).toBeCloseTo(kappa(0, 2), 13);
    expect(found.difference.estimate).toBeCloseTo(kappa(0, 1) - kappa(0, 2), 13);
  });

  it("pools pairs by the sums of observed and chance disagreement, as R does", async () => {
    const { intra, inter } = observerVariation(given, options);
    const [within, between] = await r(`{
      x <- ${numbers(given)}; share <- function(k) table(factor(x[, k], 0:${grades - 1})) / nrow(x)
      pool <- function(pairs) 1 - sum(sapply(pairs, function(p) mean(x[, p[1]] != x[, p[2]]))) /
        sum(sapply(pairs, function(p) 1 - sum(share(p[1]) * share(p[2]))))
      c(pool(list(c(1, 2), c(3, 4))), pool(list(c(1, 3), c(2, 4)))) }`);
    expect(intra.kappa.estimate).toBeCloseTo(within!, 12);
    expect(inter.kappa.estimate).toBeCloseTo(between!, 12);
  });

  it("repeats with its seed and says what the readings lack", () => {
    expect(observerVariation(given, options)).toEqual(observerVariation(given, options));
    const once = { grades, readings: given.readings.map(([a, , b]) => [a!, b!]) };
    const found = observerVariation(once, { ...options, columns: [columns[0]!, columns[2]!] });
    expect(found.intra.kappa).toEqual({ estimate: null, because: "no rater read on two occasions" });
    expect(found.difference).toEqual({ estimate: null, because: "it needs both kinds of pairs" });
    expect(() => observerVariation(given, { ...options, columns: [] })).toThrow(
      new RangeError("observerVariation: columns must describe 4 columns of readings, got 0"),
    );
  });
});
