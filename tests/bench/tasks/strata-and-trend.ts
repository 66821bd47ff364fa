import { exactCommonOddsRatio } from "../../../src/stats/strata/exact-common-odds-ratio.js";
import { exactHomogeneity } from "../../../src/stats/strata/exact-homogeneity.js";
import { mantelHaenszel } from "../../../src/stats/strata/mantel-haenszel.js";
import { cochranArmitage } from "../../../src/stats/trend/cochran-armitage.js";
import { exactTrend } from "../../../src/stats/trend/exact-trend.js";
import type { BenchTask } from "../task.js";

// Grades I to IV of the invented cohort; then closed against open treatment in grades II to IV.
const grades = [9, 15, 12, 6].map((successes, i) => ({ successes, trials: [9, 16, 15, 11][i]! }));
const many = grades.map(({ successes, trials }) => ({ successes: 20 * successes, trials: 20 * trials }));
const small = [
  [14, 1, 1, 0],
  [10, 1, 2, 2],
  [2, 3, 4, 2],
];
const large = small.map((cells) => cells.map((count) => 20 * count + 3));
const strataOf = (rows: readonly (readonly number[])[]) =>
  rows.map(([a, b, c, d]) => ({
    first: { successes: a!, trials: a! + b! },
    second: { successes: c!, trials: c! + d! },
  }));
const inR = (rows: readonly (readonly number[])[]): string =>
  `array(c(${rows.map(([a, b, c, d]) => [a, c, b, d].join()).join()}), c(2, 2, ${rows.length}))`;

const [few, more] = [strataOf(small), strataOf(large)];
export const tasks: readonly BenchTask[] = [
  {
    name: "trend, large samples, 4 grades",
    ours: () => cochranArmitage(grades).p!,
    r: "prop.trend.test(c(9, 15, 12, 6), c(9, 16, 15, 11))$p.value",
  },
  { name: "trend, exact, 4 grades, 51 cases", ours: () => exactTrend(grades).doubled! },
  { name: "trend, exact, 4 grades, 1,020 cases", ours: () => exactTrend(many).doubled! },
  {
    name: "Mantel-Haenszel, 3 strata",
    ours: () => mantelHaenszel(few).p!,
    r: `mantelhaen.test(${inR(small)}, correct = FALSE)$p.value`,
  },
  {
    name: "common odds ratio with exact limits, 3 strata, 42 cases",
    ours: () => exactCommonOddsRatio(few).p!,
    r: `mantelhaen.test(${inR(small)}, exact = TRUE)$p.value`,
  },
  {
    name: "common odds ratio with exact limits, 3 strata, 876 cases",
    ours: () => exactCommonOddsRatio(more).p!,
    r: `mantelhaen.test(${inR(large)}, exact = TRUE)$p.value`,
  },
  { name: "homogeneity, exact, 3 strata, 876 cases", ours: () => exactHomogeneity(more).p! },
];
