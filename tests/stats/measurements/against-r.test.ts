import { expect, it } from "vitest";
import { hodgesLehmannPaired } from "../../../src/stats/measurements/hodges-lehmann-paired.js";
import { hodgesLehmannShift } from "../../../src/stats/measurements/hodges-lehmann-shift.js";
import { meanDifference } from "../../../src/stats/measurements/mean-difference.js";
import { pairedMeanDifference } from "../../../src/stats/measurements/paired-mean-difference.js";
import { medianInterval } from "../../../src/stats/measurements/median-interval.js";
import { rankSum } from "../../../src/stats/measurements/rank-sum.js";
import { severalGroups } from "../../../src/stats/measurements/several-groups.js";
import { signedRank } from "../../../src/stats/measurements/signed-rank.js";
import { numbers } from "../../numbers.js";
import { r } from "../../r.js";
import { expectRelative } from "../../relative.js";

const next = numbers(20261124);
const sample = (size: number, low: number, high: number, decimals = 0): number[] =>
  Array.from({ length: size }, () => Number((next(low, high) / 10 ** decimals).toFixed(decimals)));
/** Distinct values, and distinct differences and Walsh averages almost surely, so that R uses its exact limits. */
const untied = (size: number): number[] => Array.from({ length: size }, () => next(1, 1e9) / 1e6);
const list = (groups: readonly (readonly number[])[]): string =>
  `list(${groups.map((values) => `c(${values.join()})`).join()})`;
const estimable = <Result extends object>(result: Result): Exclude<Result, { estimate: null }> => {
  expect((result as { estimate?: unknown }).estimate).not.toBeNull();
  return result as Exclude<Result, { estimate: null }>;
};
const tests = `function(x, y, ...) { o <- function(a) suppressWarnings(wilcox.test(x, y, alternative = a, ...))$p.value
  c(o("less"), o("greater"), o("two.sided")) }`;

it("300 rank-sum tests with many ties equal R's exact ones (1e-12), and its corrected approximation", async () => {
  const pairs = Array.from({ length: 300 }, () => [sample(next(1, 12), 0, 9), sample(next(1, 12), 0, 9)] as const);
  const used = pairs.filter(([x, y]) => new Set([...x, ...y]).size > 1);
  const [xs, ys] = [list(used.map(([x]) => x)), list(used.map(([, y]) => y))];
  const exact = await r(`f <- ${tests}; unlist(Map(function(x, y) f(x, y, exact = TRUE), ${xs}, ${ys}))`);
  const normal = await r(`f <- ${tests}; unlist(Map(function(x, y) f(x, y, exact = FALSE), ${xs}, ${ys}))`);
  used.forEach(([first, second], at) => {
    const { p, normal: approximate } = estimable(rankSum({ first, second })) as Extract<
      ReturnType<typeof rankSum>,
      { p: unknown }
    >;
    const of = `${first.join()} v ${second.join()}`;
    expectRelative(p.less, exact[3 * at]!, 1e-12, of);
    expectRelative(p.greater, exact[3 * at + 1]!, 1e-12, of);
    expectRelative(approximate.corrected.less, normal[3 * at]!, 1e-10, of);
    expectRelative(approximate.corrected.greater, normal[3 * at + 1]!, 1e-10, of);
    expect(
      [p.doubled, p.distance].some((value) => Math.abs(value - exact[3 * at + 2]!) < 1e-12),
      of,
    ).toBe(true);
  });
});

it("300 signed-rank tests with ties equal R's exact ones (1e-12), and its corrected approximation", async () => {
  const all = Array.from({ length: 300 }, () => sample(next(1, 25), -7, 9).filter((value) => value !== 0));
  const used = all.filter((differences) => differences.length > 0);
  const code = (exact: string): string =>
    `f <- ${tests}; unlist(lapply(${list(used)}, function(x) f(x, NULL, exact = ${exact})))`;
  const [exact, normal] = [await r(code("TRUE")), await r(code("FALSE"))];
  used.forEach((differences, at) => {
    const { p, normal: approximate } = estimable(signedRank(differences)) as Extract<
      ReturnType<typeof signedRank>,
      { p: unknown }
    >;
    const of = differences.join();
    expectRelative(p.less, exact[3 * at]!, 1e-12, of);
    expectRelative(p.greater, exact[3 * at + 1]!, 1e-12, of);
    expectRelative(p.doubled, exact[3 * at + 2]!, 1e-12, of);
    expectRelative(p.distance, p.doubled, 1e-9, of);
    expectRelative(approximate.corrected.less, normal[3 * at]!, 1e-10, of);
    expectRelative(approximate.corrected.greater, normal[3 * at + 1]!, 1e-10, of);
  });
});

