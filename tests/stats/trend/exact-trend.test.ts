import fc from "fast-check";
import { expect, it } from "vitest";
import { exactTrend } from "../../../src/stats/trend/exact-trend.js";
import type { Count } from "../../../src/stats/types.js";
import { r } from "../../r.js";
import { cpuMilliseconds } from "../../cpu-milliseconds.js";
import { numbers } from "../../numbers.js";
import { choose, ratio } from "../../exact/rational.js";

const counts = (...pairs: [number, number][]): Count[] => pairs.map(([successes, trials]) => ({ successes, trials }));

/** Every table with the margins of the groups, with its exact weight and score sum. */
function enumerate(groups: readonly Count[], scores: readonly number[]): Map<number, bigint> {
  let states = new Map<string, { left: number; sum: number; weight: bigint }>();
  const successes = groups.reduce((sum, group) => sum + group.successes, 0);
  states.set("start", { left: successes, sum: 0, weight: 1n });
  groups.forEach(({ trials }, i) => {
    const next = new Map<string, { left: number; sum: number; weight: bigint }>();
    for (const state of states.values())
      for (let taken = 0; taken <= Math.min(trials, state.left); taken++) {
        const left = state.left - taken;
        const sum = state.sum + scores[i]! * taken;
        const weight = state.weight * choose(trials, taken) + (next.get(`${left} ${sum}`)?.weight ?? 0n);
        next.set(`${left} ${sum}`, { left, sum, weight });
      }
    states = next;
  });
  return new Map([...states.values()].filter(({ left }) => left === 0).map(({ sum, weight }) => [sum, weight]));
}

function oracle(groups: readonly Count[], scores: readonly number[]): Record<string, number> {
  const weights = enumerate(groups, scores);
  const observed = groups.reduce((sum, { successes }, i) => sum + scores[i]! * successes, 0);
  const own = weights.get(observed)!;
  let [all, rising, falling, noLikelier] = [0n, 0n, 0n, 0n];
  for (const [sum, weight] of weights) {
    all += weight;
    if (sum >= observed) rising += weight;
    if (sum <= observed) falling += weight;
    // Relative tolerance 1e-7, in whole numbers.
    if (weight * 10_000_000n <= own * 10_000_001n) noLikelier += weight;
  }
  const smaller = rising < falling ? rising : falling;
  return {
    rising: ratio(rising, all),
    falling: ratio(falling, all),
    pointProbability: ratio(noLikelier, all),
    doubled: Math.min(1, ratio(2n * smaller, all)),
  };
}

it("equals exact whole-number enumeration to 1e-12 on 300 tables, whatever their scores", () => {
  const random = numbers(20261);
  for (let table = 0; table < 300; table++) {
    const size = 2 + random(0, 4);
    const most = table % 3 === 0 ? 40 : 12;
    const groups = Array.from({ length: size }, () => {
      const trials = random(0, most);
      return { trials, successes: random(0, trials) };
    });
    if (groups.every(({ trials }) => trials === 0)) continue;
    const scores = table % 2 === 0 ? groups.map((_, i) => i + 1) : groups.map(() => random(0, 9) - 3);
    const expected = oracle(groups, scores);
    const result = exactTrend(groups, { scores });
    for (const [name, value] of Object.entries(expected)) {
      const relative = (result[name as "doubled"] as number) / value - 1;
      expect(Math.abs(relative), `${name} of ${JSON.stringify({ groups, scores })}`).toBeLessThan(1e-12);
    }
  }
});

it("keeps full relative precision in a far tail", () => {
  const groups = counts([1, 70], [12, 70], [36, 70], [68, 70]);
  const expected = oracle(groups, [1, 2, 3, 4]);
  expect(expected.rising).toBeLessThan(1e-30);
  const result = exactTrend(groups);
  expect(Math.abs((result as { rising: number }).rising / expected.rising! - 1)).toBeLessThan(1e-12);
});

it("gives the two conventions that the invented cohort of grades I to IV was computed with", () => {
  // 9/9, 15/16, 12/15, 6/11: 0.0032 by distance and 0.0049 doubled, computed in R 4.2.2 by enumeration.
  const result = exactTrend(counts([9, 9], [15, 16], [12, 15], [6, 11]));
  expect(result.pointProbability).toBeCloseTo(0.0032, 4);
  expect(result.doubled).toBeCloseTo(0.0049, 4);
});

