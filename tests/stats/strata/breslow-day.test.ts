import { expect, it, test } from "vitest";
import { breslowDay } from "../../../src/stats/strata/breslow-day.js";
import { r } from "../../r.js";
import { numbers } from "../../numbers.js";
import { worked, workedInput } from "../../worked.js";
import { strataOf } from "./strata-of.js";

test("smoking in eight Chinese cities (Agresti 2007, section 4.3.5): 5.2, p 0.64", () => {
  const { strata_rowwise } = workedInput<Record<string, number[][]>>("E-china-smoking");
  const result = breslowDay(strataOf(strata_rowwise!));
  worked("E-china-smoking", "bd").check(result.statistic!);
  worked("E-china-smoking", "bd_p").check(result.p!);
});

test("oesophageal cancer and alcohol (Breslow and Day 1980): 9.3 on 5 degrees of freedom", () => {
  const input = workedInput<Record<string, number[][]>>("E-ille-et-vilaine");
  const result = breslowDay(strataOf(input.strata_caseExp_ctrlExp_caseUn_ctrlUn!));
  worked("E-ille-et-vilaine", "bd").check(result.statistic!);
  expect(result).toMatchObject({ df: 5 });
});

it("equals the two formulas written out in R, with the fitted cell found by bisection, on 200 sets of strata", async () => {
  const random = numbers(3);
  const sets = Array.from({ length: 200 }, () =>
    Array.from({ length: 4 }, () => Array.from({ length: 4 }, () => 1 + random(0, 30))),
  );
  const values = await r(`
    apply(matrix(c(${sets.flat(2).join()}), nrow = 16), 2, function(v) {
      x <- matrix(v, nrow = 4); n <- colSums(x)
      psi <- sum(x[1, ] * x[4, ] / n) / sum(x[2, ] * x[3, ] / n)
      a <- sapply(1:4, function(k) { y <- x[, k]; n1 <- y[1] + y[2]; m1 <- y[1] + y[3]; n2 <- y[3] + y[4]
        f <- function(a) log(a) + log(n2 - m1 + a) - log(n1 - a) - log(m1 - a) - log(psi)
        lo <- max(0, m1 - n2); hi <- min(n1, m1); for (i in 1:200) { mid <- (lo + hi) / 2; if (f(mid) > 0) hi <- mid else lo <- mid }
        (lo + hi) / 2 })
      n1 <- x[1, ] + x[2, ]; m1 <- x[1, ] + x[3, ]; n2 <- x[3, ] + x[4, ]
      v <- 1 / (1 / a + 1 / (n1 - a) + 1 / (m1 - a) + 1 / (n2 - m1 + a))
      bd <- sum((x[1, ] - a)^2 / v); t <- bd - sum(x[1, ] - a)^2 / sum(v)
      c(bd, pchisq(bd, 3, lower.tail = FALSE), t, pchisq(t, 3, lower.tail = FALSE)) })`);
  sets.forEach((rows, i) => {
    const result = breslowDay(strataOf(rows));
    if (result.p === null) throw new Error("these strata have all cells");
    const ours = [result.statistic, result.p, result.tarone.statistic, result.tarone.p];
    ours.forEach((value, k) => expect(Math.abs(value - values[4 * i + k]!)).toBeLessThan(1e-9 * (1 + value)));
  });
});

it("leaves strata with an empty margin out", () => {
  const rows = [
    [14, 1, 1, 1],
    [10, 1, 2, 2],
    [2, 3, 4, 2],
  ];
  const { statistic, p } = breslowDay(strataOf(rows));
  expect(breslowDay(strataOf([...rows, [9, 0, 0, 0], [3, 0, 4, 0]]))).toMatchObject({ statistic, p, df: 2 });
});

it("says why homogeneity cannot be tested", () => {
  expect(breslowDay(strataOf([[1, 2, 3, 4]]))).toMatchObject({
    p: null,
    because: "homogeneity needs two strata with both groups and both outcomes, there is 1",
  });
  expect(
    breslowDay(
      strataOf([
        [1, 0, 3, 4],
        [2, 0, 3, 1],
      ]),
    ),
  ).toMatchObject({
    oddsRatio: Infinity,
    p: null,
    because: "the Mantel-Haenszel odds ratio is infinite, so no stratum can be fitted to it",
  });
});