it("600 Hodges-Lehmann shifts, paired and unpaired, equal R's exact estimates and limits", async () => {
  const groups = Array.from({ length: 300 }, () => [untied(next(4, 20)), untied(next(4, 20))] as const);
  const code = `unlist(Map(function(x, y) { w <- wilcox.test(x, y, conf.int = TRUE, exact = TRUE); c(w$estimate, w$conf.int) },
    ${list(groups.map(([x]) => x))}, ${list(groups.map(([, y]) => y))}))`;
  const unpaired = await r(code);
  groups.forEach(([first, second], at) => {
    const { estimate, interval } = estimable(hodgesLehmannShift({ first, second }));
    [estimate!, interval.low, interval.high].forEach((value, i) =>
      expectRelative(value, unpaired[3 * at + i]!, 1e-9, `${first.length} v ${second.length}`),
    );
  });
  const series = Array.from({ length: 300 }, () => untied(next(6, 40)));
  const paired = await r(
    `unlist(lapply(${list(series)}, function(x) { w <- wilcox.test(x, conf.int = TRUE, exact = TRUE); c(w$estimate, w$conf.int) }))`,
  );
  series.forEach((differences, at) => {
    const { estimate, interval } = hodgesLehmannPaired(differences);
    [estimate, interval.low, interval.high].forEach((value, i) =>
      expectRelative(value, paired[3 * at + i]!, 1e-9, `${differences.length}`),
    );
  });
});

it("300 t comparisons, Welch, pooled and paired, equal R's t.test (1e-10)", async () => {
  const groups = Array.from({ length: 300 }, () => {
    const size = next(2, 20);
    return [sample(size, 0, 1500, 1), sample(size, 0, 1800, 1)] as const;
  });
  const answers = await r(`unlist(Map(function(x, y) {
      o <- function(t) c(t$statistic, t$parameter, t$p.value, t$conf.int, t$stderr)
      c(o(t.test(x, y)), o(t.test(x, y, var.equal = TRUE)), o(t.test(x, y, paired = TRUE))) },
    ${list(groups.map(([x]) => x))}, ${list(groups.map(([, y]) => y))}))`);
  groups.forEach(([first, second], at) => {
    const both = estimable(meanDifference({ first, second })) as Extract<
      ReturnType<typeof meanDifference>,
      { welch: unknown }
    >;
    const paired = pairedMeanDifference(first.map((value, i) => value - second[i]!));
    [both.welch, both.pooled, paired.student].forEach((result, which) => {
      if (!("t" in result)) throw new Error(result.because);
      const { t, df, p, interval, standardError } = result;
      [t, df, p, interval.low, interval.high, standardError].forEach((value, i) => {
        const expected = answers[18 * at + 6 * which + i]!;
        // Near 0 a limit or t is a difference of large numbers, in R too.
        expect(Math.abs(value - expected), `${which} ${i}`).toBeLessThan(1e-10 * Math.max(1, Math.abs(expected)));
      });
    });
  });
});

it("100 tests of several groups with ties equal R's kruskal.test (1e-10)", async () => {
  const all = Array.from({ length: 100 }, () => Array.from({ length: next(2, 5) }, () => sample(next(1, 15), 0, 12)));
  const used = all.filter((groups) => new Set(groups.flat()).size > 1);
  const answers = await r(
    `unlist(lapply(list(${used.map(list).join()}), function(g) { k <- kruskal.test(g); c(k$statistic, k$p.value) }))`,
  );
  used.forEach((groups, at) => {
    const test = severalGroups(groups);
    if (!("p" in test)) throw new Error(test.because);
    expect(Math.abs(test.statistic - answers[2 * at]!)).toBeLessThan(1e-10 * Math.max(1, test.statistic));
    expectRelative(test.p, answers[2 * at + 1]!, 1e-9, `${at}`);
  });
});

it("300 medians and their ranks equal R's median and qbinom at four levels", async () => {
  const series = Array.from({ length: 75 }, () => sample(next(1, 60), 0, 500, 1));
  const levels = [0.6, 0.9, 0.95, 0.99];
  const answers = await r(
    `unlist(lapply(${list(series)}, function(x) c(median(x), sapply(c(${levels.join()}), function(l) qbinom((1 - l) / 2, length(x), 0.5)))))`,
  );
  series.forEach((values, at) =>
    levels.forEach((level, which) => {
      const { estimate, ranks } = medianInterval(values, { level });
      expect(estimate).toBeCloseTo(answers[5 * at]!, 12);
      const low = answers[5 * at + 1 + which]!;
      // A rank of 0 in R's quantile means that no pair of ranks reaches the level.
      expect(ranks).toEqual(low === 0 ? null : { low, high: values.length + 1 - low });
    }),
  );
});