it("equals Fisher's exact p of R when there are two groups", async () => {
  const tables: [number, number][][] = [];
  const random = numbers(7);
  while (tables.length < 500) {
    const [n, m] = [1 + random(0, 30), 1 + random(0, 30)];
    tables.push([
      [random(0, n), n],
      [random(0, m), m],
    ]);
  }
  const cells = tables.flatMap(([x, y]) => [x![0], y![0], x![1] - x![0], y![1] - y![0]]);
  const p = await r(`apply(matrix(c(${cells.join()}), nrow = 4), 2, function(v) fisher.test(matrix(v, 2))$p.value)`);
  // R sums dhyper, good to about 1e-13 of p here.
  tables.forEach((table, i) => expect(exactTrend(counts(...table)).pointProbability).toBeCloseTo(p[i]!, 12));
});

const groupsOf = fc
  .array(
    fc.nat(20).chain((trials) => fc.record({ trials: fc.constant(trials), successes: fc.nat(trials) })),
    { minLength: 2, maxLength: 5 },
  )
  .filter((groups) => groups.some(({ trials }) => trials > 0));

it("does not change when scores are moved, stretched, or the groups are read from the other end", () => {
  fc.assert(
    fc.property(groupsOf, fc.integer({ min: -9, max: 9 }), fc.integer({ min: 1, max: 5 }), (groups, move, stretch) => {
      const scores = groups.map((_, i) => i + 1);
      const p = exactTrend(groups);
      const moved = exactTrend(groups, { scores: scores.map((score) => move + stretch * score) });
      const turned = exactTrend(groups.toReversed());
      expect(moved.pointProbability).toBe(p.pointProbability);
      expect(turned.pointProbability).toBeCloseTo(p.pointProbability!, 12);
      expect(turned.doubled).toBeCloseTo(p.doubled!, 12);
    }),
  );
});

it("turns rising into falling when successes and failures change places", () => {
  fc.assert(
    fc.property(groupsOf, (groups) => {
      const failures = groups.map(({ successes, trials }) => ({ trials, successes: trials - successes }));
      const [p, q] = [exactTrend(groups), exactTrend(failures)] as { rising: number; falling: number }[];
      expect(p!.rising).toBeCloseTo(q!.falling, 12);
      expect(p!.falling).toBeCloseTo(q!.rising, 12);
    }),
  );
});

it("is exactly 1 when the data cannot show a trend", () => {
  for (const groups of [counts([0, 5], [0, 6]), counts([5, 5], [6, 6]), counts([3, 7], [0, 0])])
    expect(exactTrend(groups)).toMatchObject({ pointProbability: 1, doubled: 1, rising: 1, falling: 1 });
});

it("answers for a thousand cases in twenty groups, or says that it cannot", () => {
  const groups = Array.from({ length: 20 }, (_, i) => ({ trials: 50, successes: 15 + i }));
  const start = process.cpuUsage();
  const result = exactTrend(groups);
  expect(cpuMilliseconds(start)).toBeLessThan(3000);
  expect(result.pointProbability).not.toBeNaN();
  const huge = exactTrend(
    groups.map(({ trials, successes }) => ({ trials: trials * 100, successes: successes * 100 })),
  );
  expect(huge).toMatchObject({
    pointProbability: null,
    doubled: null,
    because: "the exact distribution is too large to compute; use the asymptotic trend test",
  });
});

it("refuses what is not a trend over groups", () => {
  expect(() => exactTrend(counts([1, 2]))).toThrow(
    new RangeError("exactTrend: there must be at least two groups, got 1"),
  );
  expect(() => exactTrend(counts([3, 2], [0, 1]))).toThrow(
    new RangeError("exactTrend: groups[0].successes must be an integer from 0 to groups[0].trials (2), got 3"),
  );
  expect(() => exactTrend(counts([0, 0], [0, 0]))).toThrow(
    new RangeError("exactTrend: there must be at least one case, got groups of 0"),
  );
  expect(() => exactTrend(counts([1, 2], [0, 1]), { scores: [1] })).toThrow(
    new RangeError("exactTrend: there must be one score a group (2), got 1"),
  );
  expect(() => exactTrend(counts([1, 2], [0, 1]), { scores: [1, 1.5] })).toThrow(
    new RangeError("exactTrend: scores[1] must be an integer (multiply fractions up), got 1.5"),
  );
});
