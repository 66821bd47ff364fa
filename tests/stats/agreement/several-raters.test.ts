import { describe, expect, it, test } from "vitest";
import { congerKappa } from "../../../src/stats/agreement/conger-kappa.js";
import { fleissKappa } from "../../../src/stats/agreement/fleiss-kappa.js";
import { gwetAc } from "../../../src/stats/agreement/gwet-ac.js";
import { agreeingWeights } from "../../../src/stats/agreement/agreeing-weights.js";
import { gwetSums } from "../../../src/stats/agreement/gwet-coefficient.js";
import { krippendorffAlpha } from "../../../src/stats/agreement/krippendorff-alpha.js";
import { alphaMetrics } from "../../../src/stats/agreement/alpha-coefficient.js";
import { raterPairs } from "../../../src/stats/agreement/rater-pairs.js";
import { cohenKappa } from "../../../src/stats/agreement/cohen-kappa.js";
import reference from "../../reference/agreement-library.json";
import { example } from "./examples.js";

type Readings = (number | null)[][];
const allWeights = ["unweighted", "linear", "quadratic"] as const;

/** A table of counts as one row a radiograph. */
const spelled = (table: number[][]): number[][] =>
  table.flatMap((row, a) => row.flatMap((count, b) => Array.from({ length: count }, () => [a, b])));

describe("published coefficients", () => {
  test("Fleiss 1971: 30 patients, six raters, five grades, each grade and the 1979 test", () => {
    const { input, at } = example("D-fleiss1971");
    const readings = (input.ratings as number[][]).map((row) => row.map((grade) => grade - 1));
    const result = fleissKappa({ grades: 5, readings });
    expect(result).toMatchObject({
      images: 30,
      raters: 6,
      estimate: expect.closeTo(at("kappa"), 13),
      observed: expect.closeTo(at("pbar"), 13),
      chance: expect.closeTo(at("pe"), 13),
      z: expect.closeTo(at("z79"), 11),
      grades: [1, 2, 3, 4, 5].map((grade) => ({ grade: grade - 1, estimate: expect.closeTo(at(`k${grade}`), 13) })),
    });
  });

  test("Krippendorff 2011, example C: four coders with gaps, four metrics", () => {
    const { input, at } = example("D-krippendorff2011-c");
    const coders = input.coders as Readings;
    const readings = coders[0]!.map((_, unit) => coders.map((coder) => coder[unit]!));
    for (const metric of alphaMetrics)
      expect(krippendorffAlpha(readings, { metric })).toMatchObject({
        estimate: expect.closeTo(at(metric), 13),
        readings: at("pairable"),
      });
  });

  test("Krippendorff 2011, example A: two coders, two values", () => {
    const { input, at } = example("D-krippendorff2011-a");
    const second = input.coder2 as number[];
    const readings = (input.coder1 as number[]).map((value, unit) => [value, second[unit]!]);
    for (const metric of ["nominal", "ordinal", "interval"] as const)
      expect(krippendorffAlpha(readings, { metric }).estimate).toBeCloseTo(at("nominal"), 13);
  });

  test("Gwet 2008: AC1 near observed agreement where kappa is below zero", () => {
    const { input, at } = example("D-gwet2008");
    expect(gwetAc({ grades: 2, readings: spelled(input.table as number[][]) })).toMatchObject({
      estimate: expect.closeTo(at("ac1"), 13),
      observed: expect.closeTo(at("po"), 13),
    });
  });
});

