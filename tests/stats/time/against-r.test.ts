import { expect, it } from "vitest";
import { kaplanMeier } from "../../../src/stats/time/kaplan-meier.js";
import { logRank } from "../../../src/stats/time/log-rank.js";
import { numbers } from "../../numbers.js";
import { r } from "../../r.js";
import { expectRelative } from "../../relative.js";

const next = numbers(1958);
const draw = (size: number) => ({
  times: Array.from({ length: size }, () => next(1, 20)),
  events: Array.from({ length: size }, () => next(0, 2) > 0),
});
const vector = (values: readonly (number | boolean)[]): string => `c(${values.map(Number).join()})`;

it("100 curves equal the product, Greenwood and log-log formulas evaluated by R", async () => {
  const all = Array.from({ length: 100 }, () => draw(next(2, 40)));
  const answers = await r(`f <- function(t, e) { u <- sort(unique(t)); n <- sapply(u, function(s) sum(t >= s))
      d <- sapply(u, function(s) sum(t == s & e == 1)); s <- cumprod(1 - d / n); g <- sqrt(cumsum(d / (n * (n - d))))
      k <- exp(qnorm(0.975) * g / log(s)); c(s, s * g, s^(1 / k), s^k) }
    unlist(Map(f, list(${all.map(({ times }) => vector(times)).join()}), list(${all.map(({ events }) => vector(events)).join()})))`);
  let at = 0;
  for (const durations of all) {
    const result = kaplanMeier(durations);
    if ("estimate" in result) throw new Error(result.because);
    const size = result.steps.length;
    result.steps.forEach((step, i) => {
      const of = `${durations.times.join()} ${step.time}`;
      const [survival, error, low, high] = [0, 1, 2, 3].map((which) => answers[at + which * size + i]!);
      expect(Math.abs(step.survival - survival!), of).toBeLessThan(1e-14);
      if (step.standardError !== null) expectRelative(step.standardError, error!, 1e-12, of);
      if (step.interval === null) return expect(survival === 1 || survival! < 1e-15).toBe(true);
      expectRelative(step.interval.low, low!, 1e-10, of);
      expectRelative(step.interval.high, high!, 1e-10, of);
    });
    at += 4 * size;
  }
});

it("log-rank of two and three groups equals R's Mantel-Haenszel test over the event times", async () => {
  const all = Array.from({ length: 60 }, (_, round) =>
    Array.from({ length: 2 + (round % 2) }, () => draw(next(5, 25))),
  );
  const code = all.map((groups) => {
    const times = groups.flatMap((group) => group.times);
    const events = groups.flatMap((group) => group.events);
    const label = groups.flatMap((group, index) => group.times.map(() => index));
    return `f(${vector(times)}, ${vector(events)}, ${vector(label)})`;
  });
  // Times at which one case is left at risk carry no information and make strata of size 1, which R refuses.
  const answers =
    await r(`f <- function(t, e, g) { u <- sort(unique(t[e == 1])); u <- u[sapply(u, function(s) sum(t >= s)) > 1]
      a <- sapply(u, function(s) table(factor(g[t >= s], 0:max(g)), factor((t == s & e == 1)[t >= s], c(TRUE, FALSE))))
      a <- array(a, c(max(g) + 1, 2, length(u)))
      m <- mantelhaen.test(a, correct = FALSE); c(m$statistic, m$p.value) }
    c(${code.join()})`);
  all.forEach((groups, index) => {
    const test = logRank(groups);
    if (!("statistic" in test)) throw new Error(test.because);
    expect(Math.abs(test.statistic - answers[2 * index]!)).toBeLessThan(1e-9 * Math.max(1, test.statistic));
    expectRelative(test.p, answers[2 * index + 1]!, 1e-8, `${index}`);
  });
});
