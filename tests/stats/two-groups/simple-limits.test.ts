import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { agrestiCaffo } from "../../../src/stats/two-groups/agresti-caffo.js";
import { conventionNote } from "../../../src/stats/two-groups/convention-note.js";
import { katz } from "../../../src/stats/two-groups/katz.js";
import { numberNeededToTreat, reciprocals } from "../../../src/stats/two-groups/number-needed-to-treat.js";
import { expectRelative } from "../../relative.js";
import { worked } from "../../worked.js";
import { groups, twoGroups } from "./groups.js";

describe("published examples", () => {
  test("epinephrine (Fagerland, Lydersen, Laake 2015): Agresti-Caffo and Katz", () => {
    const data = groups(7, 34, 1, 34);
    worked("B-fagerland2015-perondi", "acaffo_lo").check(agrestiCaffo(data).interval.low);
    worked("B-fagerland2015-perondi", "acaffo_hi").check(agrestiCaffo(data).interval.high);
    worked("B-fagerland2015-perondi", "katz_lo").check(katz(data).interval.low!);
    worked("B-fagerland2015-perondi", "katz_hi").check(katz(data).interval.high!);
  });
  test("Physicians' Health Study (Agresti 2007): risk ratio, its upper limit 2.306 printed as 2.30", () => {
    const { estimate, interval } = katz(groups(189, 11034, 104, 11037));
    worked("B-agresti-aspirin", "rr").check(estimate!);
    worked("B-agresti-aspirin", "rr_lo").check(interval.low!);
    worked("B-agresti-aspirin", "rr_hi").check(interval.high!);
    worked("B-agresti-aspirin", "diff").check(agrestiCaffo(groups(189, 11034, 104, 11037)).estimate);
  });
  test("number needed to treat when the interval of the difference holds 0 (Altman 1998)", () => {
    const [harm, benefit] = reciprocals({ low: -0.05, high: 0.25 });
    worked("B-altman1998-nnt", "nnth").check(harm!.high);
    worked("B-altman1998-nnt", "nntb").check(benefit!.low);
    expect([harm!.low, benefit!.high]).toEqual([-Infinity, Infinity]);
    worked("B-altman1998-nnt", "nnt").check(numberNeededToTreat(groups(6, 10, 5, 10)).estimate);
  });
  test("number needed to treat, 9.6% against 2.8% (Sackett 1993): 14.7, printed rounded up as 15", () => {
    const { estimate } = numberNeededToTreat(groups(96, 1000, 28, 1000));
    worked("B-dcct-nnt", "nnt").check(estimate);
    worked("B-dcct-nnt", "arr").check(100 / estimate);
  });
});

describe("number needed to treat", () => {
  it("is one range of reciprocals in order, or two that meet at infinity", () => {
    fc.assert(
      fc.property(twoGroups(60), (data) => {
        const { estimate, difference, ranges } = numberNeededToTreat(data);
        expect(ranges).toHaveLength(difference.low < 0 && difference.high > 0 ? 2 : 1);
        for (const { low, high } of ranges) expect(low).toBeLessThanOrEqual(high);
        const inside = ranges.some(
          ({ low, high }) => low <= estimate * (1 + 1e-12) && estimate <= high * (1 + 1e-12) + 1e-12,
        );
        if (Number.isFinite(estimate) && estimate > 0) expect(inside).toBe(true);
      }),
    );
  });
  it("is infinite when the groups do not differ", () => {
    expect(numberNeededToTreat(groups(1, 2, 2, 4)).estimate).toBe(Infinity);
  });
  it("keeps the open end where a limit is exactly 0", () => {
    expect(reciprocals({ low: 0, high: 0.5 })).toEqual([{ low: 2, high: Infinity }]);
    expect(reciprocals({ low: -0.5, high: 0 })).toEqual([{ low: -Infinity, high: -2 }]);
  });
});

describe("note on conventions", () => {
  it("speaks up where Fisher's p is below 0.05 and the exact limits hold 1, as for 16/31 against 8/32", () => {
    const note = conventionNote(groups(16, 31, 8, 32));
    expect(note.pointProbability).toBeLessThan(0.05);
    expect(note.doubled).toBeGreaterThan(0.05);
    expect(note.oddsRatioInterval.low).toBeLessThan(1);
    expect(note.because).toMatch(/^the p value sums the tables no likelier than the observed one in both tails, /);
  });
  it("never parts the doubled p from the limits, and is silent where the default p goes with them", () => {
    fc.assert(
      fc.property(twoGroups(60), fc.constantFrom(0.8, 0.9, 0.95), (data, level) => {
        const { doubled, pointProbability, oddsRatioInterval, because } = conventionNote(data, { level });
        const excludes = oddsRatioInterval.low > 1 || oddsRatioInterval.high < 1;
        expect(doubled < 1 - level).toBe(excludes);
        expect(because === undefined).toBe(pointProbability < 1 - level === excludes);
      }),
    );
  });
});

describe("edges", () => {
  it("has no Katz limits without a success in both groups", () => {
    const because = "a group had no success, so the standard error of the log risk ratio is not defined";
    expect(katz(groups(0, 5, 2, 9))).toMatchObject({ estimate: 0, interval: { low: null, high: null, because } });
    expect(katz(groups(2, 5, 0, 9))).toMatchObject({
      estimate: Infinity,
      interval: { low: null, high: null, because },
    });
    expect(katz(groups(0, 5, 0, 9))).toMatchObject({ estimate: null });
  });
  it("shrinks Katz to the estimate when every case was a success", () => {
    expect(katz(groups(5, 5, 9, 9)).interval).toEqual({ low: 1, high: 1 });
  });
  it("inverts Katz when the groups change places", () => {
    const { low, high } = katz(groups(7, 34, 1, 34)).interval;
    const other = katz(groups(1, 34, 7, 34)).interval;
    expectRelative(other.low!, 1 / high!, 1e-12, "low");
    expectRelative(other.high!, 1 / low!, 1e-12, "high");
  });
  it("refuses impossible counts, levels and options by name", () => {
    for (const [name, statistic] of Object.entries({ agrestiCaffo, katz, numberNeededToTreat, conventionNote })) {
      expect(() => statistic(groups(0, 0, 1, 2))).toThrow(
        new RangeError(`${name}: first.trials must be an integer of at least 1, got 0`),
      );
      expect(() => statistic(groups(1, 2, 1, 2), { level: NaN })).toThrow(
        new RangeError(
          `${name === "numberNeededToTreat" ? "newcombe" : name}: level must lie between 0 and 1, got NaN`,
        ),
      );
      expect(() => statistic(groups(1, 2, 1, 2), { z: 2 } as object)).toThrow(TypeError);
    }
  });
});
