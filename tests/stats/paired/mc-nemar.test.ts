import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { mcNemar, type McNemarResult } from "../../../src/stats/paired/mc-nemar.js";
import { choose, ratio } from "../../exact/rational.js";
import { numbers } from "../../numbers.js";
import { r } from "../../r.js";
import { expectRelative } from "../../relative.js";
import { worked } from "../../worked.js";

type Tests = Extract<McNemarResult, { exact: number }>;
const tests = (firstOnly: number, secondOnly: number): Tests =>
  mcNemar({ both: 3, firstOnly, secondOnly, neither: 2 }) as Tests;

it("gives every split of up to 60 discordant pairs, and some of 2,000, its exact and mid-P values to 1e-12", () => {
  const sizes = [...Array.from({ length: 60 }, (_, i) => i + 1), 199, 500, 2000];
  for (const n of sizes)
    for (let b = 0; b <= n; b += n > 60 ? 37 : 1) {
      const all = 1n << BigInt(n);
      const fewer = Math.min(b, n - b);
      let tail = 0n;
      for (let x = 0; x <= fewer; x++) tail += choose(n, x);
      const own = choose(n, b);
      const { exact, midP } = tests(b, n - b);
      expectRelative(exact, Math.min(1, ratio(2n * tail, all)), 1e-12, `${b} of ${n}`);
      // Fagerland, Lydersen, Laake 2013: the exact p less the point probability, less half of it when both are equal.
      expectRelative(midP, 2 * b === n ? 1 - ratio(own, 2n * all) : ratio(2n * tail - own, all), 1e-12, `${b} of ${n}`);
    }
});

test("equals R's mcnemar.test, plain and corrected, on 1,500 random tables", async () => {
  const random = numbers(1947);
  // R's correction overshoots nothing here: equal discordant counts are tested below.
  const splits = Array.from({ length: 1500 }, () => [random(0, 60), random(61, 130)] as const);
  const expected = await r(`
    m <- matrix(c(${splits.flat().join(",")}), nrow = 2)
    apply(m, 2, function(v) { t <- matrix(c(3, v[2], v[1], 2), 2)
      plain <- mcnemar.test(t, correct = FALSE); yates <- mcnemar.test(t)
      c(plain$statistic, plain$p.value, yates$statistic, yates$p.value) })`);
  splits.forEach(([b, c], i) => {
    const { asymptotic, corrected } = tests(b, c);
    const values = [asymptotic.statistic, asymptotic.p, corrected.statistic, corrected.p];
    values.forEach((value, j) => expectRelative(value, expected[4 * i + j]!, 1e-11, `${b} and ${c}`));
  });
});

describe("published examples", () => {
  test("airway hyper-responsiveness (Bentur; Fagerland, Lydersen, Laake 2013)", () => {
    const result = mcNemar({ both: 1, firstOnly: 1, secondOnly: 7, neither: 12 }) as Tests;
    worked("C-bentur-ahr", "p_exact").check(result.exact);
    worked("C-bentur-ahr", "p_mid").check(result.midP);
    worked("C-bentur-ahr", "p_asymp").check(result.asymptotic.p);
    worked("C-bentur-ahr", "p_cc").check(result.corrected.p);
  });
  test("approval ratings (Agresti 1990)", () => {
    const { asymptotic, corrected } = mcNemar({ both: 794, firstOnly: 150, secondOnly: 86, neither: 570 }) as Tests;
    worked("C-approval", "x2").check(asymptotic.statistic);
    worked("C-approval", "z").check(Math.sqrt(asymptotic.statistic));
    worked("C-approval", "x2_cc").check(corrected.statistic);
    worked("C-approval", "p_cc").check(corrected.p);
  });
});

it("does not change when first and second change places", () => {
  fc.assert(
    fc.property(fc.nat(80), fc.nat(80), (b, c) => {
      const { pairs: _one, ...one } = tests(b, c);
      const { pairs: _two, ...other } = tests(c, b);
      expect(other).toEqual(one);
    }),
  );
});

describe("edges", () => {
  it("is 1 when as many pairs changed one way as the other", () => {
    expect(tests(5, 5)).toMatchObject({ exact: 1, asymptotic: { p: 1 }, corrected: { statistic: 0, p: 1 } });
  });
  it("is undefined without a discordant pair", () => {
    const pairs = { both: 3, firstOnly: 0, secondOnly: 0, neither: 2 };
    expect(mcNemar(pairs)).toEqual({ method: "mcNemar", pairs, estimate: null, because: "no pair is discordant" });
  });
  it("refuses what is no count, and no pairs, by name", () => {
    expect(() => mcNemar({ both: 1, firstOnly: -1, secondOnly: 2, neither: 0 })).toThrow(
      new RangeError("mcNemar: firstOnly must be an integer of at least 0, got -1"),
    );
    expect(() => mcNemar({ both: 0, firstOnly: 0, secondOnly: 0, neither: 0 })).toThrow(
      new RangeError("mcNemar: there must be at least one pair, got 0"),
    );
  });
});
