import { expect, it, test } from "vitest";
import { chiSquareTwoGroups, type ChiSquareTest } from "../../../src/stats/two-groups/chi-square-two-groups.js";
import { numbers } from "../../numbers.js";
import { r } from "../../r.js";
import { expectRelative } from "../../relative.js";
import { groups } from "./groups.js";

type Tests = Record<"pearson" | "yates" | "nMinus1", ChiSquareTest>;

test("equals R's prop.test, plain and corrected, on 500 random tables; N - 1 is the plain one times (N - 1)/N", async () => {
  const random = numbers(1900);
  const tables = Array.from({ length: 500 }, () => {
    const m = random(2, 300);
    const n = random(2, 300);
    return [random(1, m - 1), m, random(0, n), n] as const;
  });
  const expected = await r(`
    m <- matrix(c(${tables.flat().join(",")}), nrow = 4)
    suppressWarnings(apply(m, 2, function(v) {
      plain <- prop.test(v[c(1, 3)], v[c(2, 4)], correct = FALSE)
      yates <- prop.test(v[c(1, 3)], v[c(2, 4)])
      n1 <- plain$statistic * (v[2] + v[4] - 1) / (v[2] + v[4])
      c(plain$statistic, plain$p.value, yates$statistic, yates$p.value, n1, pchisq(n1, 1, lower.tail = FALSE)) }))`);
  tables.forEach(([a, m, c, n], i) => {
    const ours = chiSquareTwoGroups(groups(a, m, c, n)) as unknown as Tests;
    const of = `${a}/${m} ${c}/${n}`;
    (["pearson", "yates", "nMinus1"] as const).forEach((name, j) => {
      const [statistic, p] = expected.slice(6 * i + 2 * j, 6 * i + 2 * j + 2) as [number, number];
      // A deviation of nothing, or of exactly one half, is 0 up to R's rounding of expected counts.
      if (statistic < 1e-20) expect(ours[name].statistic, of).toBeLessThan(1e-20);
      else expectRelative(ours[name].statistic, statistic, 1e-9, `${of} ${name}`);
      expectRelative(ours[name].p, p, 1e-9, `${of} ${name} p`);
    });
  });
});

it("keeps the far tail and large totals", () => {
  const { pearson } = chiSquareTwoGroups(groups(10 ** 6, 10 ** 6, 0, 10 ** 6)) as unknown as Tests;
  expectRelative(pearson.statistic, 2 * 10 ** 6, 1e-12, "N");
  expect(pearson.p).toBe(0);
});

it("never corrects by more than the deviation itself", () => {
  expect((chiSquareTwoGroups(groups(1, 2, 2, 4)) as unknown as Tests).yates).toEqual({ statistic: 0, p: 1 });
});

it("is undefined when every case had the same outcome", () => {
  expect(chiSquareTwoGroups(groups(3, 3, 4, 4))).toMatchObject({ estimate: null, because: "every case was a success" });
  expect(chiSquareTwoGroups(groups(0, 3, 0, 4))).toMatchObject({ estimate: null, because: "every case was a failure" });
});

it("refuses impossible counts by name", () => {
  expect(() => chiSquareTwoGroups(groups(1.5, 4, 1, 2))).toThrow(
    new RangeError("chiSquareTwoGroups: first.successes must be an integer from 0 to first.trials (4), got 1.5"),
  );
});
