import { expect, it } from "vitest";
import { logistic } from "../../../src/stats/models/logistic.js";
import { numbers } from "../../numbers.js";
import { r } from "../../r.js";

const next = numbers(41);

it("200 random designs: separation exactly where R's glm runs away, else its estimates, errors and deviances", async () => {
  const designs = Array.from({ length: 200 }, () => {
    const size = next(8, 24);
    const draw = (low: number, high: number) => Array.from({ length: size }, () => next(low, high));
    return { y: draw(0, 1), a: draw(0, 1), b: draw(0, 3), c: draw(-20, 40) };
  });
  const list = (of: "y" | "a" | "b" | "c") => `list(${designs.map((d) => `c(${d[of].join()})`).join()})`;
  const answers = await r(`unlist(Map(function(y, a, b, c) {
      g <- suppressWarnings(glm(y ~ a + b + c, family = binomial, control = glm.control(epsilon = 1e-15, maxit = 60)))
      s <- summary(g)$coefficients
      if (nrow(s) < 4) rep(NA, 10) else c(s[, 1], s[, 2], g$deviance, g$null.deviance) },
    ${list("y")}, ${list("a")}, ${list("b")}, ${list("c")}))`);
  let [separated, compared] = [0, 0];
  designs.forEach(({ y, a, b, c }, at) => {
    const covariates = [
      { name: "a", values: a },
      { name: "b", values: b },
      { name: "c", values: c },
    ];
    const fit = logistic({ successes: y, covariates }, { eventsPerCovariate: 0.01 });
    const answer = answers.slice(10 * at, 10 * at + 10);
    if (!("coefficients" in fit)) {
      // Along a separating direction each step of R's scoring adds about 1 to the linear predictor: errors explode.
      if (!Number.isNaN(answer[0]!)) expect(Math.max(...answer.slice(4, 8)), fit.because).toBeGreaterThan(100);
      if ("separation" in fit) separated++;
      return;
    }
    compared++;
    fit.coefficients.forEach(({ estimate, standardError }, j) => {
      expect(Math.abs(estimate - answer[j]!)).toBeLessThan(1e-8 * Math.max(1, Math.abs(answer[j]!)));
      // R takes its errors one step before the end.
      expect(Math.abs(standardError - answer[j + 4]!)).toBeLessThan(1e-6 * answer[j + 4]!);
    });
    expect(-2 * fit.logLikelihood).toBeCloseTo(answer[8]!, 8);
    expect(-2 * fit.logLikelihood + fit.likelihoodRatio.statistic).toBeCloseTo(answer[9]!, 8);
  });
  expect(separated).toBeGreaterThan(10);
  expect(compared).toBeGreaterThan(100);
});
