import { betaQuantile } from "../../../src/numeric/beta.js";
import { binomialCdf } from "../../../src/numeric/binomial.js";
import { hypergeometricCdf } from "../../../src/numeric/hypergeometric.js";
import { noncentralTCdf } from "../../../src/numeric/noncentral-t.js";
import { normalQuantile } from "../../../src/numeric/normal.js";
import { studentTQuantile } from "../../../src/numeric/student-t.js";
import type { BenchTask } from "../task.js";

export const tasks: readonly BenchTask[] = [
  { name: "normal quantile", ours: () => normalQuantile(0.975), r: "qnorm(0.975)" },
  { name: "t quantile, 9.5 df", ours: () => studentTQuantile(0.975, 9.5), r: "qt(0.975, 9.5)" },
  { name: "beta quantile", ours: () => betaQuantile(0.025, { a: 21, b: 3 }), r: "qbeta(0.025, 21, 3)" },
  {
    name: "binomial tail, 1,000 trials",
    ours: () => binomialCdf(230, { trials: 1000, probability: 0.25 }),
    r: "pbinom(230, 1000, 0.25)",
  },
  {
    name: "hypergeometric tail, 1,000 items",
    ours: () => hypergeometricCdf(120, { population: 1000, successes: 430, drawn: 300 }),
    r: "phyper(120, 430, 570, 300)",
  },
  {
    name: "noncentral t tail",
    ours: () => noncentralTCdf(2.1, { df: 18, noncentrality: 1.7 }),
    r: "pt(2.1, 18, 1.7)",
    goal: 5000,
  },
];