describe.each(reference.several)(`readings $number of ${reference.source}`, (given) => {
  it("give the alpha of the definition", () => {
    for (const metric of alphaMetrics) {
      const values = (given.readings as Readings).map((row) => row.map((grade) => (grade === null ? null : grade + 1)));
      expect(krippendorffAlpha(values, { metric }).estimate).toBeCloseTo(given.alpha[metric], 12);
    }
  });

  it("give the AC1 and AC2 of the definition, and a standard error that is the delta method's", () => {
    for (const weights of allWeights) {
      const result = gwetAc(given, { weights });
      if (result.estimate === null) throw new Error("estimable");
      expect(result.estimate).toBeCloseTo(given.gwet[weights], 12);
      const { coefficient } = gwetSums(given, agreeingWeights("test", given.grades, weights));
      const n = result.images;
      const { kindOf, times, value } = coefficient;
      let squares = 0;
      for (const kind of kindOf) {
        // A radiograph without a reading takes no part.
        if (given.readings[kindOf.indexOf(kind)]!.every((grade) => grade === null)) continue;
        const step = 1e-4;
        const more = times.slice();
        const less = times.slice();
        more[kind]! += step;
        less[kind]! -= step;
        squares += (((value(more) - value(less)) / (2 * step)) * n) ** 2;
      }
      // With gaps the printed variance does not take the paired radiographs for a random number: some percent apart.
      const complete = result.pairedImages === given.readings.length;
      const ratio = Math.sqrt(squares / (n - 1) / n) / result.standardError;
      expect(Math.abs(ratio - 1)).toBeLessThan(complete ? 1e-6 : 0.1);
    }
  });

  it("give Fleiss' and Conger's kappas of the library and of the definition, when complete", () => {
    if (!given.conger) {
      const complete = given.readings.filter((row) => row.every((grade) => grade !== null)).length;
      expect(fleissKappa(given)).toMatchObject({ images: complete, incomplete: given.readings.length - complete });
      return;
    }
    expect(fleissKappa(given).estimate).toBeCloseTo(given.fleiss, 12);
    for (const weights of allWeights)
      expect(congerKappa(given, { weights }).estimate).toBeCloseTo(given.conger[weights], 12);
  });
});

describe("two raters", () => {
  const table = [
    [12, 4, 0, 0],
    [5, 10, 4, 0],
    [0, 4, 9, 3],
    [0, 0, 2, 7],
  ];
  const given = { grades: 4, readings: spelled(table) };

  it("make Conger's kappa Cohen's, and the jackknife error near the large-sample one", () => {
    for (const weights of allWeights) {
      const [several, two] = [congerKappa(given, { weights }), cohenKappa(table, { weights })];
      if (several.estimate === null || two.estimate === null) throw new Error("estimable");
      expect(several.estimate).toBeCloseTo(two.estimate, 13);
      expect(several.standardError! / two.standardError).toBeGreaterThan(0.98);
      expect(several.standardError! / two.standardError).toBeLessThan(1.06);
    }
  });

  it("make quadratic kappa nearly the ordinal alpha's interval sibling", () => {
    // Alpha pools both raters' shares; with like margins and n = 60 the two differ in the third decimal.
    const alpha = krippendorffAlpha(given.readings, { metric: "interval" }).estimate!;
    expect(Math.abs(alpha - cohenKappa(table, { weights: "quadratic" }).estimate!)).toBeLessThan(0.005);
  });
});

describe("pairs of raters", () => {
  it("each use the radiographs both graded, and say so when there are none", () => {
    const readings = [
      [0, 0, null],
      [0, 1, null],
      [1, 1, null],
      [1, null, 1],
    ];
    const { pairs } = raterPairs({ grades: 2, readings });
    expect(pairs.map((pair) => [pair.raters, pair.crossTable.n, pair.crossTable.incomplete])).toEqual([
      [[0, 1], 3, 1],
      [[0, 2], 1, 3],
      [[1, 2], 0, 4],
    ]);
    expect(pairs[0]!.crossTable.members).toEqual([
      [[0], [1]],
      [[], [2]],
    ]);
    const because = "no radiograph was graded by both";
    expect(pairs[2]).toMatchObject({
      agreement: { estimate: null, because },
      withinOne: { estimate: null, because },
      kappa: { linear: { estimate: null, because } },
    });
  });
});

