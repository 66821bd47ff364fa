import { expect, it } from "vitest";
import { betaByMoments } from "../../../src/stats/belief/beta-by-moments.js";
import { betaCurve } from "../../../src/stats/belief/beta-curve.js";
import { betaUpdate } from "../../../src/stats/belief/beta-update.js";
import { r } from "../../r.js";

it("has the mean and the variance of the guesses, for rooms of every kind", () => {
  for (const guesses of [
    [0.25, 0.5, 0.75],
    [0.7, 0.8, 0.8, 0.8, 0.9, 1],
    [0, 0.1, 0.1, 0.3],
    [0.5, 0.6],
  ]) {
    const found = betaByMoments(guesses);
    if ("because" in found) throw new Error(found.because);
    const { a, b } = found;
    const mean = guesses.reduce((sum, one) => sum + one, 0) / guesses.length;
    const variance = guesses.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (guesses.length - 1);
    expect(a / (a + b)).toBeCloseTo(mean, 12);
    expect((a * b) / ((a + b) ** 2 * (a + b + 1))).toBeCloseTo(variance, 12);
  }
});

it("says why there is no curve: nobody, one hand, all equal, only the two ends", () => {
  expect(betaByMoments([])).toMatchObject({ estimate: null, because: "one guess has no spread" });
  expect(betaByMoments([0.8])).toMatchObject({ estimate: null, because: "one guess has no spread" });
  expect(betaByMoments([0.8, 0.8, 0.8])).toMatchObject({ because: "all guesses are equal, so they have no spread" });
  expect(betaByMoments([0, 1, 0, 1])).toMatchObject({
    because: "the guesses lie so far apart that no beta curve has their spread",
  });
  expect(() => betaByMoments([1.2, 0.5])).toThrow(
    new RangeError("betaByMoments: guesses must lie from 0 to 1, got 1.2"),
  );
});

it("is updated as R's beta quantiles have it, at every level and count", async () => {
  const cases = [0.5, 1, 4.2].flatMap((a) =>
    [0.5, 2.5, 9].flatMap((b) =>
      [0, 3, 7].flatMap((successes) => [0.5, 0.95].map((level) => ({ a, b, successes, level }))),
    ),
  );
  const limits = await r(
    `c(${cases
      .map(({ a, b, successes, level }) => {
        const [first, second] = [a + successes, b + 7 - successes];
        return `qbeta(${(1 - level) / 2}, ${first}, ${second}), qbeta(${(1 - level) / 2}, ${first}, ${second}, lower.tail = FALSE)`;
      })
      .join(", ")})`,
  );
  for (const [i, { a, b, successes, level }] of cases.entries()) {
    const { after } = betaUpdate({ a, b }, { successes, trials: 7 }, { level });
    expect(Math.abs(after.interval.low / limits[2 * i]! - 1)).toBeLessThan(1e-8);
    expect(Math.abs(after.interval.high / limits[2 * i + 1]! - 1)).toBeLessThan(1e-8);
    expect(after.mean).toBeCloseTo((a + successes) / (a + b + 7), 14);
  }
});

it("refuses a shape that is none", () => {
  expect(() => betaUpdate({ a: 0, b: 1 }, { successes: 1, trials: 2 })).toThrow(
    new RangeError("betaUpdate: a must be a number above 0, got 0"),
  );
  expect(() => betaCurve({ a: 1, b: 1 }, 1)).toThrow(
    new RangeError("betaCurve: steps must be an integer from 2 to 10000, got 1"),
  );
});

it("draws a curve that holds an area of 1 and R's density", async () => {
  const points = betaCurve({ a: 2.5, b: 4 }, 200);
  expect(points.reduce((sum, { density }) => sum + density / 200, 0)).toBeCloseTo(1, 3);
  const [density] = await r(`dbeta(${points[60]!.x}, 2.5, 4)`);
  expect(points[60]!.density).toBeCloseTo(density!, 10);
});
