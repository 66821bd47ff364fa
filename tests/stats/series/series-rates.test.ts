import { expect, it } from "vitest";
import { seriesRates, type PublishedSeries } from "../../../src/stats/series/series-rates.js";
import { wilson } from "../../../src/stats/wilson.js";

const seriesOf = (
  name: string,
  rows: readonly (readonly [string, number | null, number | null])[],
): PublishedSeries => ({
  name,
  grades: rows.map(([grade, successes, cases]) => ({ grade, successes, cases })),
});

// Both invented.
const ours = seriesOf("ours", [
  ["I", 9, 9],
  ["II", 15, 16],
  ["III", 12, 15],
  ["IV", 6, 11],
]);
const other = seriesOf("other", [
  ["I", 24, 24],
  ["II", 17, 18],
  ["III", 6, 8],
  ["IV", 2, 4],
]);

it("brings each series to the mix of all together, computed directly", () => {
  const { series, mix, mixOf } = seriesRates([ours, other]);
  expect(mixOf).toBe("all series together");
  expect(mix.map(({ weight }) => weight)).toEqual([33, 34, 23, 15]);
  const direct = (33 * (24 / 24) + 34 * (17 / 18) + 23 * (6 / 8) + 15 * (2 / 4)) / 105;
  expect(series[1]!.standardised.estimate).toBeCloseTo(direct, 14);
  expect(series[1]!.crude).toMatchObject({ successes: 49, cases: 54, estimate: 49 / 54 });
});

it("gives a series its own crude rate back when its mix is its own", () => {
  const mix = ours.grades.map(({ grade, cases }) => ({ grade, weight: cases! }));
  const { series, mixOf } = seriesRates([ours, other], { mix });
  expect(mixOf).toBe("given");
  expect(series[0]!.standardised.estimate).toBeCloseTo(42 / 51, 14);
  const direct = (9 + 16 * (17 / 18) + 15 * (6 / 8) + 11 * (2 / 4)) / 51;
  expect(series[1]!.standardised.estimate).toBeCloseTo(direct, 14);
});

it("ignores grades outside the mix, whatever their order", () => {
  const { series } = seriesRates([ours], {
    mix: [
      { grade: "IV", weight: 1 },
      { grade: "I", weight: 1 },
    ],
  });
  expect(series[0]!.standardised.estimate).toBeCloseTo((1 + 6 / 11) / 2, 14);
});

it("keeps exact ends in series of none and of all", () => {
  const { series } = seriesRates([seriesOf("none", [["I", 0, 12]]), seriesOf("all", [["I", 12, 12]])]);
  expect(series[0]!.crude.interval!.low).toBe(0);
  expect(series[0]!.standardised.interval!.low).toBe(0);
  expect(series[1]!.crude.interval!.high).toBe(1);
  expect(series[1]!.standardised.interval!.high).toBe(1);
});

it("answers for a series of one case as Wilson does", () => {
  const { series } = seriesRates([seriesOf("single", [["II", 1, 1]])]);
  expect(series[0]!.crude).toMatchObject({ estimate: 1, interval: wilson(1, 1).interval });
});

it("says which grade is missing, and still counts the rest", () => {
  const { series } = seriesRates([
    ours,
    seriesOf("few", [
      ["I", 3, 4],
      ["II", 0, 0],
    ]),
  ]);
  expect(series[1]!.crude).toMatchObject({ successes: 3, cases: 4, estimate: 0.75 });
  expect(series[1]!.grades[1]).toMatchObject({ estimate: null, interval: null, because: "there are no cases" });
  expect(series[1]!.standardised).toMatchObject({
    estimate: null,
    interval: null,
    because: "the series has no cases of grade II, III, IV, which the mix holds",
  });
});

it("says what a paper does not state, and leaves it out of the common mix only", () => {
  const { series, mix } = seriesRates([
    ours,
    seriesOf("unstated", [
      ["I", 3, null],
      ["II", null, 5],
      ["III", null, null],
      ["IV", 1, 2],
    ]),
  ]);
  expect(mix.map(({ weight }) => weight)).toEqual([9, 21, 15, 13]);
  expect(series[1]!.grades.map((one) => (one.estimate === null ? one.because : one.estimate))).toEqual([
    "cases are not stated",
    "successes are not stated",
    "counts are not stated",
    0.5,
  ]);
  expect(series[1]!.crude).toMatchObject({ successes: null, cases: null, estimate: null });
  expect(series[1]!.standardised).toMatchObject({
    estimate: null,
    because: "the counts of grade I, II, III, which the mix holds, are not stated",
  });
});

it("takes forty series", () => {
  const forty = Array.from({ length: 40 }, (_, i) =>
    seriesOf(`series ${i}`, [
      ["I", 10, 10 + i],
      ["II", i, 40],
    ]),
  );
  const { series } = seriesRates(forty);
  expect(series).toHaveLength(40);
  for (const { standardised } of series) {
    expect(standardised.estimate).toBeGreaterThan(standardised.interval!.low - 1e-15);
    expect(standardised.estimate).toBeLessThanOrEqual(standardised.interval!.high);
  }
});

it("has no common mix when no series has a case", () => {
  const { series, mix } = seriesRates([seriesOf("empty", [["I", 0, 0]])]);
  expect(mix).toEqual([{ grade: "I", weight: 0, share: 0 }]);
  expect(series[0]!.standardised).toMatchObject({ estimate: null, because: "the mix holds no cases" });
});

it("refuses wrong counts and mixes by name", () => {
  const refuse = (series: PublishedSeries, message: string, mix?: { grade: string; weight: number }[]): void =>
    expect(() => seriesRates([series], mix ? { mix } : {})).toThrow(new RangeError(`seriesRates: ${message}`));
  refuse(seriesOf("A", [["I", 3, 2]]), 'successes of series "A", grade "I" must be at most its cases (2), got 3');
  refuse(
    seriesOf("A", [["I", 0.5, 2]]),
    'successes of series "A", grade "I" must be an integer of at least 0 or null, got 0.5',
  );
  refuse(
    seriesOf("A", [
      ["I", 1, 2],
      ["I", 1, 2],
    ]),
    'series "A" must hold grade "I" once, got it twice',
  );
  refuse(ours, 'the mix must hold grades of the series (I, II, III, IV), got "V"', [{ grade: "V", weight: 1 }]);
  refuse(ours, 'the weight of grade "I" must be a number of at least 0, got -1', [{ grade: "I", weight: -1 }]);
});