describe("degenerate readings", () => {
  const same = {
    grades: 3,
    readings: [
      [1, 1, 1],
      [1, 1, 1],
    ],
  };
  const lone = { grades: 3, readings: [[0, 1, 2]] };
  const gaps = {
    grades: 3,
    readings: [
      [0, null, null],
      [1, null, null],
      [null, null, null],
    ],
  };

  it("with one grade used by all: kappas and alpha say why, AC1 is 1", () => {
    expect(fleissKappa(same)).toMatchObject({ estimate: null, because: "only one grade was used" });
    expect(congerKappa(same)).toMatchObject({ estimate: null, because: "only one grade was used" });
    expect(krippendorffAlpha(same.readings, { metric: "ordinal" })).toMatchObject({
      estimate: null,
      because: "only one value was used",
    });
    expect(gwetAc(same)).toMatchObject({ estimate: 1, standardError: 0, interval: { low: 1, high: 1 } });
    expect(gwetAc({ grades: 1, readings: [[0, 0]] })).toMatchObject({
      estimate: null,
      because: "the scale has only one grade",
    });
  });

  it("with one radiograph: estimates, but no intervals", () => {
    const because = "one radiograph gives no spread";
    expect(fleissKappa(lone)).toMatchObject({
      estimate: expect.closeTo(-0.5, 13),
      interval: { estimate: null, because },
    });
    expect(gwetAc(lone)).toMatchObject({ estimate: expect.closeTo(-0.5, 13), interval: { estimate: null, because } });
    expect(congerKappa(lone)).toMatchObject({
      standardError: null,
      interval: {
        estimate: null,
        because: "without one radiograph the coefficient is undefined, so it has no jackknife error",
      },
    });
  });

  it("with raters missing everywhere: each says what it lacks", () => {
    const none = "no radiograph was graded by every rater";
    expect(fleissKappa(gaps)).toMatchObject({ estimate: null, because: none, images: 0, incomplete: 3 });
    expect(congerKappa(gaps)).toMatchObject({ estimate: null, because: none });
    expect(gwetAc(gaps)).toMatchObject({ estimate: null, because: "no radiograph has two readings", images: 2 });
    expect(krippendorffAlpha(gaps.readings, { metric: "nominal" })).toMatchObject({
      estimate: null,
      because: "no radiograph has two readings",
    });
  });

  it("a grade nobody gave has no kappa of its own", () => {
    const result = fleissKappa({
      grades: 3,
      readings: [
        [0, 0],
        [1, 1],
        [0, 1],
      ],
    });
    expect(result).toMatchObject({ grades: [{}, {}, { estimate: null, because: "no rater gave this grade" }] });
  });
});

describe("wrong calls", () => {
  it("name the radiograph and the rule", () => {
    expect(() =>
      fleissKappa({
        grades: 2,
        readings: [
          [0, 1],
          [0, 2],
        ],
      }),
    ).toThrow(new RangeError("fleissKappa: grade of radiograph 2 must be 0 to 1, got 2"));
    expect(() => gwetAc({ grades: 2, readings: [[0, 1], [0]] })).toThrow(
      new RangeError("gwetAc: every radiograph must have 2 places for readings, number 2 has 1"),
    );
    expect(() => congerKappa({ grades: 2, readings: [[0]] })).toThrow(
      new RangeError("congerKappa: there must be at least two raters, got 1"),
    );
    expect(() => krippendorffAlpha([], { metric: "nominal" })).toThrow(
      new RangeError("krippendorffAlpha: there must be at least one radiograph, got none"),
    );
    expect(() => krippendorffAlpha([[1, NaN]], { metric: "nominal" })).toThrow(
      new RangeError("krippendorffAlpha: reading of radiograph 1 must be a finite number, got NaN"),
    );
    expect(() => krippendorffAlpha([[1, -1]], { metric: "ratio" })).toThrow(
      new RangeError("krippendorffAlpha: ratio values must be at least 0, got a negative one"),
    );
    expect(() => krippendorffAlpha([[1, 1]], { metric: "circular" as never })).toThrow(
      new TypeError('krippendorffAlpha: metric must be one of nominal, ordinal, interval, ratio, got "circular"'),
    );
  });
});
