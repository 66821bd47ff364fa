import { expect, it } from "vitest";
import { followUp } from "../../../src/stats/time/follow-up.js";
import { kaplanMeier } from "../../../src/stats/time/kaplan-meier.js";
import { logRank } from "../../../src/stats/time/log-rank.js";
import { logRankExact } from "../../../src/stats/time/log-rank-exact.js";
import { lossBounds } from "../../../src/stats/time/loss-bounds.js";
import { numberAtRisk } from "../../../src/stats/time/number-at-risk.js";
import { tippingGrid } from "../../../src/stats/time/tipping-grid.js";
import { numbers } from "../../numbers.js";

const group = (times: number[], events: number[]) => ({ times, events: events.map(Boolean) });

it("a curve without events stays at 1 and has no median, with the reason", () => {
  const result = kaplanMeier(group([3, 5, 5], [0, 0, 0]));
  expect(result).toMatchObject({
    events: 0,
    steps: [
      { time: 3, atRisk: 3, survival: 1, standardError: 0, interval: null },
      { time: 5, atRisk: 2, censored: 2, survival: 1, interval: null },
    ],
    median: { estimate: null, because: "more than one half had no event to the end of observation" },
  });
});

it("a curve in which everybody had the event ends at exactly 0", () => {
  const result = kaplanMeier(group([1, 2, 3], [1, 1, 1]));
  expect(result).toMatchObject({ median: { estimate: 2 } });
  if ("estimate" in result) throw new Error(result.because);
  expect(result.steps.at(-1)).toMatchObject({ survival: 0, standardError: null, interval: null });
});

it("one case, and no case", () => {
  expect(kaplanMeier(group([4], [1]))).toMatchObject({ n: 1, median: { estimate: 4, interval: { low: 4, high: 4 } } });
  expect(kaplanMeier(group([], []))).toEqual({ estimate: null, because: "there is no case" });
  expect(followUp(group([], []))).toEqual({ estimate: null, because: "there is no case" });
});

it("a case last seen at the time of an event was at risk of it", () => {
  expect(kaplanMeier(group([2, 2], [1, 0]))).toMatchObject({ steps: [{ atRisk: 2, survival: 0.5 }] });
  expect(numberAtRisk([2, 2, 3], [0, 2, 2.5, 4])).toEqual([3, 3, 1, 0]);
});

it("an early failure does not shorten the follow-up", () => {
  const result = followUp(group([1, 2, 24, 30, 36], [1, 1, 0, 0, 0]), { potential: [40, 40, 30, 30, 40] });
  expect(result).toMatchObject({ n: 5, events: 2, shortest: 1, longest: 36, median: { estimate: 30 } });
  // Seen 1 + 2 + 24 + 30 + 36 = 93 of 1 + 2 + 30 + 30 + 40 = 103.
  expect(result).toMatchObject({ completeness: 93 / 103 });
  expect(followUp(group([1, 2], [1, 1]))).toMatchObject({
    median: { estimate: null, because: "events ended the observation of too many cases" },
    completeness: null,
  });
});

it("log-rank tests without information are undefined, with the reason", () => {
  const some = group([1, 2], [1, 1]);
  expect(logRank([some, group([], [])])).toEqual({ estimate: null, because: "group 2 is empty" });
  expect(logRank([group([1, 2], [0, 0]), group([3], [0])])).toEqual({ estimate: null, because: "no event happened" });
  expect(logRank([group([5], [1]), group([1], [0])])).toEqual({
    estimate: null,
    because: "no event came while every group was at risk",
  });
  expect(logRankExact({ first: some, second: group([], []) })).toEqual({
    estimate: null,
    because: "the second group is empty",
  });
  expect(logRankExact({ first: group([3, 3], [1, 1]), second: group([3], [1]) })).toEqual({
    estimate: null,
    because: "all durations are alike",
  });
});

