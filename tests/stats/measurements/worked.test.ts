import { expect, it } from "vitest";
import { hodgesLehmannPaired } from "../../../src/stats/measurements/hodges-lehmann-paired.js";
import { hodgesLehmannShift } from "../../../src/stats/measurements/hodges-lehmann-shift.js";
import { medianInterval } from "../../../src/stats/measurements/median-interval.js";
import { pairedDifferences } from "../../../src/stats/measurements/paired-differences.js";
import { rankSum } from "../../../src/stats/measurements/rank-sum.js";
import { severalGroups } from "../../../src/stats/measurements/several-groups.js";
import { signedRank } from "../../../src/stats/measurements/signed-rank.js";
import { worked } from "../../worked.js";

// The data stand in tests/reference/worked-examples.json with their sources.
it("signed ranks of the depression scores: Hollander and Wolfe 1973, p. 29", () => {
  const before = [1.83, 0.5, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.3];
  const after = [0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29];
  const differences = pairedDifferences({ first: before, second: after });
  const test = signedRank(differences);
  if ("estimate" in test) throw new Error(test.because);
  const of = (key: string) => worked("I-depression", key);
  of("V").check(test.statistic);
  expect(test.distribution).toBe("exact");
  of("p_greater").check(test.p.greater);
  of("p_large").check(test.normal.plain.greater);
  const typical = hodgesLehmannPaired(differences);
  of("hl").check(typical.estimate);
  of("hl_lo").check(typical.interval.low);
  of("hl_hi").check(typical.interval.high);
  expect(typical.achieved).toBeCloseTo(0.961, 3);
});

it("rank sums of the chorioamnion: Hollander and Wolfe 1973, p. 69", () => {
  const first = [0.8, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46];
  const second = [1.15, 0.88, 0.9, 0.74, 1.21];
  const test = rankSum({ first, second });
  const shift = hodgesLehmannShift({ first, second });
  if (!("p" in test) || shift.estimate === null) throw new Error("must be estimable");
  const of = (key: string) => worked("I-chorioamnion", key);
  of("W").check(test.statistic);
  of("p_greater").check(test.p.greater);
  of("p_large").check(test.normal.plain.greater);
  of("hl").check(shift.estimate);
  of("hl_lo").check(shift.interval.low);
  of("hl_hi").check(shift.interval.high);
  expect(shift.achieved).toBeCloseTo(0.96, 3);
});

it("ranks of the exact 95% limits of a median: Campbell and Gardner 1988, and the sign-test table", () => {
  for (const n of [6, 10, 20, 100]) {
    const { ranks, interval } = medianInterval(Array.from({ length: n }, (_, index) => index + 1));
    worked("I-median-ranks", `lo_${n}`).check(ranks!.low);
    worked("I-median-ranks", `hi_${n}`).check(ranks!.high);
    expect(interval).toEqual(ranks);
  }
  const { achieved } = medianInterval([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  worked("I-median-ranks", "conf_10").check(100 * achieved);
  for (let n = 1; n <= 5; n++) {
    const result = medianInterval(Array.from({ length: n }, (_, index) => index));
    expect(result.interval).toEqual({ low: -Infinity, high: Infinity });
    expect(result.ranks).toBeNull();
    expect(result.because).toBe(`no pair of ranks covers as much as the level with ${n} value${n === 1 ? "" : "s"}`);
  }
});

it("mucociliary efficiency in three groups: Hollander and Wolfe 1973, p. 116", () => {
  const test = severalGroups([
    [2.9, 3.0, 2.5, 2.6, 3.2],
    [3.8, 2.7, 4.0, 2.4],
    [2.8, 3.4, 3.7, 2.2, 2.0],
  ]);
  if (!("p" in test)) throw new Error(test.because);
  worked("I-mucociliary", "H").check(test.statistic);
  worked("I-mucociliary", "p").check(test.p);
});
