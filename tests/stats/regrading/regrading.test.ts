import { describe, expect, it, test } from "vitest";
import { cutRoom } from "../../../src/stats/regrading/cut-room.js";
import { regradingChances } from "../../../src/stats/regrading/regrading-chances.js";
import { successUnderRegrading } from "../../../src/stats/regrading/success-under-regrading.js";
import { r } from "../../r.js";

const cuts = [100 / 3, 200 / 3, 100];
const values = [12, 31, 33, 35, 40, 52, 64, 67, 70, 85, 99, 104, 118];

describe("chance of another grade", () => {
  test("a measurement of 35% at the cut of one third, error 5: 37% (and 9% at 40%)", () => {
    // By R: Phi(-(35 - 33.33)/5) = 0.369, Phi(-(40 - 33.33)/5) = 0.091.
    const { cases } = regradingChances([35, 40], { cuts: [100 / 3], error: 5 });
    expect(cases[0]!.changed).toBeCloseTo(0.36944134, 7);
    expect(cases[1]!.changed).toBeCloseTo(0.09121122, 7);
  });

  test("chances of every grade, expected number and exact range are R's", async () => {
    const result = regradingChances(values, { cuts, error: 6, comparedWith: "another reading" });
    const found = await r(`{
      x <- c(${values.join(",")}); k <- c(-Inf, ${cuts.join(",")}, Inf); s <- 6 * sqrt(2)
      p <- sapply(x, function(v) diff(pnorm(k, v, s))); g <- findInterval(x, k, left.open = TRUE)
      q <- 1 - p[cbind(g, seq_along(x))]
      d <- 1; for (z in q) d <- c(d * (1 - z), 0) + c(0, d * z)
      c(p, sum(q), which(cumsum(d) >= 0.025)[1] - 1, which(cumsum(d) >= 0.975)[1] - 1) }`);
    const chances = result.cases.flatMap(({ grades }) => grades);
    chances.forEach((chance, k) => expect(chance).toBeCloseTo(found[k]!, 12));
    expect(result.grades.expected).toBeCloseTo(found[chances.length]!, 11);
    expect(result.grades.range).toEqual({ low: found[chances.length + 1], high: found[chances.length + 2] });
  });

  test("angles cut at 30 and 60 degrees, 80 dividing the last grade (common practice, no source)", async () => {
    const angles = [12, 28, 31, 45, 58, 60, 66, 79, 81, 95];
    const treatments = ["closed", "closed", "open", "open"];
    const three = regradingChances(angles, { cuts: [30, 60, 80], error: 4, treatments });
    const two = regradingChances(angles, { cuts: [30, 60], error: 4 });
    const found = await r(`{
      x <- c(${angles.join(",")}); of <- function(k) { k <- c(-Inf, k, Inf); g <- findInterval(x, k, left.open = TRUE)
        1 - (pnorm((k[g + 1] - x) / 4) - pnorm((k[g] - x) / 4)) }
      c(of(c(30, 60, 80)), of(c(30, 60)), of(60)) }`);
    const changed = [...three.cases, ...two.cases].map((one) => one.changed);
    // Treatment changes at 60 alone.
    const treated = three.cases.map((one) => one.treatmentChanged);
    [...changed, ...treated].forEach((chance, k) => expect(chance).toBeCloseTo(found[k]!, 12));
    expect(three.cases.map(({ grade }) => grade)).toEqual([0, 0, 1, 1, 1, 1, 2, 2, 3, 3]);
    expect(two.cases.map(({ grade }) => grade)).toEqual([0, 0, 1, 1, 1, 1, 2, 2, 2, 2]);
  });

  it("keeps tiny chances of far grades", () => {
    const { cases } = regradingChances([10], { cuts: [100], error: 5 });
    // P(Z > 18) = 9.74094891893715e-73 (DLMF 7.12.1 summed at high precision).
    expect(cases[0]!.changed / 9.74094891893715e-73).toBeCloseTo(1, 10);
  });

  it("changes fewer treatments than grades when grades share one", () => {
    const { grades, treatments } = regradingChances(values, {
      cuts,
      error: 6,
      treatments: ["closed", "closed", "closed", "open"],
    });
    expect(treatments.expected).toBeLessThan(grades.expected);
    expect(treatments.expected).toBeGreaterThan(0);
  });

  it("puts a value at the cut in the grade below", () => {
    expect(regradingChances([30, 30.1], { cuts: [30, 60], error: 1 }).cases.map(({ grade }) => grade)).toEqual([0, 1]);
  });

  it("refuses cuts that do not rise, an error of 0, and too few treatments", () => {
    expect(() => regradingChances([1], { cuts: [2, 2], error: 1 })).toThrow(
      new RangeError("regradingChances: cuts must be at least one finite number, rising, got 2, 2"),
    );
    expect(() => regradingChances([1], { cuts: [2], error: 0 })).toThrow(
      new RangeError("regradingChances: error must be above 0, got 0"),
    );
    expect(() => regradingChances([1], { cuts: [2], error: 1, treatments: ["open"] })).toThrow(
      new RangeError("regradingChances: treatments must name one for each of 2 grades, got 1"),
    );
    expect(() => regradingChances([], { cuts: [2], error: 1 })).toThrow(
      new RangeError("regradingChances: there must be at least one measurement, got none"),
    );
    expect(() => regradingChances([1, NaN], { cuts: [2], error: 1 })).toThrow(
      new RangeError("regradingChances: measurement 2 must be a finite number, got NaN"),
    );
  });
});

