import { describe, expect, it, test } from "vitest";
import { cohenKappa } from "../../../src/stats/agreement/cohen-kappa.js";
import { kappaBootstrap } from "../../../src/stats/agreement/kappa-bootstrap.js";
import { kappaPermutation } from "../../../src/stats/agreement/kappa-permutation.js";
import library from "../../reference/kappa-bootstrap.json";
import reference from "../../reference/kappa-permutation.json";

const table = [
  [12, 4, 0, 0],
  [5, 10, 4, 0],
  [0, 4, 9, 3],
  [0, 0, 2, 7],
];
const all = ["unweighted", "linear", "quadratic"] as const;

test.each(reference.cases)(`permutation of $table equals: ${reference.source}`, (given) => {
  for (const weights of all) {
    const result = kappaPermutation(given.table, { weights });
    expect(result.method).toBe("exact permutation");
    if (result.estimate === null) throw new Error("estimable");
    expect(result.greater / given[weights].greater).toBeCloseTo(1, 12);
    expect(result.less / given[weights].less).toBeCloseTo(1, 12);
    expect(result.doubled).toBeCloseTo(Math.min(1, 2 * Math.min(given[weights].greater, given[weights].less)), 12);
  }
});

describe("permutation", () => {
  it("is exact for 60 radiographs in four grades and keeps tiny tails", () => {
    const result = kappaPermutation(table, { weights: "linear" });
    expect(result).toMatchObject({ method: "exact permutation", less: 1 });
    if (result.estimate === null) throw new Error("estimable");
    expect(result.greater).toBeGreaterThan(0);
    expect(result.greater).toBeLessThan(1e-12);
  });

  it("samples when tables are too many, agrees with the exact p and says so", () => {
    const large = table.map((row) => row.map((count) => count * 8 + 3));
    const mild = [
      [30, 24, 20, 26],
      [26, 28, 24, 22],
      [22, 24, 29, 25],
      [22, 24, 27, 27],
    ];
    expect(kappaPermutation(large, { permutations: 200 })).toMatchObject({
      method: "sampled permutation",
      permutations: 200,
      seed: 1,
      greater: 1 / 201,
    });
    const sampled = kappaPermutation(mild, { permutations: 4000, seed: 5 });
    const normal = cohenKappa(mild);
    if (sampled.estimate === null || normal.estimate === null || !("p" in normal.test)) throw new Error("estimable");
    // Monte Carlo error of a p near 0.05 with 4,000 draws is 0.0035, the normal approximation's much the same.
    expect(Math.abs(sampled.greater - normal.test.p / 2)).toBeLessThan(0.015);
  });

  it("says why when one grade was used, and is certain when one rater was constant", () => {
    expect(
      kappaPermutation([
        [0, 0],
        [0, 5],
      ]),
    ).toMatchObject({
      estimate: null,
      because: "both raters used only one and the same grade",
    });
    expect(
      kappaPermutation([
        [2, 0],
        [5, 0],
      ]),
    ).toMatchObject({ estimate: 0, greater: 1, less: 1, doubled: 1 });
  });
});

describe("BCa bootstrap", () => {
  it("lies near the large-sample interval at 60 radiographs and repeats with its seed", () => {
    for (const weights of all) {
      const result = kappaBootstrap(table, { weights, resamples: 4000, seed: 3 });
      const normal = cohenKappa(table, { weights });
      if (result.estimate === null || normal.estimate === null || !("low" in result.interval))
        throw new Error("estimable");
      expect(result.estimate).toBeCloseTo(normal.estimate, 12);
      expect(Math.abs(result.interval.low - normal.interval.low)).toBeLessThan(0.05);
      expect(Math.abs(result.interval.high - normal.interval.high)).toBeLessThan(0.05);
      expect(kappaBootstrap(table, { weights, resamples: 4000, seed: 3 })).toEqual(result);
    }
  });

  it(`equals ${library.source}, to Monte Carlo error`, () => {
    const result = kappaBootstrap(table, { weights: "quadratic", resamples: 20_000 });
    if (result.estimate === null || !("low" in result.interval)) throw new Error("estimable");
    expect(Math.abs(result.interval.low - library.low)).toBeLessThan(0.006);
    expect(Math.abs(result.interval.high - library.high)).toBeLessThan(0.006);
  });

  it("has no limits when every resample agrees fully, and counts undefined resamples", () => {
    expect(
      kappaBootstrap([
        [5, 0],
        [0, 5],
      ]),
    ).toMatchObject({
      estimate: 1,
      interval: { estimate: null, because: "every resample gave the same value" },
    });
    const rare = kappaBootstrap(
      [
        [20, 1],
        [0, 1],
      ],
      { resamples: 1000 },
    );
    if (rare.estimate === null) throw new Error("estimable");
    // A resample without the last two radiographs, about e^-2 of them, has one grade only.
    expect(rare.undefinedResamples).toBeGreaterThan(80);
    expect(rare.undefinedResamples).toBeLessThan(200);
    expect(
      kappaBootstrap([
        [0, 0],
        [0, 5],
      ]),
    ).toMatchObject({
      estimate: null,
      because: "the data leave this coefficient undefined",
    });
  });

  it("refuses too few resamples and seeds that are none", () => {
    expect(() => kappaBootstrap(table, { resamples: 50 })).toThrow(
      new RangeError("kappaBootstrap: resamples must be an integer of at least 100, got 50"),
    );
    expect(() => kappaBootstrap(table, { seed: -1 })).toThrow(RangeError);
  });
});
