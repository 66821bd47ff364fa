import { describe, expect, it, test } from "vitest";
import { imagesForIcc } from "../../../src/stats/agreement-size/images-for-icc.js";
import { imagesForKappa } from "../../../src/stats/agreement-size/images-for-kappa.js";
import { simulateKappaWidth } from "../../../src/stats/agreement-size/simulate-kappa-width.js";
import { cohenKappa } from "../../../src/stats/agreement/cohen-kappa.js";
import { r } from "../../r.js";

const even = { shares: [0.25, 0.25, 0.25, 0.25], kappa: 0.6, raters: 2 };

describe("images for kappa", () => {
  test("with two grades equals the variance of the intraclass kappa", () => {
    // Bloch and Kraemer 1989, Biometrics 45:269-287: (1-k)[(1-k)(1-2k) + k(2-k)/(2 p(1-p))].
    for (const p of [0.5, 0.3, 0.1])
      for (const kappa of [0, 0.4, 0.8]) {
        const { spread } = imagesForKappa({ shares: [p, 1 - p], kappa, raters: 2 }, { width: 0.2 });
        const variance = (1 - kappa) * ((1 - kappa) * (1 - 2 * kappa) + (kappa * (2 - kappa)) / (2 * p * (1 - p)));
        expect(spread ** 2).toBeCloseTo(variance, 12);
      }
  });

  it("gives the width that the interval of the expected table has", () => {
    // Two raters, even shares: cells k/4 + (1-k)/16 on the diagonal, (1-k)/16 beside it, times 1,600.
    const table = even.shares.map((_, i) => even.shares.map((_unused, j) => (i === j ? 240 + 40 : 40)));
    const kappa = cohenKappa(table);
    if (kappa.estimate === null) throw new Error("estimable");
    expect(kappa.estimate).toBeCloseTo(0.6, 12);
    const { spread } = imagesForKappa(even, { width: 0.2 });
    expect(kappa.standardError * Math.sqrt(kappa.n)).toBeCloseTo(spread, 10);
  });

  it("needs fewer radiographs with more raters, and more when one grade is rare", () => {
    const images = (model: Parameters<typeof imagesForKappa>[0]) => imagesForKappa(model, { width: 0.2 }).images;
    expect(images({ ...even, raters: 4 })).toBeLessThan(images(even));
    expect(images({ ...even, shares: [0.85, 0.05, 0.05, 0.05] })).toBeGreaterThan(images(even));
  });

  it("promises a width that simulated studies find, with intervals that hold", () => {
    const { images } = imagesForKappa({ ...even, raters: 3 }, { width: 0.25 });
    const found = simulateKappaWidth({ ...even, raters: 3 }, { images, studies: 600 });
    expect(Math.abs(found.meanWidth / 0.25 - 1)).toBeLessThan(0.05);
    expect(found.coverage).toBeGreaterThan(0.92);
    expect(found.coverage).toBeLessThan(0.975);
    expect(found.ninthWidth).toBeGreaterThan(found.meanWidth);
  });
});

describe("images for the intraclass correlation", () => {
  test("Bonett 2002: two raters, 0.8, width 0.2 need 51, and 55 with the correction for two raters", () => {
    // As quoted from the paper by a public page on planning (ptenklooster.nl).
    expect(imagesForIcc({ icc: 0.8, raters: 2 }, { width: 0.2 }).images).toBe(55);
  });

  test("Bonett 2002 gives about the width of F limits at the planned value", async () => {
    for (const [icc, raters, width] of [
      [0.6, 3, 0.25],
      [0.8, 4, 0.15],
      [0.9, 2, 0.1],
    ] as const) {
      const { images } = imagesForIcc({ icc, raters }, { width });
      const [low, high] = await r(`{
        n <- ${images}; k <- ${raters}; f <- (1 + (k - 1) * ${icc}) / (1 - ${icc})
        a <- f / qf(0.975, n - 1, n * (k - 1)); b <- f * qf(0.975, n * (k - 1), n - 1)
        c((a - 1) / (a + k - 1), (b - 1) / (b + k - 1)) }`);
      expect(Math.abs((high! - low!) / width - 1)).toBeLessThan(0.08);
    }
  });
});

describe("wrong plans", () => {
  it("are refused with the rule", () => {
    expect(() => imagesForKappa({ ...even, shares: [0.5, 0.4] }, { width: 0.2 })).toThrow(
      new RangeError("imagesForKappa: shares must be at least two numbers above 0 that add to 1, got 0.5, 0.4"),
    );
    expect(() => imagesForKappa({ ...even, kappa: 1 }, { width: 0.2 })).toThrow(
      new RangeError("imagesForKappa: kappa must be at least 0 and below 1, got 1"),
    );
    expect(() => imagesForKappa({ ...even, raters: 1 }, { width: 0.2 })).toThrow(
      new RangeError("imagesForKappa: raters must be an integer from 2 to 8, got 1"),
    );
    expect(() => imagesForIcc({ icc: 0.5, raters: 3 }, { width: 0 })).toThrow(
      new RangeError("imagesForIcc: width must lie between 0 and 1, got 0"),
    );
    expect(() => simulateKappaWidth(even, { images: 1 })).toThrow(
      new RangeError("simulateKappaWidth: images must be an integer of at least 2, got 1"),
    );
  });
});