describe("success under regrading", () => {
  const cases = values.map((value, k) => ({ value, success: value < 60 || k % 2 === 0 }));

  it("is the observed success without error, and repeats with its seed", () => {
    const still = successUnderRegrading(cases, { cuts, error: 0, simulations: 100 });
    for (const grade of still.grades) {
      const rate = grade.successes / grade.trials;
      expect(grade.simulated).toEqual({ estimate: rate, range: { low: rate, high: rate }, used: 100 });
      expect(grade.simulatedTrials).toEqual({ median: grade.trials, range: { low: grade.trials, high: grade.trials } });
    }
    const one = successUnderRegrading(cases, { cuts, error: 6, seed: 8 });
    expect(successUnderRegrading(cases, { cuts, error: 6, seed: 8 })).toEqual(one);
  });

  it("puts as many cases into a grade as the chances say", () => {
    const { grades } = successUnderRegrading(cases, { cuts, error: 6, simulations: 4000 });
    const { cases: chances } = regradingChances(values, { cuts, error: 6 });
    grades.forEach(({ simulatedTrials }, k) => {
      const expected = chances.reduce((sum, each) => sum + each.grades[k]!, 0);
      expect(Math.abs(simulatedTrials.median - expected)).toBeLessThan(1);
    });
  });

  it("says when no grading reaches a grade", () => {
    const { grades } = successUnderRegrading([{ value: 1, success: true }], { cuts: [50], error: 1, simulations: 100 });
    expect(grades[1]).toMatchObject({
      trials: 0,
      simulated: { estimate: null, because: "no simulated grading put a case in this grade" },
    });
  });
});

describe("room of a cut", () => {
  // Cases with success 1,1,0,1,0,0 from the lowest up: the group above the cut fares worse until 0 of 1 or so.
  const outcome = [1, 1, 0, 1, 0, 0];
  const measured = [10, 20, 30, 40, 50, 60];
  const conclude = (grades: readonly number[]): string => {
    const rate = (place: number): number => {
      const inside = outcome.filter((_, k) => grades[k] === place);
      return inside.length === 0 ? NaN : inside.reduce((sum, each) => sum + each, 0) / inside.length;
    };
    return rate(0) - rate(1) > 0.5 ? "much better below" : "not much better below";
  };

  it("finds the nearest change on either side, by trying every position", () => {
    // By hand: cut 25: 2/2 v 1/4; 35: 2/3 v 1/3; 45: 3/4 v 0/2; 55: 3/5 v 0/1; 15: 1/1 v 2/5.
    const result = cutRoom(measured, { cuts: [25], cut: 0, conclude });
    expect(result.conclusion).toBe("much better below");
    expect(result.up).toEqual({ changesAt: 30, becomes: "not much better below" });
    expect(result.down).toEqual({ changesAt: 10, becomes: "not much better below" });
  });

  it("equals a fine scan", () => {
    for (const start of [15, 25, 35, 45, 55]) {
      const result = cutRoom(measured, { cuts: [start], cut: 0, conclude });
      const at = (position: number): string => conclude(measured.map((value) => (value > position ? 1 : 0)));
      const scan = (step: number): number | null => {
        for (let position = start; position > -5 && position < 75; position += step)
          if (at(position) !== result.conclusion) return position;
        return null;
      };
      const [up, down] = [scan(0.5), scan(-0.5)];
      expect(result.up.changesAt).toBe(up);
      expect(result.down.changesAt).toBe(down === null ? null : down + 0.5);
    }
  });

  it("stays between its neighbours and says when nothing changes", () => {
    const same = cutRoom(measured, { cuts: [5, 25, 45], cut: 1, conclude: () => "same" });
    expect(same.up).toEqual({ changesAt: null, becomes: null });
    expect(same.down).toEqual({ changesAt: null, becomes: null });
    expect(() => cutRoom(measured, { cuts: [25], cut: 1, conclude })).toThrow(
      new RangeError("cutRoom: cut must be 0 to 0, got 1"),
    );
  });
});