it("the permutation log-rank equals going through all ways to share out the durations", () => {
  const next = numbers(66);
  for (let round = 0; round < 40; round++) {
    const size = next(4, 9);
    const times = Array.from({ length: size }, () => next(1, 8));
    const events = Array.from({ length: size }, () => next(0, 2) > 0);
    const cut = next(1, size - 1);
    const split = (chosen: (at: number) => boolean) => ({
      times: times.filter((_, at) => chosen(at)),
      events: events.filter((_, at) => chosen(at)),
    });
    const excess = (chosen: (at: number) => boolean): number => {
      const inside = times.map((_, at) => chosen(at));
      return times.reduce((sum, time, at) => {
        if (!events[at]) return sum;
        const atRisk = times.filter((other) => other >= time).length;
        const own = times.filter((other, i) => inside[i] && other >= time).length;
        return sum + (inside[at] ? 1 : 0) - own / atRisk;
      }, 0);
    };
    const test = logRankExact({ first: split((at) => at < cut), second: split((at) => at >= cut) });
    if (!("p" in test)) continue;
    const observed = excess((at) => at < cut);
    expect(test.observed - test.expected).toBeCloseTo(observed, 12);
    const all: number[] = [];
    for (let pattern = 0; pattern < 2 ** size; pattern++) {
      const chosen = (at: number) => ((pattern >> at) & 1) === 1;
      if (times.filter((_, at) => chosen(at)).length === cut) all.push(excess(chosen));
    }
    const share = (holds: (value: number) => boolean) => all.filter(holds).length / all.length;
    expect(test.distribution).toBe("exact");
    expect(test.p.less).toBeCloseTo(
      share((value) => value <= observed + 1e-9),
      12,
    );
    expect(test.p.greater).toBeCloseTo(
      share((value) => value >= observed - 1e-9),
      12,
    );
    expect(test.p.distance).toBeCloseTo(
      share((value) => Math.abs(value) >= Math.abs(observed) - 1e-9),
      12,
    );
  }
});

it("worst and best case bound the rate; nothing lost changes nothing", () => {
  const bounds = lossBounds({ successes: 42, trials: 51 }, { lost: 4 });
  expect(bounds.worst).toMatchObject({ successes: 42, trials: 55 });
  expect(bounds.best).toMatchObject({ successes: 46, trials: 55 });
  // Limits by prop.test(42, 55, correct = FALSE) and prop.test(46, 55, correct = FALSE), R 4.2.2.
  const percent = ({ interval }: { interval: { low: number; high: number } }) =>
    [interval.low, interval.high].map((end) => Math.round(100 * end));
  expect([percent(bounds.worst), percent(bounds.best)]).toEqual([
    [64, 86],
    [72, 91],
  ]);
  const none = lossBounds({ successes: 42, trials: 51 }, { lost: 0 });
  expect(none.worst).toEqual(none.best);
});

it("a caller's mistake throws with a complete message", () => {
  expect(() => kaplanMeier(group([1, -2], [1, 0]))).toThrow(
    new RangeError("kaplanMeier: times[1] must be zero or more, got -2"),
  );
  expect(() => logRank([group([1], [1]), group([1], [])])).toThrow(
    new RangeError("logRank: groups[1].events must be as many as times (1), got 0"),
  );
  expect(() => logRank([group([1], [1])])).toThrow(new RangeError("logRank: groups must be at least 2, got 1"));
  expect(() => followUp(group([5], [0]), { potential: [4] })).toThrow(
    new RangeError("followUp: potential[0] must be at least the time seen (5), got 4"),
  );
  expect(() => lossBounds({ successes: 1, trials: 2 }, { lost: -1 })).toThrow(
    new RangeError("lossBounds: lost must be an integer of at least 0, got -1"),
  );
});

it("the tipping grid holds every way the lost cases could have gone", () => {
  const first = { successes: 35, trials: 40, lost: 2 };
  const second = { successes: 7, trials: 11, lost: 1 };
  const { cells } = tippingGrid({ first, second });
  expect(cells.map((row) => row.length)).toEqual([2, 2, 2]);
  const worst = cells[2]![0]!;
  expect(worst).toMatchObject({
    lostFailed: { first: 2, second: 0 },
    first: { successes: 35, trials: 42 },
    second: { successes: 8, trials: 12 },
  });
  expect(worst.difference.estimate).toBeCloseTo(35 / 42 - 8 / 12, 14);
  // fisher_exact([[35, 8], [7, 4]]), scipy 1.17.1.
  expect(worst.p).toBeCloseTo(0.23682993359783772, 12);
  const estimates = cells.map((row) => row.map(({ difference }) => difference.estimate));
  for (const [a, b] of [
    [0, 1],
    [1, 2],
  ] as const)
    expect(estimates[a]![0]!).toBeGreaterThan(estimates[b]![0]!);
  expect(() => tippingGrid({ first: { ...first, lost: 1e5 }, second })).toThrow(
    new RangeError("tippingGrid: the grid must hold 10000 cells at most, got 200002"),
  );
});
